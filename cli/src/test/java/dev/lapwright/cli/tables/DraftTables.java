package dev.lapwright.cli.tables;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.doubt.PlausibleCars;
import dev.lapwright.draft.CarAnswers;
import dev.lapwright.draft.CarDraft;
import dev.lapwright.draft.DownforceClass;
import dev.lapwright.draft.DrivenWheels;
import dev.lapwright.draft.EngineKind;
import dev.lapwright.draft.Range;
import dev.lapwright.draft.TyreKind;
import dev.lapwright.draft.TyreSize;
import dev.lapwright.lap.AxleLimits;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.TurnState;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Prints as Markdown the classes from which a car is drafted, and how near a car drafted from ten answers comes to the demo car whose answers
 * they are. Uses the public API alone; run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/DraftTables.java [demos]</pre>
 */
public final class DraftTables {
    private static final int DRAWS = 200;
    private static final long SEED = 1;

    private DraftTables() {}

    /** Prints the classes, or how near the demo cars come. */
    public static void main(String... asked) {
        (asked.length == 0 ? classes() : demos()).forEach(System.out::println);
    }

    /** The class tables, line by line. */
    public static List<String> classes() {
        List<String> lines = new ArrayList<>();
        lines.add(
                "| tyres | friction across | stiffness over load, 1/rad | best hot pressure, kPa | rolling | ride frequency, Hz"
                        + " | roll, deg/g | shift, s | lock, % | camber, deg |");
        lines.add("|---|---|---|---|---|---|---|---|---|---|");
        for (TyreKind kind : TyreKind.values()) {
            lines.add("| `" + kind.word() + "` | " + range(kind.friction()) + " | " + plain(kind.stiffnessPerRad())
                    + " | "
                    + plain(kind.pressureKpa()) + " | " + plain(kind.rolling()) + " | " + plain(kind.frequencyHz())
                    + " | "
                    + plain(kind.rollDegPerG()) + " | " + range(kind.shiftTime()) + " | " + range(kind.lock()) + " | "
                    + plain(kind.camberFront()) + ", " + plain(kind.camberRear()) + " |");
        }
        lines.add("");
        lines.add(
                "| downforce | drag area, m² | downforce area, m² | centre of gravity, m | ride frequency at least, Hz | roll at most,"
                        + " deg/g |");
        lines.add("|---|---|---|---|---|---|");
        for (DownforceClass kind : DownforceClass.values()) {
            boolean any = kind.rollDegPerG() > 90;
            lines.add("| `" + kind.word() + "` | " + range(kind.dragArea()) + " | " + range(kind.liftArea()) + " | "
                    + range(kind.cgHeight()) + " | " + (kind.frequencyHz() > 0 ? plain(kind.frequencyHz()) : "any")
                    + " | "
                    + (any ? "any" : plain(kind.rollDegPerG())) + " |");
        }
        lines.add("");
        lines.add("| engine | rev limit over speed of peak power | taken | power against air |");
        lines.add("|---|---|---|---|");
        for (EngineKind kind : EngineKind.values()) {
            lines.add("| `" + kind.word() + "` | " + range(kind.revLimit()) + " | " + plain(kind.usualRevLimit())
                    + " | " + (kind == EngineKind.ASPIRATED ? "SAE J1349" : "none") + " |");
        }
        return lines;
    }

    private static String range(Range range) {
        return plain(range.low()) + " to " + plain(range.high());
    }

    private static String plain(double value) {
        return BigDecimal.valueOf(value)
                .round(new MathContext(4))
                .stripTrailingZeros()
                .toPlainString()
                .replace('-', '−');
    }

    /** A demo car, or one of the pages', with what its owner would answer. */
    public record Known(String name, Car car, CarAnswers answers) {
        private static Known of(
                String name,
                DrivenWheels driven,
                CarAnswers.Power power,
                CarAnswers.Tyres tyres,
                DownforceClass downforce,
                boolean atLimiter) {
            Car car = Documents.car(name);
            double[] ratios = car.gearRatios();
            return new Known(
                    name,
                    car,
                    new CarAnswers(
                            car.name() + " drafted",
                            car.value("chassis.massKg"),
                            driven,
                            power,
                            tyres,
                            OptionalDouble.of(car.value("chassis.wheelbaseM")),
                            OptionalDouble.of(car.value("chassis.frontWeightPercent")),
                            downforce,
                            CarAnswers.Gears.of(
                                    Arrays.stream(ratios).boxed().toList(), car.value("gearbox.finalDrive")),
                            new CarAnswers.TopSpeed(topSpeed(car), atLimiter),
                            OptionalDouble.of(stop(car))));
        }

