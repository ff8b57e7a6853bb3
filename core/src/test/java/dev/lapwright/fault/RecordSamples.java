package dev.lapwright.fault;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.ResponseSurface;
import dev.lapwright.aero.RideHeightMap;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.Atmosphere;
import dev.lapwright.air.Wind;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Unit;
import dev.lapwright.chassis.AxleSpring;
import dev.lapwright.chassis.LateralTransfer;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.draft.CarAnswers;
import dev.lapwright.draft.DownforceClass;
import dev.lapwright.draft.DrivenWheels;
import dev.lapwright.draft.EngineKind;
import dev.lapwright.draft.Range;
import dev.lapwright.draft.TyreKind;
import dev.lapwright.draft.TyreSize;
import dev.lapwright.evidence.CleanLaps;
import dev.lapwright.evidence.Evidence;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fit.LimitWord;
import dev.lapwright.lap.Place;
import dev.lapwright.lap.TurnState;
import dev.lapwright.line.LineChoices;
import dev.lapwright.powertrain.Differential;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.study.optimise.Optimisation;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressurePair;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.ride.RoadInput;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.Neutralised;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.track.Segment;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackLimit;
import dev.lapwright.track.TrackPoint;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.SurveyPoint;
import dev.lapwright.tyre.LoadSensitivity;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.util.List;
import java.util.OptionalDouble;

/** Records that are in order, of every kind that takes numbers in. */
final class RecordSamples {
    private RecordSamples() {}

    /** A record that is in order, and the words by which messages name its numbers, in the order of the components. */
    record Sample(Record sound, String... names) {}

