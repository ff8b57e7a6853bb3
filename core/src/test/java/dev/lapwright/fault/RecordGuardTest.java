package dev.lapwright.fault;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Platform;
import dev.lapwright.aero.ResponseSurface;
import dev.lapwright.aero.RideHeightMap;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.Atmosphere;
import dev.lapwright.air.Wind;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Unit;
import dev.lapwright.chassis.AxleSpring;
import dev.lapwright.chassis.LateralTransfer;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.curve.PlanCurve;
import dev.lapwright.evidence.BootstrapInterval;
import dev.lapwright.evidence.CleanRule;
import dev.lapwright.evidence.EvidenceChoices;
import dev.lapwright.evidence.LapFlag;
import dev.lapwright.evidence.MeanDifference;
import dev.lapwright.evidence.RankSum;
import dev.lapwright.evidence.SetupComparison;
import dev.lapwright.evidence.SetupPace;
import dev.lapwright.evidence.TimedLap;
import dev.lapwright.evidence.Trend;
import dev.lapwright.evidence.Verdict;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.CarFigures;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Handling;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.TurnState;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineFigures;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.KerbShape;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RideModes;
import dev.lapwright.ride.RidePass;
import dev.lapwright.study.AdjustmentGain;
import dev.lapwright.study.BalanceResult;
import dev.lapwright.study.ComparisonPart;
import dev.lapwright.study.Compound;
import dev.lapwright.study.DamperMapResult;
import dev.lapwright.study.FuelUse;
import dev.lapwright.study.GearingChoice;
import dev.lapwright.study.GearingGear;
import dev.lapwright.study.GearingLap;
import dev.lapwright.study.GearingScenario;
import dev.lapwright.study.GearingShift;
import dev.lapwright.study.GearingTraction;
import dev.lapwright.study.Interaction;
import dev.lapwright.study.OptimisationCircuit;
import dev.lapwright.study.OptimisationMiss;
import dev.lapwright.study.OptimisationPoint;
import dev.lapwright.study.OptimisationRange;
import dev.lapwright.study.PhaseBalance;
import dev.lapwright.study.PressureCost;
import dev.lapwright.study.PressureDay;
import dev.lapwright.study.PressurePair;
import dev.lapwright.study.PressureResult;
import dev.lapwright.study.RaceLength;
import dev.lapwright.study.Remedy;
import dev.lapwright.study.RemedyResult;
import dev.lapwright.study.RideChoices;
import dev.lapwright.study.RideResult;
import dev.lapwright.study.SensitivityResult;
import dev.lapwright.study.StintLap;
import dev.lapwright.study.StintResult;
import dev.lapwright.study.StintRun;
import dev.lapwright.study.TyrePressure;
import dev.lapwright.study.YawDemand;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Segment;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import dev.lapwright.track.survey.EventLaps;
import dev.lapwright.track.survey.ImportChoices;
import dev.lapwright.track.survey.ImportReport;
import dev.lapwright.track.survey.LogReport;
import dev.lapwright.track.survey.RecordedLap;
import dev.lapwright.track.survey.Survey;
import dev.lapwright.track.survey.SurveyPoint;
import dev.lapwright.tyre.LoadSensitivity;
import dev.lapwright.tyre.TreadTemperatures;
import dev.lapwright.tyre.Wheel;
import java.io.IOException;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Modifier;
import java.lang.reflect.RecordComponent;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** No public record that a user fills lets a number through that is none, and each says which field it was. */
class RecordGuardTest {
    private static final double NO_LIMIT = Double.POSITIVE_INFINITY;

    /** What the library hands out, not what it takes in. */
    private static final Set<Class<?>> RESULTS = Set.of(
            Corner.class,
            LogReport.class,
            EventLaps.OfSurvey.class,
            RecordedLap.class,
            CornerFigures.class,
            LapFigures.class,
            LineFigures.class,
            CarFigures.class,
            ComparisonPart.class,
            ComparisonPart.Drive.class,
            GearingChoice.class,
            GearingGear.class,
            GearingLap.class,
            GearingScenario.class,
            GearingShift.class,
            GearingTraction.class,
            Platform.State.class,
            ImportReport.class,
            ImportReport.ElevationReport.class,
            PlanCurve.Place.class,
            Stations.Place.class,
            AdjustmentGain.class,
            Interaction.class,
            SensitivityResult.class,
            AxleMargins.class,
            Handling.AeroBalance.class,
            PhaseBalance.class,
            PressureCost.class,
            PressureResult.class,
            FuelUse.class,
            StintLap.class,
            StintRun.class,
            StintResult.class,
            YawDemand.class,
            BalanceResult.class,
            Remedy.class,
            RemedyResult.class,
            BootstrapInterval.class,
            MeanDifference.class,
            RankSum.class,
            SetupComparison.class,
            SetupPace.class,
            Trend.class,
            Verdict.class,
            OptimisationMiss.class,
            OptimisationPoint.class,
            OptimisationRange.class,
            RideModes.class,
            RidePass.class,
            RidePass.Energy.class,
            DamperMapResult.Beside.class,
            DamperMapResult.Region.class,
            DamperMapResult.Pair.class,
            RideResult.class);

    /** A record that is in order, and the words by which messages name its numbers, in the order of the components. */
    private record Sample(Record sound, String... names) {}

