package dev.lapwright.cli.event;

import dev.lapwright.car.Car;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.option.PredictedChange;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventRun;
import dev.lapwright.notebook.RunText;
import dev.lapwright.report.Numbers;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * Texts that a run is noted with, by the command or on the bench; null where nothing was said.
 *
 * @param laps lap times with commas between
 * @param fuel litres at its beginning
 * @param cold pressures as set
 * @param hot pressures as read after it
 * @param tread temperatures across the treads
 * @param driver the driver's words
 * @param tyres which were on
 * @param remark anything else
 * @param expected what was expected of the change
 */
public record RunEntry(
        String laps,
        String fuel,
        String cold,
        String hot,
        String tread,
        String driver,
        String tyres,
        String remark,
        String expected) {
    /** A model's lap over one that was driven, at most and at least: beyond it the laps are of another circuit or car. */
    private static final double MUCH_FASTER = 0.9;

    private static final double MUCH_SLOWER = 1.5;
    private static final int DECIMALS = 3;

    /**
     * A run with what was said; its laps are added to those that it has.
     *
     * @throws InvalidValueException if a text is not what it is to be, with the name that it has in a run's file
     */
    public EventRun on(EventRun before) {
        EventRun run = before;
        if (laps != null) {
            List<EventRun.TimedLap> all = new ArrayList<>(before.laps());
            all.addAll(RunText.laps(laps));
            run = run.with(all);
        }
        if (fuel != null) {
            run = run.with(RunText.litres(fuel));
        }
        EventRun.TyreReadings was = before.tyres();
        run = run.with(new EventRun.TyreReadings(
                cold == null ? was.coldKpa() : RunText.pressures(cold, Unit.PSI),
                hot == null ? was.hotKpa() : RunText.pressures(hot, Unit.PSI),
                tread == null ? was.treads() : RunText.treads(tread)));
        if (expected != null) {
            run = run.with(RunText.expected(expected));
        }
        EventRun.Words words = before.words();
        return run.with(new EventRun.Words(
                driver == null ? words.driver() : RunText.plain(driver),
                tyres == null ? words.tyres() : RunText.plain(tyres),
                remark == null ? words.remark() : RunText.plain(remark)));
    }

    /** Settings without those at their standard, so that a setup has one name however it was reached. */
    public static Map<String, Double> onlyWhatDiffers(Car car, Map<String, Double> settings) {
        Map<String, Double> differing = new LinkedHashMap<>();
        new TreeMap<>(settings).forEach((name, value) -> {
            boolean standard = car.adjustments().stream().anyMatch(a -> a.name().equals(name) && a.standard() == value);
            if (!standard) {
                differing.put(name, value);
            }
        });
        return differing;
    }

    /** A run with what the model expects of its change. */
    public static EventRun expecting(EventRun run, PredictedChange predicted) {
        return run.with(new EventRun.Expected(
                OptionalDouble.of(rounded(predicted.difference())),
                predicted.doubt().isPresent()
                        ? OptionalDouble.of(rounded(predicted.doubt().getAsDouble()))
                        : OptionalDouble.empty()));
    }

    private static double rounded(double seconds) {
        return new BigDecimal(seconds)
                .setScale(DECIMALS, RoundingMode.HALF_EVEN)
                .doubleValue();
    }

    /** What is expected of a run, in words; empty if nothing is. */
    public static String told(EventRun.Expected expected) {
        if (expected.difference().isEmpty()) {
            return "";
        }
        return Numbers.signed(expected.difference().getAsDouble(), 2) + " s a lap"
                + (expected.deviation().isPresent()
                        ? ", give or take "
                                + Numbers.fixed(1.96 * expected.deviation().getAsDouble(), 2)
                        : "")
                + ", beside the setup before";
    }

    /** Whether a run has laps that tell how fast it was. */
    public static boolean isTimed(EventRun run) {
        return run.laps().stream().anyMatch(lap -> lap.flag() == TimingLog.Flag.NONE);
    }

    /**
     * Refuses laps that no such car drives there: they are of another circuit.
     *
     * @param model the lap time by the model, s
     */
    public static void check(Event event, EventRun run, double model) {
        double[] flying = run.laps().stream()
                .filter(lap -> lap.flag() == TimingLog.Flag.NONE)
                .mapToDouble(EventRun.TimedLap::time)
                .sorted()
                .toArray();
        double median = flying[flying.length / 2];
        if (median < MUCH_FASTER * model || median > MUCH_SLOWER * model) {
            throw new InvalidValueException(
                    "laps",
                    "half of them take " + Numbers.lapTime(median) + " or less, and this car takes "
                            + Numbers.lapTime(model) + " at " + event.track().name()
                            + " by the model: they are of another circuit, or of another car",
                    "look at the laps, and at car and circuit of the event; mark slow laps as out, in or spoilt");
        }
    }
}
