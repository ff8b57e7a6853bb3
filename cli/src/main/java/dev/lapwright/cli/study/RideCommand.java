package dev.lapwright.cli.study;

import dev.lapwright.car.Unit;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.ride.DamperMapChart;
import dev.lapwright.charts.ride.KerbPassChart;
import dev.lapwright.cli.option.ConditionsOptions;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.cli.option.SetupOptions;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.results.RideReport;
import dev.lapwright.results.Subject;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RoadClass;
import dev.lapwright.study.ride.Ride;
import dev.lapwright.study.ride.RideResult;
import dev.lapwright.study.ride.RoadInput;
import dev.lapwright.track.Corner;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code ride}: frequencies, damping, kerbs, rough roads, and where to turn the fast dampers. */
@Command(
        name = "ride",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Drives a wheel over a kerb and a rough road, and maps fast bump and rebound."},
        customSynopsis = {
            "lapwright ride CAR [--speed-kmh V] [OPTIONS]",
            "       lapwright ride CAR CIRCUIT --corner CORNER [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright ride gt-talvex --kerb-height-mm 50 --chart dampers.svg",
            "      A higher kerb at 100 km/h, and the map of the front dampers as a chart.",
            "  lapwright ride gt-talvex castelvane --corner T3 --kerb sawtooth --kerb-teeth 4 --kerb-length-m 2",
            "      Four teeth at the lowest speed of the third corner."
        })
public final class RideCommand extends StudyCommand<RideReport> {
    private static final String REAR = "--rear";
    private static final double STANDARD_KMH = 100;

    @Mixin
    private CarForCorner documents;

    @ArgGroup(validate = false, heading = "%nKerb and road:%n")
    private final Road road = new Road();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    /** A speed and where it comes from. */
    private record Speed(double metresPerSecond, String place) {}

    public RideCommand(Console console) {
        super(console, new StudyFiles<>(RideReport::report));
        files.out("A folder for everything: result, map, passes over time, and charts. Or one file: .json for"
                        + " the result, .csv for the map.")
                .json("ride.json")
                .csv(RideReport.MAP)
                .csv(RideReport.TRACE)
                .onlyInFolder()
                .chart("map.svg", found -> map(found, files.isGiven(REAR)))
                .onlyByOption()
                .option("--chart", "Draws the front axle's map of fast bump and rebound as .svg or .png.")
                .chart("pass.svg", found -> pass(found, files.isGiven(REAR)))
                .onlyByOption()
                .option("--pass", "Draws the front wheel's pass over the kerb as .svg or .png.")
                .flag(REAR, "These two charts of the rear axle instead.")
                .chart("map-front.svg", found -> map(found, false))
                .onlyInFolder()
                .chart("pass-front.svg", found -> pass(found, false))
                .onlyInFolder()
                .chart("map-rear.svg", found -> map(found, true))
                .onlyInFolder()
                .chart("pass-rear.svg", found -> pass(found, true))
                .onlyInFolder();
    }

    @Override
    public RideReport study() {
        road.check(documents.circuit);
        RoadInput choices = road.choices();
        RideMeasure measure = road.measure();
        Subject subject = setup.subject(documents.car, documents.circuit, conditions.day(), console);
        Speed speed = road.corner == null ? given() : inCorner(subject);
        RideResult result = Ride.of(subject.car(), subject.day(), speed.metresPerSecond())
                .over(choices)
                .run();
        return new RideReport(subject, result, measure, speed.place());
    }

    @Override
    public Report report(RideReport found) {
        return found.report();
    }

    private static Drawing map(RideReport found, boolean rear) {
        RideResult.Axle axle = axle(found, rear);
        return new Drawing(
                DamperMapChart.of(title(found, axle), axle.map(), found.measure(), ChartStyle.STANDARD),
                DamperMapChart.SIZE);
    }

    private static Drawing pass(RideReport found, boolean rear) {
        RideResult.Axle axle = axle(found, rear);
        return new Drawing(
                KerbPassChart.of(title(found, axle), axle.trace(), axle.kerb(), ChartStyle.STANDARD),
                KerbPassChart.SIZE);
    }

    private static RideResult.Axle axle(RideReport found, boolean rear) {
        return found.result().axles().get(rear ? 1 : 0);
    }

    private static String title(RideReport found, RideResult.Axle axle) {
        return found.subject().car().name() + " " + axle.end().label() + ", " + found.kerb() + ", "
                + Numbers.kmh(found.result().speed()) + " km/h";
    }

    private Speed given() {
        double kmh = road.speedKmh == null ? STANDARD_KMH : Check.inRange("--speed-kmh", road.speedKmh, 5, 500);
        return new Speed(Unit.KILOMETRE_PER_HOUR.convert(kmh, Unit.METRE_PER_SECOND), "");
    }

