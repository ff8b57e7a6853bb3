package dev.lapwright.results;

import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.Neutralised;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.StintDoubtResult;
import dev.lapwright.study.stint.StintResult;
import dev.lapwright.study.stint.StopPlansResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Report of a stint: fuel to carry, each lap on each compound, and where one compound passes another.
 *
 * @param subject car, circuit and day
 * @param result what was found
 * @param density of the fuel, kg/l
 * @param doubt how it stands on drawn cars; empty if none were drawn
 * @param stops plans with stops for tyres; empty if they were not asked for
 */
public record StintReport(
        Subject subject,
        StintResult result,
        double density,
        Optional<StintDoubtResult> doubt,
        Optional<StopPlansResult> stops) {
    /** Without drawn cars and stops. */
    public StintReport(Subject subject, StintResult result, double density) {
        this(subject, result, density, Optional.empty(), Optional.empty());
    }

    /** What to think of before the numbers are trusted. */
    public static final String CAUTION =
            "A car that runs dry stops where it is, perhaps in traffic: check the use on your own car"
                    + " before you trust it, and keep to the rules of the event on fuel, and to the tyre maker's limits of wear.";

    private static final int MOST_ROWS = 40;
    private static final double JOULE_PER_KWH = 3.6e6;

    private static final Table<StintResult.RunLap> LAPS = Table.<StintResult.RunLap>of("Laps of a stint")
            .value("lap", StintResult.RunLap::number)
            .value("lapTimeS", StintResult.RunLap::time)
            .value("fuelAtStartKg", StintResult.RunLap::fuelAtStart)
            .value("fuelUsedKg", StintResult.RunLap::fuelUsed)
            .value("grip", StintResult.RunLap::grip);

    private static final Table<StintResult.SetFuel> SET = Table.<StintResult.SetFuel>of("On the fuel that is set")
            .value("fuelKg", StintResult.SetFuel::fuel)
            .value("lapsOfFuel", StintResult.SetFuel::lapsOfFuel)
            .value("reachesTheFlag", StintResult.SetFuel::reachesTheFlag)
            .value("spareKg", StintResult.SetFuel::spare)
            .value("differenceBySpareS", StintResult.SetFuel::cost);

    private static final Table<StintDoubtResult.OnCompound> ON_COMPOUND = Table.<StintDoubtResult.OnCompound>of(
                    "On drawn cars")
            .value("fuelNeededLowKg", run -> run.fuelNeeded().low())
            .value("fuelNeededHighKg", run -> run.fuelNeeded().high())
            .value("reachTheFlag", StintDoubtResult.OnCompound::reaching)
            .value("differenceToFirstLowS", run -> run.difference().low())
            .value("differenceToFirstHighS", run -> run.difference().high())
            .value("aheadOfFirst", StintDoubtResult.OnCompound::ahead);

    private record DrivenLap(StintResult.Run run, StintResult.RunLap lap) {}

    private static final Table<DrivenLap> ALL_LAPS = Table.<DrivenLap>of("Laps on all compounds")
            .value("compound", row -> row.run().compound().name())
            .all(LAPS, DrivenLap::lap);

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading()
                .item("Race", race())
                .item("Fuel", fuel())
                .item("First lap", firstLap())
                .gap()
                .paragraph("Fuel to carry before the formation lap, for laps at the limit from flag to flag:")
                .rows(runs(), result.runs())
                .gap();
        for (int i = 0; i < result.runs().size(); i++) {
            report.paragraph(set(result.runs().get(i), result.onSetFuel().get(i)));
            if (doubt.isPresent()) {
                report.paragraph(fuelInDoubt(i));
            }
        }
        report.gap();
        laps(report);
        if (result.runs().size() > 1) {
            report.gap();
            crossovers(report);
        }
        doubt.ifPresent(drawn -> hangsOn(report.gap(), drawn));
        stops.ifPresent(plans -> stops(report, plans));
        report.caution(CAUTION);
        report.fields(fields())
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("cautions", List.of(CAUTION));
        doubt.ifPresent(drawn -> doubtFields(report, drawn));
        List<DrivenLap> laps = new ArrayList<>();
        result.runs().forEach(run -> run.laps().forEach(lap -> laps.add(new DrivenLap(run, lap))));
        return report.csv("stint.csv", ALL_LAPS, laps);
    }

    /** What was found, for machines. */
    Map<String, Object> fields() {
        RaceLength race = result.race();
        return new Report()
                .fields(ResultHeader.later("stint/2", result.lap()))
                .field("raceLaps", race.laps())
                .field("raceMinutes", race.seconds() / 60)
                .field("formationLaps", race.formationLaps())
                .field("formationPercent", 100 * race.formationShare())
                .field("reserveLaps", race.reserveLaps())
                .field("consumptionRpm", InputHash.list(result.consumption().rpm()))
                .field("consumptionGPerKwh", InputHash.list(result.consumption().gramPerKwh()))
                .field("fuelDensityKgPerL", density)
                .field("engineWorkPerLapJ", result.use().engineWork())
                .field("fuelPerLapKg", result.use().fuel())
                .field("startFuelKg", result.startFuel())
                .field("startFuelL", litres(result.startFuel()))
                .field("differenceSPerKg", result.timePerKg())
                .field("differenceSPerPercentGrip", result.timePerGrip())
                .field("runs", runs(), result.runs())
                .field("onSetFuel", SET, result.onSetFuel())
                .field("stops", stops.map(this::fields).orElse(null))
                .fields();
    }

    /** What the fuel that is set does for a compound, in a sentence or two. */
    private String set(StintResult.Run run, StintResult.SetFuel set) {
        String on = result.runs().size() > 1
                ? " on " + Report.verbatim(run.compound().name())
                : "";
        String begin = "The " + Numbers.fixed(litres(set.fuel()), 1) + " l that are set are ";
        String litres = Numbers.fixed(Math.abs(litres(set.spare())), 1) + " l";
        if (!set.reachesTheFlag()) {
            return begin + "not enough" + on + ": they last " + set.lapsOfFuel() + " of " + set.laps()
                    + " laps. It takes " + litres + " more, reserve and all.";
        }
        if (set.spare() < 0) {
            return begin + "enough to the flag" + on + ", but " + litres + " of the reserve of "
                    + Numbers.fixed(litres(set.reserve()), 1) + " l are missing.";
        }
        return begin + "enough" + on + ": " + litres + " are spare beyond the reserve, and cost "
                + Numbers.fixed(set.cost(), 1) + " s over " + set.laps() + " laps.";
    }

    private String race() {
        RaceLength race = result.race();
        String length = race.laps() > 0
                ? race.laps() + " laps"
                : Numbers.plain(race.seconds() / 60) + " minutes, and the lap under way then";
        return length + "; formation laps " + race.formationLaps() + ", at "
                + Numbers.fixed(100 * race.formationShare(), 0) + " % of a racing lap's fuel; laps in reserve "
                + Numbers.plain(race.reserveLaps());
    }

    private String fuel() {
        double mean = result.use().fuel() * 1000 / (result.use().engineWork() / JOULE_PER_KWH);
        return "at the crankshaft " + Numbers.fixed(result.use().engineWork() / JOULE_PER_KWH, 3) + " kWh per lap, at "
                + Numbers.fixed(mean, 0) + " g/kWh (" + Numbers.fixed(100 * FuelConsumption.efficiency(mean), 0)
                + " % of the heating value of petrol): "
                + Numbers.fixed(result.use().fuel(), 3) + " kg, "
                + Numbers.fixed(litres(result.use().fuel()), 2) + " l at " + Numbers.plain(density) + " kg/l";
    }

    private String firstLap() {
        return Report.strong(Numbers.lapTime(result.lap().time())) + "; a kg of fuel more: "
                + Numbers.signed(result.timePerKg(), 3) + " s, a percent more grip: "
                + Numbers.signed(result.timePerGrip(), 3) + " s";
    }

    private double litres(double kg) {
        return kg / density;
    }

    private Table<StintResult.Run> runs() {
        StintResult.Run first = result.runs().get(0);
        return Table.<StintResult.Run>of("Fuel to carry")
                .names("compound", "compound", run -> run.compound().name())
                .value("grip", run -> run.compound().grip())
                .value("wearPercentPerLap", run -> 100 * run.compound().wear())
                .value("cliffLap", run -> run.compound().cliffLap())
                .value("cliffWearPercentPerLap", run -> 100 * run.compound().cliffWear())
                .number("", "laps", "", Numbers.fixed(0), run -> run.laps().size())
                .number("timeS", "race time", "", time -> Numbers.lapTime(time, 1), StintResult.Run::time)
                .number("", "per lap", "l", Numbers.fixed(2), run -> litres(run.fuelPerLap()))
                .value("formationFuelKg", StintResult.Run::formationFuel)
                .number("", "formation", "l", Numbers.fixed(1), run -> litres(run.formationFuel()))
                .value("raceFuelKg", StintResult.Run::raceFuel)
                .number("", "race", "l", Numbers.fixed(1), run -> litres(run.raceFuel()))
                .value("reserveFuelKg", StintResult.Run::reserveFuel)
                .number("", "reserve", "l", Numbers.fixed(1), run -> litres(run.reserveFuel()))
                .value("fuelNeededKg", StintResult.Run::fuelNeeded)
                .number("fuelNeededL", "in all", "l", Numbers.fixed(1), run -> litres(run.fuelNeeded()))
                .number("", "in all", "kg", Numbers.fixed(1), StintResult.Run::fuelNeeded)
                .value("fasterThanFirstFromLap", run -> run.equals(first) ? null : first.fasterFrom(run))
                .value("aheadOfFirstAfterLap", run -> run.equals(first) ? null : first.aheadFrom(run))
                .rows("laps", LAPS, StintResult.Run::laps);
    }

    private static String law(Compound compound) {
        String text = Report.verbatim(compound.name()) + " " + Numbers.plain(compound.grip()) + ", less "
                + Numbers.plain(100 * compound.wear()) + " % of that each lap";
        return compound.cliffWear() > 0
                ? text + ", after " + Numbers.plain(compound.cliffLap()) + " laps "
                        + Numbers.plain(100 * (compound.wear() + compound.cliffWear())) + " %"
                : text;
    }

    private void laps(Report report) {
        List<String> laws =
                result.runs().stream().map(run -> law(run.compound())).toList();
        report.paragraph("Lap by lap, all compounds from " + Numbers.fixed(litres(result.startFuel()), 1) + " l (grip: "
                + String.join("; ", laws) + "; as given, not measured here):");
        Table<Integer> table = Table.<Integer>of("Lap by lap")
                .number("", "lap", "", Numbers.fixed(0), i -> i + 1)
                .number("", "fuel", "l", Numbers.fixed(1), this::fuelAt);
        for (StintResult.Run run : result.runs()) {
            table.number(
                    "",
                    Report.verbatim(run.compound().name()),
                    "",
                    time -> Numbers.lapTime(time, doubt.isPresent() ? 2 : 3),
                    i -> reaches(run, i) ? run.laps().get(i).time() : null);
            table.number(
                    "",
                    "grip",
                    "%",
                    Numbers.fixed(1),
                    i -> reaches(run, i) ? 100 * run.laps().get(i).grip() : null);
        }
        int longest =
                result.runs().stream().mapToInt(run -> run.laps().size()).max().orElseThrow();
        int step = (longest + MOST_ROWS - 1) / MOST_ROWS;
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < longest - 1; i += step) {
            rows.add(i);
        }
        rows.add(longest - 1);
        report.rows(table, rows);
        if (step > 1) {
            report.line("One lap in " + step + "; all are in the result: --json, or --out.");
        }
    }

    private static boolean reaches(StintResult.Run run, int lap) {
        return lap < run.laps().size();
    }

    private Double fuelAt(int lap) {
        for (StintResult.Run run : result.runs()) {
            if (reaches(run, lap)) {
                return litres(run.laps().get(lap).fuelAtStart());
            }
        }
        return null;
    }

    /** When to stop. */
    private void stops(Report report, StopPlansResult plans) {
        Neutralised slow = plans.neutralised();
        report.gap()
                .paragraph("Plans of stops for tyres, the best of each order of compounds, without refuelling, from "
                        + Numbers.fixed(litres(plans.startFuel()), 1) + " l. A stop costs "
                        + Numbers.plain(plans.stopLoss()) + " s beside driving on"
                        + (slow.isAny()
                                ? "; laps " + slow.from() + " to " + slow.to() + " are neutralised, at "
                                        + Numbers.fixed(100 * slow.pace(), 0) + " % of the pace, with "
                                        + Numbers.fixed(100 * slow.fuel(), 0) + " % of the fuel and "
                                        + Numbers.fixed(100 * slow.wear(), 0) + " % of the wear, and a stop then costs "
                                        + Numbers.plain(slow.stopLoss()) + " s"
                                : "")
                        + ":")
                .rows(plans(plans), plans.plans())
                .gap()
                .paragraph(said(plans));
    }

    private static Table<StopPlansResult.Plan> plans(StopPlansResult plans) {
        StopPlansResult.Plan best = plans.best();
        return Table.<StopPlansResult.Plan>of("Plans of stops")
                .names("compounds", "compounds", StintReport::order)
                .words("stopsAfterLap", "stop after lap", plan -> after(plan))
                .value("laps", StopPlansResult.Plan::laps)
                .number("timeS", "race time", "", time -> Numbers.lapTime(time, 1), StopPlansResult.Plan::time)
                .number(
                        "differenceS",
                        "delta",
                        "s",
                        Numbers.signed(1),
                        plan -> plan.laps() == best.laps() ? plan.time() - best.time() : null)
                .words("", "", plan -> plan.laps() == best.laps() ? "" : best.laps() - plan.laps() + " laps fewer")
                .words("stopWithinASecond", "within 1 s", StintReport::window);
    }

    private static String order(StopPlansResult.Plan plan) {
        return plan.order().stream().map(Compound::name).collect(Collectors.joining(", "));
    }

    private static String after(StopPlansResult.Plan plan) {
        return plan.after().isEmpty()
                ? "no stop"
                : plan.after().stream().map(String::valueOf).collect(Collectors.joining(" and "));
    }

    private static String window(StopPlansResult.Plan plan) {
        int[] window = plan.window();
        return window.length == 0
                ? ""
                : window[0] == window[1] ? "lap " + window[0] : "laps " + window[0] + " to " + window[1];
    }

    /** Which plan, and by how much. */
    private static String said(StopPlansResult plans) {
        StopPlansResult.Plan best = plans.best();
        List<String> said = new ArrayList<>();
        said.add((best.after().isEmpty()
                        ? "Drive through on " + Report.verbatim(order(best))
                        : "Stop after lap " + after(best) + ", on " + Report.verbatim(order(best)))
                + ": the fastest of these.");
        plans.plans().stream()
                .skip(1)
                .filter(plan -> plan.laps() == best.laps())
                .findFirst()
                .ifPresent(next -> said.add("Next is " + Report.verbatim(order(next)) + " (" + after(next) + "), "
                        + Numbers.fixed(next.time() - best.time(), 1) + " s behind."));
        if (Double.isFinite(plans.breakEven())) {
            said.add("One stop pays where it costs less than " + Numbers.fixed(plans.breakEven(), 1) + " s.");
        }
        said.add("Traffic, positions and a tyre that must warm up are not in it; the wear is as given.");
        return String.join(" ", said);
    }

    private Map<String, Object> fields(StopPlansResult plans) {
        Neutralised slow = plans.neutralised();
        return new Report()
                .field("stopLossS", plans.stopLoss())
                .field("neutralisedFromLap", slow.isAny() ? slow.from() : null)
                .field("neutralisedToLap", slow.isAny() ? slow.to() : null)
                .field("breakEvenS", plans.breakEven())
                .field("plans", plans(plans), plans.plans())
                .fields();
    }

    private void crossovers(Report report) {
        for (int a = 0; a < result.runs().size(); a++) {
            for (int b = a + 1; b < result.runs().size(); b++) {
                report.paragraph(crossover(a, b));
            }
        }
    }

    private String crossover(int one, int other) {
        StintResult.Run first = result.runs().get(one);
        StintResult.Run second = result.runs().get(other);
        boolean firstIsFaster =
                first.laps().get(0).time() <= second.laps().get(0).time();
        StintResult.Run fast = firstIsFaster ? first : second;
        StintResult.Run slow = firstIsFaster ? second : first;
        int common = Math.min(fast.laps().size(), slow.laps().size());
        double lead = fast.laps().get(0).time() - slow.laps().get(0).time();
        double end = slow.timeAfter(common) - fast.timeAfter(common);
        int faster = fast.fasterFrom(slow);
        int ahead = fast.aheadFrom(slow);
        String fastName = Report.verbatim(fast.compound().name());
        String slowName = Report.verbatim(slow.compound().name());
        // On one of the laps the lead is known to that share of what it is after all of them.
        int digits = doubt.map(drawn ->
                        Standings.decimals(drawn.runs().get(other).difference().halfWidth() / common))
                .orElse(Standings.decimals(0));
        return fastName + " is " + DifferenceWords.than(lead, slowName, digits) + " on lap 1; "
                + (faster > 0
                        ? slowName + " is faster from lap " + faster + " on"
                        : slowName + " is never faster on these laps")
                + (ahead > 0 ? ", and ahead in all after lap " + ahead : "") + ". After " + common + " laps "
                + (end >= 0 ? fastName : slowName) + " is ahead by " + Numbers.fixed(Math.abs(end), decimals(other))
                + " s." + (one == 0 && doubt.isPresent() ? inDoubt(other) : "");
    }

    /** Digits that doubt leaves to a difference to the first compound. */
    private int decimals(int compound) {
        return doubt.map(drawn -> Standings.decimals(
                        drawn.runs().get(compound).difference().halfWidth()))
                .orElse(Standings.decimals(0));
    }

    /** How a compound stands beside the first on drawn cars. */
    private String inDoubt(int compound) {
        StintDoubtResult drawn = doubt.orElseThrow();
        StintDoubtResult.OnCompound run = drawn.runs().get(compound);
        int digits = decimals(compound);
        return " In nine of ten of " + drawn.lapped() + " cars and tyres that these may be "
                + Report.verbatim(result.runs().get(compound).compound().name()) + " is then between "
                + lead(run.difference().low(), digits) + " and "
                + lead(run.difference().high(), digits)
                + "; it is ahead on " + percent(run.ahead(), drawn) + " %.";
    }

    private static String lead(double difference, int digits) {
        return Numbers.fixed(Math.abs(difference), digits) + " s " + (difference < 0 ? "ahead" : "behind");
    }

    private static String percent(int cars, StintDoubtResult drawn) {
        return Numbers.fixed(100.0 * cars / drawn.lapped(), 0);
    }

    /** What a compound needs, and whether what is set lasts, on drawn cars. */
    private String fuelInDoubt(int compound) {
        StintDoubtResult drawn = doubt.orElseThrow();
        StintDoubtResult.OnCompound run = drawn.runs().get(compound);
        return "In nine of ten of " + drawn.lapped() + " cars that this one may be it takes, reserve and all, "
                + Numbers.fixed(litres(run.fuelNeeded().low()), 1) + " to "
                + Numbers.fixed(litres(run.fuelNeeded().high()), 1) + " l; what is set lasts to the flag on "
                + percent(run.reaching(), drawn) + " % of all.";
    }

    private void hangsOn(Report report, StintDoubtResult drawn) {
        report.paragraph((Standings.hangsOn("The fuel that it takes", drawn.fuelShares(), drawn.leastShare()) + " "
                        + Standings.first(drawn.fuelShares()))
                .strip());
        if (drawn.runs().size() > 1) {
            String last = result.runs().get(drawn.runs().size() - 1).compound().name();
            String first = result.runs().get(0).compound().name();
            report.paragraph((Standings.hangsOn(
                                    "How " + Report.verbatim(last) + " stands beside " + Report.verbatim(first),
                                    drawn.timeShares(),
                                    drawn.leastShare())
                            + " " + Standings.first(drawn.timeShares()))
                    .strip());
        }
        report.paragraph(
                Standings.drawn(drawn.draws(), drawn.draws() - drawn.lapped(), drawn.seed(), drawn.unknowns()));
    }

    private void doubtFields(Report report, StintDoubtResult drawn) {
        InputHash hash = new InputHash()
                .with("undoubted", report.fields().get(ResultHeader.HASH))
                .with("draws", drawn.draws())
                .with("seed", drawn.seed())
                .with("assumed", drawn.assumed());
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("draws", drawn.draws());
        tree.put("lapped", drawn.lapped());
        tree.put("seed", drawn.seed());
        tree.put("assumed", drawn.assumed());
        tree.put("intervalPercent", 90);
        tree.put("runs", ON_COMPOUND.maps(drawn.runs()));
        tree.put("fuelHangsOn", Standings.SHARES.maps(drawn.fuelShares()));
        tree.put("differenceHangsOn", Standings.SHARES.maps(drawn.timeShares()));
        tree.put("leastShareTold", drawn.leastShare());
        tree.put("unknowns", Standings.UNKNOWN.maps(drawn.unknowns()));
        report.field(ResultHeader.HASH, hash.sha256()).field("doubt", tree);
    }
}
