package dev.lapwright.cli.tables;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.fit.Fit;
import dev.lapwright.fit.FitParameter;
import dev.lapwright.fit.FitResult;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.logs.DrivenLapSelection;
import dev.lapwright.logs.DrivenLog;
import dev.lapwright.logs.DrivenLogs;
import dev.lapwright.track.Corner;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Prints the demo log {@code castelvane-laps.csv}: three laps that nobody drove and the beginning of an in lap, of a Talvex GT
 * that differs from its document by stated amounts, with a driver's scatter and sensors' noise. Uses the public API alone;
 * run from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/DrivenLapsDemo.java</pre>
 *
 * With {@code bar} behind it, the log {@code castelvane-laps-bar.csv}: three laps of the same car on the same day with the hardest front
 * bar. With a number behind it, as many logs like the first are drawn and fitted, and it prints as Markdown how often the intervals hold
 * the car that drove.
 */
public final class DrivenLapsDemo {
    /** How the car differs from its document. */
    public static final double GRIP = 0.965;

    public static final double POWER = 0.97;
    public static final double MORE_DRAG_AREA = 0.07;
    /** Standard deviation of the grip used on a lap, and of the speed in a corner, as shares. */
    private static final double LAP_SCATTER = 0.003;

    private static final double CORNER_SCATTER = 0.004;
    /** How far before and behind an apex a corner driven faster or slower shows, m. */
    private static final double REACH = 160;
    /** Samples a second. */
    private static final double RATE = 10;
    /** Standard deviations of speed, m/s, and accelerations, m/s². */
    private static final double SPEED_NOISE = 0.12;

    private static final double ACCELERATION_NOISE = 0.5;
    private static final double STANDARD_GRAVITY = 9.80665;
    private static final int FIRST_LAP = 4;
    private static final int LAPS = 3;
    private static final double IN_LAP_LENGTH = 900;
    /** The first whose laps tell grip, power and drag area within all their intervals; of the seeds 1 to 7 three do. */
    private static final long SEED = 4;

    /** Not chosen by what comes out. */
    private static final long BAR_SEED = 5;

    private static final int BAR_FIRST_LAP = 12;
    /** Setting of the front bar in the second log. */
    public static final double HARD_BAR = 6;

    private final Random random;
    private final StringBuilder text = new StringBuilder(
            "Lap,Time (s),Distance (m),Speed (km/h),Throttle (%)," + "Brake (%),Gear,Long accel (g),Lat accel (g)\n");
    private double bar = Double.NaN;
    private double clock;
    private double next;

    private DrivenLapsDemo(long seed) {
        random = new Random(seed);
    }

    /** Prints the log, or the table. */
    public static void main(String... arguments) {
        if (arguments.length == 0) {
            System.out.print(text());
        } else if (arguments[0].equals("bar")) {
            System.out.print(textOnHardBar());
        } else {
            coverage(Integer.parseInt(arguments[0]));
        }
    }

    private static void coverage(int draws) {
        Track track = line();
        Car given = Documents.car("gt-talvex");
        int[] told = new int[FitParameter.values().length];
        int[] held = new int[told.length];
        for (int seed = 1; seed <= draws; seed++) {
            DrivenLog log = DrivenLogs.read(new DocumentSource("draw " + seed, text(seed)), List.of());
            DrivenLapSelection pick = DrivenLapSelection.of(List.of(log), track, List.of());
            for (FitResult.Estimate estimate : Fit.of(given, track, Conditions.STANDARD)
                    .laps(pick.laps())
                    .run()
                    .estimates()) {
                if (estimate.determined()) {
                    double truth = truth(estimate);
                    int which = estimate.parameter().ordinal();
                    told[which]++;
                    held[which] += estimate.lower() <= truth && truth <= estimate.upper() ? 1 : 0;
                }
            }
        }
        System.out.println("| parameter | told, of " + draws + " draws | interval of 95 % holds the truth |");
        System.out.println("|---|---|---|");
        for (FitParameter parameter : FitParameter.values()) {
            int which = parameter.ordinal();
            System.out.println("| " + parameter.title() + " | " + told[which] + " | " + held[which] + " |");
        }
    }

    /** Value of the car that drove. */
    private static double truth(FitResult.Estimate estimate) {
        return switch (estimate.parameter()) {
            case GRIP -> GRIP;
            case POWER -> POWER;
            case DRAG_AREA -> estimate.before() + MORE_DRAG_AREA;
            case DOWNFORCE_AREA, ROLLING_RESISTANCE -> estimate.before();
        };
    }

    /** What the laps are driven on: the smoothest line of Castelvane. */
    private static Track line() {
        return LineSearch.of(Documents.circuit("castelvane"), Documents.car("gt-talvex"), LineChoices.DEFAULT)
                .smoothest()
                .driven();
    }

