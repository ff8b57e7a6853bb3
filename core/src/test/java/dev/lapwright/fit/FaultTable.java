package dev.lapwright.fit;

import dev.lapwright.car.Conditions;
import dev.lapwright.fault.LapwrightException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Counts how often intervals hold the truth on {@linkplain FaultyDay days on which something is wrong}, and which culprit is named. Run by
 * hand for the tables that docs/theory.md prints: {@code FaultTable DAYS} for days of one run, {@code FaultTable DAYS wing} or {@code bar}
 * for days of two; a first seed may follow ({@code one} before it for days of one run). All faults of one day before the next day; tables are printed after every {@value #EVERY} days, the last at the end.
 */
final class FaultTable {
    private static final long SEED = 1000;
    private static final int EVERY = 10;
    /** Half an interval of 95 %, in standard deviations. */
    private static final double NORMAL = 1.96;

    private static final List<FitParameter> SHOWN = List.of(
            FitParameter.GRIP,
            FitParameter.DRAG_AREA,
            FitParameter.DOWNFORCE_AREA,
            FitParameter.POWER,
            FitParameter.ROLLING_RESISTANCE);

    private final FaultyDay.Fault fault;
    private final Map<FitParameter, Tally> before = tallies();
    private final Map<FitParameter, Tally> now = tallies();
    private final Map<FitNuisance, Tally> nuisances = new EnumMap<>(FitNuisance.class);
    private int failed;
    private int right;
    private int wrong;
    private int days;

    /** Intervals that held, of how many, and half their widths. */
    private static final class Tally {
        private int held;
        private final List<Double> halves = new ArrayList<>();

        void add(boolean holds, double half) {
            held += holds ? 1 : 0;
            halves.add(half);
        }

        double percent() {
            return 100.0 * held / halves.size();
        }

        double half() {
            List<Double> sorted = halves.stream().sorted().toList();
            return sorted.isEmpty() ? Double.NaN : sorted.get(sorted.size() / 2);
        }
    }

    FaultTable(FaultyDay.Fault fault) {
        this.fault = fault;
    }

    private static Map<FitParameter, Tally> tallies() {
        Map<FitParameter, Tally> tallies = new EnumMap<>(FitParameter.class);
        for (FitParameter parameter : FitParameter.values()) {
            tallies.put(parameter, new Tally());
        }
        return tallies;
    }

    /** Days of one run, from seed 1000 on. */
    FaultTable run(int many) {
        for (int day = 0; day < many; day++) {
            one(SEED + day, FitDoubts.USUAL, now);
        }
        return this;
    }

    /** One day of one run. */
    private void one(long seed, FitDoubts doubts, Map<FitParameter, Tally> tallies) {
        Fit fit = Fit.of(FaultyDay.given(), FaultyDay.track(), Conditions.STANDARD)
                .laps(FaultyDay.laps(fault, seed))
                .doubting(doubts);
        count(fit, seed, FaultyDay.of(fault, seed), tallies);
    }

    /** One day of two runs. */
    private void two(long seed, Map<String, Double> first, Map<String, Double> second) {
        FaultyDay day = FaultyDay.of(fault, seed);
        DrivenRun one = day.run(first);
        Fit fit = Fit.of(one.car(), FaultyDay.track(), Conditions.STANDARD)
                .laps(one.laps())
                .also(day.run(second));
        count(fit, seed, day, now);
    }

    private void count(Fit fit, long seed, FaultyDay day, Map<FitParameter, Tally> tallies) {
        try {
            FitResult result = fit.run();
            for (FitResult.Estimate e : result.estimates()) {
                if (e.identifiability() != FitResult.Identifiability.HELD) {
                    // The truth is the car as given.
                    tallies.get(e.parameter())
                            .add(e.lower() <= e.before() && e.before() <= e.upper(), 0.5 * (e.upper() - e.lower()));
                }
            }
            if (tallies == now) {
                countRest(result, day);
            }
        } catch (LapwrightException e) {
            failed++;
            System.err.println(fault + " " + seed + ": " + e.getMessage());
        }
    }

    private void countRest(FitResult result, FaultyDay day) {
        days++;
        for (FitResult.Nuisance found : result.doubts().nuisances()) {
            if (found.nuisance().side() == FitNuisance.Side.CAR) {
                double half = NORMAL * found.standardError();
                boolean holds = Math.abs(found.found() - day.truth(found.nuisance())) <= half;
                nuisances.computeIfAbsent(found.nuisance(), any -> new Tally()).add(holds, half);
            }
        }
        if (!result.doubts().suspicions().isEmpty()) {
            boolean is = result.doubts().suspicions().get(0).cause() == fault.cause();
            right += is ? 1 : 0;
            wrong += is ? 0 : 1;
        }
    }

    /** How many intervals there were. */
    int told(FitParameter parameter) {
        return now.get(parameter).halves.size();
    }

    /** How many of them held the truth. */
    int held(FitParameter parameter) {
        return now.get(parameter).held;
    }

    /** How many intervals of a nuisance held the truth. */
    int held(FitNuisance nuisance) {
        return nuisances.get(nuisance).held;
    }

    /** Fits that failed, and said so. */
    int failed() {
        return failed;
    }

    private String row() {
        StringBuilder row = new StringBuilder("| ").append(fault.words()).append(" |");
        for (FitParameter p : SHOWN) {
            row.append(String.format(Locale.ROOT, " %s | %s |", text(before.get(p)), text(now.get(p))));
        }
        boolean one = fault.cause() != null;
        return row.append(String.format(
                        Locale.ROOT,
                        " %s | %.0f | %d |",
                        one ? String.format(Locale.ROOT, "%.0f", 100.0 * right / days) : "–",
                        100.0 * (one ? wrong : right + wrong) / days,
                        failed))
                .toString();
    }

    private static String text(Tally tally) {
        return tally.halves.isEmpty() ? "–" : String.format(Locale.ROOT, "%.1f", tally.percent());
    }

    private String widths() {
        StringBuilder row = new StringBuilder("| ").append(fault.words()).append(" |");
        for (FitParameter p : SHOWN) {
            row.append(String.format(
                    Locale.ROOT,
                    " %.4f | %.4f |",
                    before.get(p).half(),
                    now.get(p).half()));
        }
        return row.toString();
    }

    private String nuisanceRow() {
        StringBuilder row = new StringBuilder("| ").append(fault.words()).append(" |");
        for (FitNuisance nuisance : List.of(FitNuisance.LOAD_SENSITIVITY, FitNuisance.GRIP_BALANCE)) {
            Tally tally = nuisances.get(nuisance);
            row.append(String.format(
                    Locale.ROOT, " %.1f | %.2f |", tally.percent(), tally.half() / NORMAL / nuisance.usual()));
        }
        for (FitParameter p : List.of(FitParameter.GRIP, FitParameter.DOWNFORCE_AREA)) {
            row.append(String.format(Locale.ROOT, " %.1f |", now.get(p).percent()));
        }
        return row.append(" ").append(failed).append(" |").toString();
    }

    private static List<FaultTable> all() {
        List<FaultTable> all = new ArrayList<>();
        for (FaultyDay.Fault fault : FaultyDay.Fault.values()) {
            all.add(new FaultTable(fault));
        }
        return all;
    }

    private static void oneRun(int days, long first) {
        List<FaultTable> all = all();
        for (int day = 0; day < days; day++) {
            for (FaultTable table : all) {
                table.one(first + day, FitDoubts.none(), table.before);
                table.one(first + day, FitDoubts.USUAL, table.now);
            }
            if ((day + 1) % EVERY == 0 || day + 1 == days) {
                System.out.println("\n" + (day + 1) + " days of each fault from seed " + first + "; percent that hold");
                print(
                        "| wrong | grip before | now | drag before | now | downforce before | now | power before | now |"
                                + " rolling before | now | culprit right | wrong | failed |",
                        all.stream().map(FaultTable::row).toList());
                System.out.println("\nMedian half widths of intervals of 95 %");
                print(
                        "| wrong | grip before | now | drag, m² before | now | downforce, m² before | now | power before | now |"
                                + " rolling before | now |",
                        all.stream().map(FaultTable::widths).toList());
            }
        }
    }

    private static void twoRuns(int days, long from, Map<String, Double> first, Map<String, Double> second) {
        List<FaultTable> all = all().stream()
                .filter(table -> List.of(
                                FaultyDay.Fault.NONE, FaultyDay.Fault.TYRES, FaultyDay.Fault.LINE, FaultyDay.Fault.ALL)
                        .contains(table.fault))
                .toList();
        for (int day = 0; day < days; day++) {
            for (FaultTable table : all) {
                table.two(from + day, first, second);
            }
            if ((day + 1) % EVERY == 0 || day + 1 == days) {
                System.out.println(
                        "\n" + (day + 1) + " days of each fault from seed " + from + ", " + first + " and " + second);
                print(
                        "| wrong | load sensitivity holds, % | left of its doubt | grip balance holds, % | left of its doubt |"
                                + " grip holds, % | downforce holds, % | failed |",
                        all.stream().map(FaultTable::nuisanceRow).toList());
            }
        }
    }

    private static void print(String head, List<String> rows) {
        System.out.println("\n" + head);
        System.out.println(head.replaceAll("[^|]+", "---"));
        rows.forEach(System.out::println);
    }

    /** Prints the tables. */
    public static void main(String[] arguments) {
        int days = Integer.parseInt(arguments[0]);
        String runs = arguments.length > 1 ? arguments[1] : "one";
        long first = arguments.length > 2 ? Long.parseLong(arguments[2]) : SEED;
        switch (runs) {
            case "wing" -> twoRuns(days, first, Map.of("wing", 2.0), Map.of("wing", 8.0));
            case "bar" -> {
                String bar = "suspension.front.antiRollBarNmPerDeg";
                twoRuns(days, first, Map.of(bar, 400.0), Map.of(bar, 1600.0));
            }
            default -> oneRun(days, first);
        }
    }
}