    private static List<Sample> samples() {
        Effect effect = new Effect.Relative("aero.cdAM2", 0.1);
        return List.of(
                new Sample(
                        new OptimisationCircuit(
                                Track.open("run", 10, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(100, 0))), 1),
                        "weight of run"),
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
                        new Adjustment("wing", "", Unit.DEGREE, 0, 10, 1, 5, 0, List.of(), List.of(effect)),
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
                new Sample(new Effect.Absolute("aero.cdAM2", 1, 2), "aero.cdAM2 offset", "aero.cdAM2 factor"),
                new Sample(new Effect.Relative("aero.cdAM2", 1), "aero.cdAM2 perUnit"),
                new Sample(
                        new AxleSpring(1e5, 1, 1e4, 2e5, 1.5),
                        "spring rate",
                        "motion ratio",
                        "anti-roll stiffness",
                        "tyre rate",
                        "track"),
                new Sample(new UndersteerGradient(1e-3, 2.5), "understeer gradient", "wheelbase"),
                new Sample(
                        TurnState.level(TurnState.Feet.COASTING, 30, 0, 1),
                        "speed",
                        "acceleration",
                        "gravity across the road",
                        "normal acceleration",
                        "climb",
                        "grip",
                        "head wind"),
                new Sample(new LateralTransfer(0.1, 0.2), "front load transfer", "rear load transfer"),
                new Sample(new LoadSensitivity(1.5, 0.1, 4000), "friction", "load sensitivity", "reference load"),
                new Sample(
                        new Segment(10, 0, 0, 0, 0, 1, 5, 5, 30, ""),
                        "segment length",
                        "curvature",
                        "curvature",
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
                new Sample(new TimedLap(1, 90, "A", "", LapFlag.NONE), "time (s) of lap 1"),
                new Sample(CleanRule.DEFAULT, "slow limit"),
                new Sample(EvidenceChoices.DEFAULT, "change worth knowing"),
                new Sample(LineChoices.DEFAULT, "margin", "node spacing"),
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
                new Sample(new Kerb(KerbShape.RAMP, 0.05, 1, 1), "kerb height", "kerb length"),
                new Sample(RideChoices.STANDARD, "contact length"),
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
                new Sample(new TyrePressure(Wheel.FRONT_LEFT, List.of(pair()), 170), "FL target"),
                new Sample(
                        new SurveyPoint(0, 0, 0, 5, 5),
                        "x (m)",
                        "y (m)",
                        "altitude",
                        "width to the left",
                        "width to the right"));
    }

    private static PressurePair pair() {
        return new PressurePair(Wheel.FRONT_LEFT, 120, 165, 20, new PressureDay(20, 30, 1000));
    }

    private static List<Integer> numbersOf(Class<?> type) {
        RecordComponent[] components = type.getRecordComponents();
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < components.length; i++) {
            if (components[i].getType() == double.class) {
                numbers.add(i);
            }
        }
        return numbers;
    }

    static Stream<Arguments> badNumbers() {
        List<Arguments> cases = new ArrayList<>();
        for (Sample sample : samples()) {
            List<Integer> numbers = numbersOf(sample.sound().getClass());
            assertThat(sample.names()).as("names for %s", sample.sound()).hasSameSizeAs(numbers);
            for (int k = 0; k < sample.names().length; k++) {
                for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
                    boolean noLimit = sample.names()[k].equals("speed limit") && bad == NO_LIMIT;
                    if (!noLimit) {
                        cases.add(Arguments.of(sample.sound(), numbers.get(k), bad, sample.names()[k]));
                    }
                }
            }
        }
        return cases.stream();
    }

    @ParameterizedTest(name = "{0}, component {1} = {2}")
    @MethodSource("badNumbers")
    void aRecordRefusesWhatIsNoNumberAndNamesTheField(Record sound, int component, double bad, String name) {
        assertThatThrownBy(() -> changed(sound, component, bad))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(name)
                .hasMessageContaining(Double.toString(bad));
    }

    /** The same record with one component changed. */
    private static void changed(Record sound, int component, double value) throws Throwable {
        RecordComponent[] components = sound.getClass().getRecordComponents();
        Class<?>[] types =
                Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new);
        Object[] values = new Object[components.length];
        for (int i = 0; i < values.length; i++) {
            values[i] = components[i].getAccessor().invoke(sound);
        }
        values[component] = value;
        Constructor<?> constructor = sound.getClass().getDeclaredConstructor(types);
        try {
            if (sound instanceof SurveyPoint) {
                // A point is looked at when its survey is built.
                new Survey(List.of((SurveyPoint) constructor.newInstance(values)), true, true);
            } else if (sound instanceof Wing.Setting) {
                // A setting is looked at when its wing is built.
                new Wing("rear", List.of((Wing.Setting) constructor.newInstance(values)));
            } else {
                constructor.newInstance(values);
            }
        } catch (InvocationTargetException refused) {
            throw refused.getCause();
        }
    }

    @Test
    void noPublicRecordWithNumbersIsForgottenHere() throws IOException, ClassNotFoundException {
        Set<Class<?>> covered =
                samples().stream().map(s -> s.sound().getClass()).collect(Collectors.toSet());
        Path classes = Path.of("target", "classes");
        List<Path> files;
        try (Stream<Path> walk = Files.walk(classes)) {
            files = walk.filter(p -> p.toString().endsWith(".class")).toList();
        }
        assertThat(files).isNotEmpty();
        List<String> forgotten = new ArrayList<>();
        for (Path file : files) {
            String name =
                    classes.relativize(file).toString().replace(".class", "").replaceAll("[/\\\\]", ".");
            if (name.endsWith("package-info")) {
                continue;
            }
            Class<?> type = Class.forName(name, false, getClass().getClassLoader());
            if (type.isRecord()
                    && Modifier.isPublic(type.getModifiers())
                    && !RESULTS.contains(type)
                    && !numbersOf(type).isEmpty()
                    && !covered.contains(type)) {
                forgotten.add(name);
            }
        }
        assertThat(forgotten).as("records neither guarded here nor results").isEmpty();
    }
}