    public static String text() {
        return text(SEED);
    }

    /** The second log. */
    public static String textOnHardBar() {
        DrivenLapsDemo demo = new DrivenLapsDemo(BAR_SEED);
        demo.bar = HARD_BAR;
        Track track = line();
        for (int i = 0; i < LAPS; i++) {
            demo.lap(BAR_FIRST_LAP + i, track, track.length());
        }
        return demo.text.toString();
    }

    private static String text(long seed) {
        DrivenLapsDemo demo = new DrivenLapsDemo(seed);
        Track track = line();
        for (int i = 0; i < LAPS; i++) {
            demo.lap(FIRST_LAP + i, track, track.length());
        }
        demo.lap(FIRST_LAP + LAPS, track, IN_LAP_LENGTH);
        return demo.text.toString();
    }

    /** The car that drove. */
    public static Car car() {
        Car car = Documents.car("gt-talvex");
        return car.with("tyres.compoundGrip", GRIP * car.value("tyres.compoundGrip"))
                .with("engine.powerScale", POWER * car.value("engine.powerScale"))
                .with("aero.cdAM2", car.value("aero.cdAM2") + MORE_DRAG_AREA);
    }

    private void lap(int number, Track track, double length) {
        Car car = Double.isNaN(bar) ? car() : car().with("front-bar", bar);
        double used = 1 + LAP_SCATTER * random.nextGaussian();
        Lap lap = LapSolver.on(track)
                .solve(Vehicle.of(
                        car.with("tyres.compoundGrip", used * car.value("tyres.compoundGrip")), Conditions.STANDARD));
        double[] s = lap.column(Channel.DISTANCE);
        double[] v = driven(lap, s);
        double brakes = most(lap.column(Channel.BRAKE_FORCE));
        double power = power(lap, s.length);
        for (int i = 0; i + 1 < s.length && s[i] < length; i++) {
            double time = 2 * (s[i + 1] - s[i]) / (v[i] + v[i + 1]);
            while (next < clock + time) {
                double share = (next - clock) / time;
                int nearest = share < 0.5 ? i : i + 1;
                sample(
                        number,
                        lap,
                        nearest,
                        s[i] + share * (s[i + 1] - s[i]),
                        v[i] + share * (v[i + 1] - v[i]),
                        brakes,
                        power);
                next += 1 / RATE;
            }
            clock += time;
        }
    }

    /** Speeds of the lap, each corner a little faster or slower than the model's. */
    private double[] driven(Lap lap, double[] s) {
        double[] v = lap.column(Channel.SPEED);
        double length = lap.track().length();
        for (Corner corner : lap.stations().corners()) {
            double share = CORNER_SCATTER * random.nextGaussian();
            for (int i = 0; i < v.length; i++) {
                double away = Math.abs(s[i] - corner.apex());
                away = Math.min(away, length - away);
                if (away < REACH) {
                    double bell = 0.5 * (1 + Math.cos(Math.PI * away / REACH));
                    v[i] *= 1 + share * bell;
                }
            }
        }
        return v;
    }

    private static double most(double[] values) {
        double most = 0;
        for (double value : values) {
            most = Math.max(most, value);
        }
        return most;
    }

    private static double power(Lap lap, int count) {
        double most = 0;
        for (int i = 0; i < count; i++) {
            most = Math.max(most, lap.value(Channel.DRIVE_FORCE, i) * lap.value(Channel.SPEED, i));
        }
        return most;
    }

    private void sample(int number, Lap lap, int at, double distance, double speed, double brakes, double power) {
        double drive = lap.value(Channel.DRIVE_FORCE, at) * lap.value(Channel.SPEED, at) / power;
        boolean flat = lap.limit(at) == Limit.POWER || lap.limit(at) == Limit.REV_LIMIT;
        double throttle = flat ? 1 : Math.min(0.95, drive);
        double brake = lap.value(Channel.BRAKE_FORCE, at) / brakes;
        text.append(String.format(
                Locale.ROOT,
                "%d,%.1f,%.1f,%.1f,%.0f,%.0f,%d,%.2f,%.2f\n",
                number,
                next,
                distance,
                3.6 * (speed + SPEED_NOISE * random.nextGaussian()),
                100 * throttle,
                100 * brake,
                (int) lap.value(Channel.GEAR, at),
                gravities(lap.value(Channel.LONGITUDINAL_ACCELERATION, at)),
                gravities(lap.value(Channel.LATERAL_ACCELERATION, at))));
    }

    private double gravities(double acceleration) {
        return (acceleration + ACCELERATION_NOISE * random.nextGaussian()) / STANDARD_GRAVITY;
    }
}