    static List<Sample> samples() {
        return List.of(
                new Sample(new Range(1, 2), "low end", "high end"),
                new Sample(TyreSize.ofWidth(205), "tyre width"),
                new Sample(new Neutralised(3, 5, 0.6, 0.5, 0.3, 10), "pace of", "fuel of", "wear of", "loss of a stop"),
                new Sample(new CarAnswers.Power(1e5, 6000, EngineKind.TURBO), "power", "speed of peak power"),
                new Sample(new CarAnswers.TopSpeed(60, false), "top speed"),
                new Sample(
                        new CarAnswers(
                                "",
                                1000,
                                DrivenWheels.REAR,
                                new CarAnswers.Power(1e5, 6000, EngineKind.TURBO),
                                new CarAnswers.Tyres(TyreSize.ofWidth(205), TyreSize.ofWidth(205), TyreKind.ROAD),
                                OptionalDouble.empty(),
                                OptionalDouble.empty(),
                                DownforceClass.NONE,
                                CarAnswers.Gears.counted(5),
                                new CarAnswers.TopSpeed(60, false),
                                OptionalDouble.empty()),
                        "mass"),
                new Sample(
                        new Optimisation.Circuit(
                                Track.open("run", 10, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(100, 0))), 1),
                        "weight of run"),
                new Sample(new CarDoubt.Size(5, false, false, CarDoubt.Source.WEIGHED), "doubt"),
                new Sample(LimitWord.of("", LimitWord.End.FRONT), "error of a word"),
                new Sample(new Areas(1, 2, 3), "CdA", "ClA front", "ClA rear"),
                new Sample(
                        new ResponseSurface(1, 2, 3, 4, 5),
                        "front (",
                        "rear (",
                        "front squared",
                        "rear squared",
                        "product"),
                new Sample(
                        new RideHeightMap(50, 60, ResponseSurface.FLAT, ResponseSurface.FLAT, ResponseSurface.FLAT),
                        "reference front ride height",
                        "reference rear ride height"),
                new Sample(new Wing.Setting(3, Areas.NONE), "angleDeg"),
                new Sample(new Atmosphere(290, 1e5, 0.5), "air temperature", "air pressure", "relative humidity"),
                new Sample(new Wind(3, 1), "wind speed", "wind heading"),
                new Sample(
                        Adjustment.Range.stepped(0, 10, 1, 5),
                        "wing min",
                        "wing max",
                        "wing step",
                        "wing standard",
                        "wing clickSize"),
                new Sample(
                        new Conditions("", 20, 1000, 50, 0, 0, 1),
                        "airTempC",
                        "airPressureHpa",
                        "humidityPercent",
                        "windSpeedMps",
                        "windFromDeg",
                        "grip"),
                new Sample(
                        new DriverWord.OfFigure(DriverWord.Reading.TOP_SPEED, "", 70, 1),
                        "what the driver read",
                        "error of what the driver read"),
                new Sample(new Effect.Absolute("aero.cdAM2", 1, 2), "aero.cdAM2 offset", "aero.cdAM2 factor"),
                new Sample(new Effect.Relative("aero.cdAM2", 1), "aero.cdAM2 perUnit"),
                new Sample(
                        new AxleSpring(1e5, 1, 1e4, 2e5, 1.5),
                        "spring rate",
                        "motion ratio",
                        "anti-roll stiffness",
                        "tyre rate",
                        "track"),
                new Sample(
                        new Differential(0.4, 0.2, 100),
                        "locking value under drive",
                        "locking value on the overrun",
                        "preload"),
                new Sample(new UndersteerGradient(1e-3, 2.5), "understeer gradient", "wheelbase"),
                new Sample(
                        Place.level(0.01),
                        "curvature",
                        "gravity across",
                        "gravity into",
                        "vertical curvature",
                        "climb",
                        "grip",
                        "head wind"),
                new Sample(
                        TurnState.level(TurnState.Pedals.COASTING, 30, 0, 1),
                        "speed",
                        "acceleration",
                        "gravity across the road",
                        "normal acceleration",
                        "climb",
                        "grip",
                        "head wind"),
                new Sample(new LateralTransfer(0.1, 0.2), "front load transfer", "rear load transfer"),
                new Sample(new LoadSensitivity(1.5, 0.1, 4000), "friction", "load sensitivity", "reference load"),
                new Sample(new Segment(10, 0, 0, Segment.Road.FLAT, ""), "segment length", "curvature", "curvature"),
                new Sample(
                        new Segment.Road(0, 0, 1, 5, 5, 30),
                        "slope",
                        "bank",
                        "grip",
                        "width to the left",
                        "width to the right",
                        "speed limit"),
                new Sample(
                        new TrackPoint(0, 0, 0, 0, 0, 1, 5, 5, 30),
                        "s (m)",
                        "curvature",
                        "slope",
                        "bank",
                        "vertical curvature",
                        "grip",
                        "width to the left",
                        "width to the right",
                        "speed limit"),
                new Sample(new StationSpacing(3, 10), "station spacing in curves", "station spacing on straights"),
                new Sample(new Track.NamedPlace(10, "x"), "corner name's place"),
                new Sample(new TimingLog.Lap(1, 90, "A", "", TimingLog.Flag.NONE), "time (s) of lap 1"),
                new Sample(CleanLaps.Rule.DEFAULT, "slow limit"),
                new Sample(Evidence.DEFAULT, "change worth knowing"),
                new Sample(
                        Evidence.Prior.DEFAULT,
                        "run-to-run deviation",
                        "change from lap to lap",
                        "drift",
                        "bend of the drift",
                        "largest correlation"),
                new Sample(LineChoices.DEFAULT, "margin", "margin", "node spacing"),
                new Sample(
                        new TrackLimit(0, 10, OptionalDouble.of(1), OptionalDouble.empty()),
                        "track limit's start",
                        "track limit's end"),
                new Sample(ImportChoices.circuit(), "width"),
                new Sample(
                        new Damper(1, 2, 3, 4, 0.1, 0.1),
                        "slow bump",
                        "fast bump",
                        "slow rebound",
                        "fast rebound",
                        "bump knee",
                        "rebound knee"),
                new Sample(
                        new QuarterCar(300, 40, 1e5, 3e5, 0, Damper.linear(1), 1, 0),
                        "sprung mass",
                        "unsprung mass",
                        "wheel rate",
                        "tyre rate",
                        "tyre damping",
                        "motion ratio",
                        "downforce"),
                new Sample(new Kerb(Kerb.Shape.RAMP, 0.05, 1, 1), "kerb height", "kerb length"),
                new Sample(RoadInput.STANDARD, "contact length"),
                new Sample(
                        new TreadTemperatures(90, 85, 80),
                        "inner temperature",
                        "middle temperature",
                        "outer temperature"),
                new Sample(new PressureDay(20, 30, 1000), "air temperature", "track temperature", "air pressure"),
                new Sample(
                        Compound.steady("soft", 1, 0.001),
                        "compound's grip",
                        "compound's wear",
                        "lap of the cliff",
                        "wear after the cliff"),
                new Sample(new RaceLength(10, 0, 1, 0.6, 1), "seconds", "fuel of a formation lap", "reserve laps"),
                new Sample(pair(), "FL cold pressure", "FL hot pressure", "temperature when cold"),
                new Sample(new PressureResult.Tyre(Wheel.FRONT_LEFT, List.of(pair()), 170), "FL target"),
                new Sample(new SurveyPoint.Motion(0, 0, 0), "way (m)", "speed (m/s)", "lateral acceleration (m/s²)"),
                new Sample(
                        new SurveyPoint(0, 0, 0, 5, 5),
                        "x (m)",
                        "y (m)",
                        "altitude",
                        "width to the left",
                        "width to the right",
                        "bank (rad)",
                        "grip"));
    }

    private static PressurePair pair() {
        return new PressurePair(Wheel.FRONT_LEFT, 120, 165, 20, new PressureDay(20, 30, 1000));
    }

    /** An adjustment of a wing. */
    static Adjustment wing(Adjustment.Range range) {
        return new Adjustment("wing", "", Unit.DEGREE, range, List.of(new Effect.Relative("aero.cdAM2", 1)));
    }
}