    private Speed inCorner(Subject subject) {
        Lap lap = LapSolver.on(LineOptions.driveStandard(subject, console).driven())
                .solve(Vehicle.of(subject.car(), subject.day()));
        Corner wanted = Corner.find(lap.stations().corners(), road.corner)
                .orElseThrow(() -> new InvalidValueException(
                        "--corner " + road.corner,
                        "the circuit has no such corner",
                        "take T1 to T" + lap.stations().corners().size() + ", or a corner's name"));
        CornerFigures corner = lap.corners().get(wanted.number() - 1);
        String place = road.at == null ? "slowest" : road.at.strip();
        double speed = switch (place) {
            case "entry" -> corner.entrySpeed();
            case "slowest" -> corner.minimumSpeed();
            case "exit" -> corner.exitSpeed();
            default ->
                throw new InvalidValueException(
                        "--at " + place, "it is no place in a corner", "take entry, slowest or exit");
        };
        String text = (place.equals("slowest") ? "the lowest in " : "at the " + place + " of ") + wanted.label()
                + " on the" + " lap of " + subject.track().name() + " (" + Numbers.lapTime(lap.time()) + ")";
        return new Speed(speed, text);
    }

    /** A car and, for the speed in one of its corners, a circuit. */
    public static final class CarForCorner {
        @Parameters(
                index = "0",
                paramLabel = "CAR",
                completionCandidates = DemoNames.Cars.class,
                description = "Car: a file, or the name of a demo (see 'lapwright demo').")
        String car;

        @Parameters(
                index = "1",
                arity = "0..1",
                paramLabel = "CIRCUIT",
                completionCandidates = DemoNames.Circuits.class,
                description =
                        "With --corner: the circuit or open run that gives the speed, a file or the name of a demo.")
        String circuit;
    }

    /** What a wheel is driven over, and how fast. */
    public static final class Road {
        private static final double MM_PER_M = 1000;

        @Option(names = "--speed-kmh", paramLabel = "V", description = "Speed, km/h; 100 if left out.")
        Double speedKmh;

        @Option(
                names = "--corner",
                paramLabel = "CORNER",
                description = "Takes the speed from the lap in this corner of CIRCUIT: T3, 3, or its name.")
        String corner;

        @Option(
                names = "--at",
                paramLabel = "PLACE",
                description = "Where in that corner: entry, slowest (if left out) or exit.")
        String at;

        @Option(
                names = "--kerb",
                paramLabel = "SHAPE",
                description = "Section of the kerb along the wheel's way: half-sine (if left out), ramp or sawtooth.")
        String kerb = Kerb.Shape.HALF_SINE.label();

        @Option(names = "--kerb-height-mm", paramLabel = "H", description = "Height of the kerb, mm; 40 if left out.")
        double kerbHeightMm = 40;

        @Option(
                names = "--kerb-length-m",
                paramLabel = "L",
                description = "Length of the kerb along the wheel's way, m; 1 if left out.")
        double kerbLengthM = 1;

        @Option(
                names = "--kerb-teeth",
                paramLabel = "N",
                description = "How many of the shape stand in a row on that length; 1 if left out.")
        int kerbTeeth = 1;

        @Option(
                names = "--road",
                paramLabel = "CLASS",
                description = "Roughness of the road by ISO 8608, A (smooth, if left out) to H.")
        String road = "A";

        @Option(names = "--seed", paramLabel = "N", description = "Which road of that class; 1 if left out.")
        long seed = 1;

        @Option(
                names = "--contact-patch-mm",
                paramLabel = "A",
                description =
                        "Length of the tyre's contact patch, over which it bridges the road, mm; 100 if left out.")
        double contactPatchMm = 100;

        @Option(
                names = "--best-for",
                paramLabel = "MEASURE",
                description =
                        "What the map of fast bump and rebound shows and calls best: the least load (variation of the"
                                + " contact load, if left out), off-ground (time without contact) or body (peak acceleration).")
        String bestFor = RideMeasure.LOAD.word();

        RideMeasure measure() {
            return RideMeasure.named(bestFor);
        }

        RoadInput choices() {
            double height = Check.inRange("--kerb-height-mm", kerbHeightMm, 0, 500);
            double length = Check.inRange("--kerb-length-m", kerbLengthM, 0.01, 100);
            double patch = Check.inRange("--contact-patch-mm", contactPatchMm, 5, 1000);
            Kerb section = new Kerb(Kerb.Shape.named(kerb), height / MM_PER_M, length, kerbTeeth);
            return new RoadInput(section, RoadClass.named(road), seed, patch / MM_PER_M);
        }

        /** Refuses what contradicts itself. */
        void check(String circuit) {
            if (corner != null && circuit == null) {
                throw new InvalidValueException(
                        "--corner " + corner, "there is no circuit to drive", "name a circuit behind the car");
            }
            if (corner != null && speedKmh != null) {
                throw new InvalidValueException(
                        "--corner " + corner, "the speed is already given by --speed-kmh", "keep one of the two");
            }
            if (corner == null && circuit != null) {
                throw new InvalidValueException(
                        circuit,
                        "a circuit only gives the speed in a corner",
                        "add --corner, or leave the circuit out");
            }
            if (corner == null && at != null) {
                throw new InvalidValueException("--at " + at, "there is no corner", "add --corner");
            }
        }
    }
}
