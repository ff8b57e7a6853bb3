package dev.lapwright.fit;

import dev.lapwright.car.Conditions;
import dev.lapwright.fault.LapwrightException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Counts how often intervals of 95 % hold the truth on {@linkplain FaultyDay days on which something is wrong}. Run by hand for the
 * table that docs/theory.md prints: {@code FaultTable LOGS [FAULT]...}.
 */
final class FaultTable {
    private static final long SEED = 1000;

    private final Map<FitParameter, int[]> counts = new EnumMap<>(FitParameter.class);
    private final Map<FitParameter, List<Double>> halves = new EnumMap<>(FitParameter.class);
    private int failed;

    FaultTable() {
        for (FitParameter parameter : FitParameter.values()) {
            counts.put(parameter, new int[2]);
            halves.put(parameter, new ArrayList<>());
        }
    }

    /** Days of one fault, from seed 1000 on. */
    FaultTable run(FaultyDay.Fault fault, int days) {
        for (int day = 0; day < days; day++) {
            try {
                FitResult result = Fit.of(FaultyDay.given(), FaultyDay.track(), Conditions.STANDARD)
                        .laps(FaultyDay.laps(fault, SEED + day))
                        .run();
                result.estimates().forEach(this::count);
            } catch (LapwrightException e) {
                failed++;
                System.err.println(fault + " " + day + ": " + e.getMessage());
            }
        }
        return this;
    }

    private void count(FitResult.Estimate e) {
        if (e.identifiability() != FitResult.Identifiability.HELD) {
            int[] count = counts.get(e.parameter());
            count[0]++;
            // The truth is the car as given.
            count[1] += e.lower() <= e.before() && e.before() <= e.upper() ? 1 : 0;
            halves.get(e.parameter()).add(0.5 * (e.upper() - e.lower()));
        }
    }

    /** How many intervals there were. */
    int told(FitParameter parameter) {
        return counts.get(parameter)[0];
    }

    /** How many of them held the truth. */
    int held(FitParameter parameter) {
        return counts.get(parameter)[1];
    }

    /** Fits that failed, and said so. */
    int failed() {
        return failed;
    }

    /** Median of half the intervals' width, in the parameter's unit. */
    double half(FitParameter parameter) {
        List<Double> sorted = halves.get(parameter).stream().sorted().toList();
        return sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() / 2);
    }

    /** Prints the table. */
    public static void main(String[] arguments) {
        int days = Integer.parseInt(arguments[0]);
        System.out.println("| wrong, " + days + " days from seed " + SEED
                + " | grip | drag | downforce | power | rolling | half widths |");
        System.out.println("|---|---|---|---|---|---|---|");
        for (FaultyDay.Fault fault : FaultyDay.Fault.values()) {
            if (arguments.length > 1 && !List.of(arguments).contains(fault.name())) {
                continue;
            }
            FaultTable table = new FaultTable().run(fault, days);
            StringBuilder row = new StringBuilder("| ").append(fault).append(" |");
            StringBuilder widths = new StringBuilder();
            for (FitParameter p : FitParameter.values()) {
                row.append(String.format(
                        Locale.ROOT, " %.1f of %d |", 100.0 * table.held(p) / table.told(p), table.told(p)));
                widths.append(String.format(Locale.ROOT, " %.4f", table.half(p)));
            }
            System.out.println(row.append(widths).append(" | failed ").append(table.failed()));
        }
    }
}