        /** Highest speed on 25 km of straight, as a sheet would have it: to the km/h. */
        private static double topSpeed(Car car) {
            Track straight = new SegmentPath(List.of(Segment.straight(25_000)), false, 20).openTrack("straight", 30);
            double top =
                    LapSolver.lap(car, straight, Conditions.STANDARD).figures().topSpeed();
            return Math.rint(3.6 * top) / 3.6;
        }

        /** Hardest stop from 100 km/h, g, as somebody would say it: to a twentieth. */
        private static double stop(Car car) {
            AxleLimits limits = AxleLimits.of(Vehicle.of(car, Conditions.STANDARD));
            double g = 0.3;
            while (limits.in(TurnState.level(
                                    TurnState.Pedals.BRAKING,
                                    CarAnswers.STOP_FROM,
                                    -(g + 0.05) * StandardAtmosphere.GRAVITY,
                                    car.gearRatios().length))
                            .limit()
                    > 0) {
                g += 0.05;
            }
            return g;
        }
    }

    /** The demo cars; sizes of tyres and classes are what their descriptions say. */
    public static List<Known> known() {
        return List.of(
                Known.of(
                        "gt-talvex",
                        DrivenWheels.REAR,
                        new CarAnswers.Power(400e3, 7750, EngineKind.ASPIRATED),
                        new CarAnswers.Tyres(TyreSize.of("300/680-18"), TyreSize.of("310/710-18"), TyreKind.SLICK),
                        DownforceClass.LARGE,
                        true),
                Known.of(
                        "touring-merrow",
                        DrivenWheels.FRONT,
                        new CarAnswers.Power(250e3, 6250, EngineKind.TURBO),
                        new CarAnswers.Tyres(TyreSize.of("250/650-18"), TyreSize.of("250/650-18"), TyreKind.SLICK),
                        DownforceClass.SMALL,
                        true),
                Known.of(
                        "student-pipit",
                        DrivenWheels.REAR,
                        new CarAnswers.Power(60e3, 10_500, EngineKind.ASPIRATED),
                        new CarAnswers.Tyres(
                                TyreSize.of("16.2x7.5-10"), TyreSize.of("16.2x7.5-10"), TyreKind.SOFT_SLICK),
                        DownforceClass.WINGS,
                        false));
    }

    /** How near a drafted car's laps come to those of the car that it is drafted of, on a circuit. */
    public record Near(double truth, double drafted, double low, double high) {
        /** Of a car on a circuit, its interval of nine in ten by draws. */
        public static Near of(Known known, Track track, int draws) {
            LapSolver solver = LapSolver.on(track);
            Car drafted = CarDraft.of(known.answers()).car();
            PlausibleCars cars = PlausibleCars.of(drafted, Conditions.STANDARD);
            double[] times = Arrays.stream(cars.draws(draws, SEED))
                    .mapToDouble(draw ->
                            solver.lapTime(Vehicle.of(cars.car(drafted, draw), cars.day(Conditions.STANDARD, draw))))
                    .sorted()
                    .toArray();
            return new Near(
                    solver.lapTime(Vehicle.of(known.car(), Conditions.STANDARD)),
                    solver.lapTime(Vehicle.of(drafted, Conditions.STANDARD)),
                    times[(int) Math.round(0.05 * (draws - 1))],
                    times[(int) Math.round(0.95 * (draws - 1))]);
        }
    }

    private static List<String> demos() {
        List<String> lines = new ArrayList<>();
        lines.add("| car | circuit | its lap, s | drafted, s | off by | nine in ten of " + DRAWS + " such cars, s |");
        lines.add("|---|---|---|---|---|---|");
        for (Known known : known()) {
            for (String circuit : List.of("castelvane", "harrowmere")) {
                Near near = Near.of(known, Documents.circuit(circuit), DRAWS);
                lines.add(String.format(
                        Locale.ROOT,
                        "| `%s` | `%s` | %.1f | %.1f | %s%.1f %% | %.1f to %.1f |",
                        known.name(),
                        circuit,
                        near.truth(),
                        near.drafted(),
                        near.drafted() < near.truth() ? "−" : "+",
                        100 * Math.abs(near.drafted() / near.truth() - 1),
                        near.low(),
                        near.high()));
            }
        }
        return lines;
    }
}
