package dev.lapwright.doubt;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.DayDoubt;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ObjDoubleConsumer;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * All cars that a car may truly be, and all days: each number as far off as its document says, or as is usual in its class ({@link
 * DoubtClass}). What is positive is off by a lognormal factor, the stated value in its middle; what may be negative by a normal amount;
 * what has a limit by any amount within it alike. An error is the same in all settings of the car. Immutable.
 *
 * <pre>{@code
 * PlausibleCars cars = PlausibleCars.of(car, Conditions.STANDARD);
 * double[][] draws = cars.draws(100, 1);
 * Car one = cars.car(car.with("rear-wing", 8), draws[0]);
 * }</pre>
 *
 * <p>Not in doubt: the circuit and the line ({@link PlausibleRoads}), the shape of torque curve and aero maps, and what a document gives as 0 and its class
 * in percent.
 */
public final class PlausibleCars {
    private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);
    private static final double PERCENT = 100;
    /** An error that hangs so closely on those above has nothing of its own: correlations are written in five digits. */
    private static final double OWN = 1e-2;

    private static final Map<String, Quantity> BY_PATH =
            Arrays.stream(Quantity.values()).collect(Collectors.toMap(Quantity::path, Function.identity()));

    private static final Set<DoubtClass> DAYS =
            EnumSet.of(DoubtClass.AIR_TEMPERATURE, DoubtClass.AIR_PRESSURE, DoubtClass.WIND);

    private final Car reference;
    private final DayDoubt day;
    private final boolean assuming;
    private final List<Unknown> unknowns = new ArrayList<>();
    private final List<Move> moves = new ArrayList<>();

    /** Movement of a car or a day by what was drawn. */
    @FunctionalInterface
    private interface Move {
        void by(double[] draw, Draft draft);
    }

    /** What becomes of one car and its day. */
    private static final class Draft {
        private final Map<String, Double> factors = new HashMap<>();
        private final Map<String, Double> shifts = new HashMap<>();
        private final Map<String, Double> wingDrag = new HashMap<>();
        private final Map<String, Double> wingLift = new HashMap<>();
        private double drag = 1;
        private double lift = 1;
        private double temperature;
        private double pressure;
        private double windNorth;
        private double windEast;

        void factor(String quantity, double factor) {
            factors.merge(quantity, factor, (a, b) -> a * b);
        }

        void shift(String quantity, double amount) {
            shifts.merge(quantity, amount, Double::sum);
        }
    }

    private PlausibleCars(Car reference, DayDoubt day, boolean assuming) {
        this.reference = reference;
        this.day = day;
        this.assuming = assuming;
        stated();
        for (DoubtClass kind : DoubtClass.values()) {
            if (assuming || DAYS.contains(kind)) {
                assumed(kind);
            }
        }
    }

    /** The cars that one may be, and the days: what documents do not state is assumed by its class. */
    public static PlausibleCars of(Car car, Conditions day) {
        return new PlausibleCars(car, day.doubt(), true);
    }

    /** The cars that one may be, and the days, by what documents state alone. */
    public static PlausibleCars asStated(Car car, Conditions day) {
        return new PlausibleCars(car, day.doubt(), false);
    }

    /** The unknowns, those that the document states first; independent of each other. */
    public List<Unknown> unknowns() {
        return List.copyOf(unknowns);
    }

    /**
     * Draws of all unknowns, each standard normal, by {@link LatinHypercube}.
     *
     * @return draws by unknowns; the caller's
     */
    public double[][] draws(int count, long seed) {
        return LatinHypercube.normal(count, unknowns.size(), seed);
    }

    /**
     * A car of the same document, set up as it is, as it would be if the errors were these.
     *
     * @param setUp the car in any setting
     * @param draw one number for each unknown; not modified
     * @throws dev.lapwright.fault.InvalidValueException if no car can be so
     */
    public Car car(Car setUp, double[] draw) {
        Draft draft = draft(draw);
        Map<String, Double> values = new HashMap<>();
        draft.factors.forEach((name, factor) -> values.put(name, factor * setUp.value(name)));
        draft.shifts.forEach((name, shift) -> values.merge(name, setUp.value(name) + shift, (a, b) -> a + shift));
        values.replaceAll(PlausibleCars::within);
        List<Wing> wings = new ArrayList<>();
        for (Wing wing : setUp.wings()) {
            wings.add(drawn(wing, draft));
        }
        return setUp.deviating(values, wings);
    }

    /**
     * Standard deviation of each quantity of the car over drawn cars, in its unit, by all unknowns together.
     *
     * @param count cars drawn, at least 2
     * @return by the names of {@link Car#quantityNames()}, in their order; 0 where nothing is in doubt
     */
    public Map<String, Double> deviations(int count, long seed) {
        Check.inRange("cars drawn", count, 2, 1_000_000);
        List<String> names = reference.quantityNames();
        double[] sum = new double[names.size()];
        double[] squares = new double[names.size()];
        for (double[] draw : draws(count, seed)) {
            Car drawn = car(reference, draw);
            for (int i = 0; i < sum.length; i++) {
                // About the value itself: no cancellation where the doubt is small.
                double off = drawn.value(names.get(i)) - reference.value(names.get(i));
                sum[i] += off;
                squares[i] += off * off;
            }
        }
        Map<String, Double> deviations = new LinkedHashMap<>();
        for (int i = 0; i < sum.length; i++) {
            double variance = (squares[i] - sum[i] * sum[i] / count) / (count - 1);
            deviations.put(names.get(i), Math.sqrt(Math.max(0, variance)));
        }
        return deviations;
    }

    /** A day as it would be if the errors were these. */
    public Conditions day(Conditions day, double[] draw) {
        Draft draft = draft(draw);
        double from = Math.toRadians(day.windFromDeg());
        double north = day.windSpeedMps() * Math.cos(from) + draft.windNorth;
        double east = day.windSpeedMps() * Math.sin(from) + draft.windEast;
        return new Conditions(
                day.name(),
                clamped(day.airTempC() + draft.temperature, -40, 60),
                clamped(day.airPressureHpa() + draft.pressure, 400, 1100),
                day.humidityPercent(),
                Math.min(Conditions.MAX_WIND_SPEED_MPS, Math.hypot(north, east)),
                Math.toDegrees(Math.atan2(east, north)),
                day.grip(),
                day.doubt());
    }

    private Draft draft(double[] draw) {
        Draft draft = new Draft();
        moves.forEach(move -> move.by(draw, draft));
        return draft;
    }

    private static double within(String name, double value) {
        Quantity quantity = BY_PATH.get(name);
        return quantity == null ? value : clamped(value, quantity.min(), quantity.max());
    }

    private static double clamped(double value, double least, double most) {
        return Math.max(least, Math.min(most, value));
    }

    /** A wing whose level is that of the whole car's areas, and whose effect turns about where it stands in the reference. */
    private Wing drawn(Wing wing, Draft draft) {
        Areas pivot = wing.at(reference.value(angle(wing)));
        double drag = draft.wingDrag.getOrDefault(wing.name(), 1.0);
        double lift = draft.wingLift.getOrDefault(wing.name(), 1.0);
        List<Wing.Setting> table = new ArrayList<>();
        for (Wing.Setting setting : wing.settings()) {
            Areas areas = setting.areas();
            table.add(new Wing.Setting(
                    setting.angleDeg(),
                    new Areas(
                            draft.drag * (pivot.drag() + drag * (areas.drag() - pivot.drag())),
                            draft.lift * (pivot.liftFront() + lift * (areas.liftFront() - pivot.liftFront())),
                            draft.lift * (pivot.liftRear() + lift * (areas.liftRear() - pivot.liftRear())))));
        }
        return new Wing(wing.name(), table);
    }

    private static String angle(Wing wing) {
        return "aero.wings." + wing.name() + ".angleDeg";
    }

    /** Adds an unknown; its place in a draw. */
    private int add(Unknown unknown) {
        unknowns.add(unknown);
        return unknowns.size() - 1;
    }

    /** Quantities of which the document speaks; of those that hang together each adds what the ones above leave open. */
    private void stated() {
        CarDoubt doubt = reference.doubt();
        List<String> together = doubt.correlated();
        double[][] root = root(doubt.correlation());
        int[] places = new int[together.size()];
        for (int i = 0; i < places.length; i++) {
            places[i] = root[i][i] > 0 ? add(stated(together.get(i), doubt)) : -1;
            double[] row = root[i];
            moves.add(move(together.get(i), doubt.quantities().get(together.get(i)), draw -> mixed(row, places, draw)));
        }
        doubt.quantities().forEach((name, size) -> {
            if (!together.contains(name)) {
                int place = add(stated(name, doubt));
                moves.add(move(name, size, draw -> draw[place]));
            }
        });
    }

    private static double mixed(double[] row, int[] places, double[] draw) {
        double sum = 0;
        for (int j = 0; j < row.length; j++) {
            sum += places[j] < 0 ? 0 : row[j] * draw[places[j]];
        }
        return sum;
    }

    /** Lower triangle R of R Rᵀ = C by Cholesky's rows; a row that hangs wholly on those above has nothing of its own. */
    private static double[][] root(double[][] c) {
        int n = c.length;
        double[][] r = new double[n][n];
        for (int i = 0; i < n; i++) {
            double rest = c[i][i];
            for (int j = 0; j < i; j++) {
                double sum = c[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= r[i][k] * r[j][k];
                }
                r[i][j] = r[j][j] > 0 ? sum / r[j][j] : 0;
                rest -= r[i][j] * r[i][j];
            }
            r[i][i] = rest > OWN * OWN ? Math.sqrt(rest) : 0;
        }
        return r;
    }

    /** A quantity in words; of wings and gears, of which a car has as many as it likes, its name. */
    private static String title(String name) {
        Quantity known = BY_PATH.get(name);
        return known == null ? name : known.meaning().replaceAll(";.*", "");
    }

    private Unknown stated(String name, CarDoubt doubt) {
        CarDoubt.Size size = doubt.quantities().get(name);
        String measure = Arrays.stream(DoubtClass.values())
                .filter(kind ->
                        kind.quantities().stream().anyMatch(q -> q.path().equals(name)))
                .map(DoubtClass::measure)
                .findFirst()
                .orElse("");
        String unit = size.percent() ? "%" : reference.unitOf(name).symbol();
        return new Unknown(title(name), size.amount(), unit, size.limit(), Optional.of(size.source()), measure, "");
    }

    /** How a stated doubt moves its quantity: by a factor where it is positive, or given in percent within limits. */
    private Move move(String name, CarDoubt.Size size, Function<double[], Double> normal) {
        double value = reference.value(name);
        Quantity known = BY_PATH.get(name);
        boolean positive = value > 0 && (known == null ? !name.endsWith("angleDeg") : known.min() >= 0);
        if (size.limit()) {
            double amount = size.amount();
            return size.percent()
                    ? (draw, draft) -> draft.factor(name, 1 + amount / PERCENT * even(normal.apply(draw)))
                    : (draw, draft) -> draft.shift(name, amount * even(normal.apply(draw)));
        }
        double deviation = size.standardDeviation(value);
        if (positive) {
            double sigma = lognormal(deviation / value);
            return (draw, draft) -> draft.factor(name, Math.exp(sigma * normal.apply(draw)));
        }
        return (draw, draft) -> draft.shift(name, deviation * normal.apply(draw));
    }

    /** Deviation of the logarithm of a lognormal number with this deviation, relative to its mean. */
    private static double lognormal(double relative) {
        return Math.sqrt(Math.log1p(relative * relative));
    }

    /** A standard normal number as one of even chance from −1 to 1. */
    private static double even(double normal) {
        return 2 * NORMAL.cumulativeProbability(normal) - 1;
    }

    private void assumed(DoubtClass kind) {
        switch (kind) {
            case DRAG, DOWNFORCE -> wholeCar(kind);
            case AERO_BALANCE -> aeroBalance();
            case GRIP_BALANCE -> gripBalance();
            case WING_DRAG, WING_DOWNFORCE -> wings(kind);
            case AIR_TEMPERATURE -> ofTheDay(kind, "", day.airTempK(), (draft, change) -> draft.temperature += change);
            case AIR_PRESSURE -> ofTheDay(kind, "", day.airPressureHpa(), (draft, change) -> draft.pressure += change);
            case WIND -> {
                ofTheDay(kind, "north", day.windMps(), (draft, change) -> draft.windNorth += change);
                ofTheDay(kind, "east", day.windMps(), (draft, change) -> draft.windEast += change);
            }
            case CORNER, DRIVEN_LINE, WIDTH, ROAD_GRIP, CONSUMPTION, COMPOUND_GRIP, WEAR -> {
                // Those of the circuit, in PlausibleRoads, and of a stint.
            }
            case TYRE_TEMPERATURE, IDEAL_TEMPERATURE -> {
                if (reference.value(Quantity.TEMPERATURE_LOSS) != 0) {
                    quantities(kind);
                }
            }
            default -> quantities(kind);
        }
    }

    private void ofTheDay(DoubtClass kind, String of, OptionalDouble stated, ObjDoubleConsumer<Draft> mover) {
        if (stated.isPresent() || assuming) {
            double size = stated.orElse(kind.size());
            int place = add(new Unknown(
                    kind.unknown(of).title(),
                    size,
                    kind.unit(),
                    false,
                    stated.isPresent() ? Optional.of(CarDoubt.Source.MEASURED) : Optional.empty(),
                    kind.measure(),
                    ""));
            moves.add((draw, draft) -> mover.accept(draft, size * draw[place]));
        }
    }

    /** Paths of what a class moves and the document does not speak of. */
    private List<String> open(DoubtClass kind) {
        List<String> paths = new ArrayList<>();
        for (Quantity quantity : kind.quantities()) {
            boolean moved = kind.way != DoubtClass.Way.PERCENT || reference.value(quantity) != 0;
            if (moved && !isStated(quantity)) {
                paths.add(quantity.path());
            }
        }
        return paths;
    }

    private boolean isStated(Quantity quantity) {
        return reference.doubt().quantities().containsKey(quantity.path());
    }

    private void quantities(DoubtClass kind) {
        List<String> paths = open(kind);
        if (paths.isEmpty()) {
            return;
        }
        int place = add(kind.unknown(""));
        double sigma = lognormal(kind.size() / PERCENT);
        for (String path : paths) {
            moves.add(
                    switch (kind.way) {
                        case PERCENT -> (draw, draft) -> draft.factor(path, Math.exp(sigma * draw[place]));
                        case LIMIT -> (draw, draft) -> draft.shift(path, kind.size() * even(draw[place]));
                        default -> (draw, draft) -> draft.shift(path, kind.size() * draw[place]);
                    });
        }
    }

    /** Base and wings alike, as far as the document is silent; wings where it says nothing of the base. */
    private void wholeCar(DoubtClass kind) {
        List<String> paths = open(kind);
        if (paths.isEmpty()) {
            return;
        }
        int place = add(kind.unknown(""));
        double sigma = lognormal(kind.size() / PERCENT);
        boolean wings = paths.size() == kind.quantities().size();
        moves.add((draw, draft) -> {
            double factor = Math.exp(sigma * draw[place]);
            paths.forEach(path -> draft.factor(path, factor));
            if (wings && kind == DoubtClass.DRAG) {
                draft.drag *= factor;
            } else if (wings) {
                draft.lift *= factor;
            }
        });
    }

    private void aeroBalance() {
        List<String> paths = open(DoubtClass.AERO_BALANCE);
        double total = reference.value(Quantity.LIFT_AREA_FRONT) + reference.value(Quantity.LIFT_AREA_REAR);
        for (Wing wing : reference.wings()) {
            Areas areas = wing.at(reference.value(angle(wing)));
            total += areas.liftFront() + areas.liftRear();
        }
        if (paths.isEmpty() || total == 0) {
            return;
        }
        int place = add(DoubtClass.AERO_BALANCE.unknown(""));
        double amount = DoubtClass.AERO_BALANCE.size() / PERCENT * total;
        for (String path : paths) {
            double signed = path.equals(Quantity.LIFT_AREA_FRONT.path()) ? amount : -amount;
            moves.add((draw, draft) -> draft.shift(path, signed * draw[place]));
        }
    }

    private void gripBalance() {
        List<String> paths = open(DoubtClass.GRIP_BALANCE);
        if (paths.isEmpty()) {
            return;
        }
        int place = add(DoubtClass.GRIP_BALANCE.unknown(""));
        double half = lognormal(DoubtClass.GRIP_BALANCE.size() / PERCENT) / 2;
        for (String path : paths) {
            double signed = path.startsWith("tyres.front.") ? half : -half;
            moves.add((draw, draft) -> draft.factor(path, Math.exp(signed * draw[place])));
        }
    }

    private void wings(DoubtClass kind) {
        double sigma = lognormal(kind.size() / PERCENT);
        for (Wing wing : reference.wings()) {
            if (wing.settings().size() > 1) {
                int place = add(kind.unknown(wing.name()));
                moves.add((draw, draft) -> (kind == DoubtClass.WING_DRAG ? draft.wingDrag : draft.wingLift)
                        .put(wing.name(), Math.exp(sigma * draw[place])));
            }
        }
    }
}
