package dev.lapwright.cli;

import dev.lapwright.powertrain.FuelConsumption;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.StintResult;
import java.util.ArrayList;
import java.util.List;

/** A stint for people. */
final class StintReport {
    static final String CAUTION =
            "A car that runs dry stops where it is, perhaps in traffic: check the use on your own car"
                    + " before you trust it, and keep to the rules of the event on fuel, and to the tyre maker's limits of wear.";

    private static final int MOST_ROWS = 40;
    private static final double JOULE_PER_KWH = 3.6e6;

    private final Console console;
    private final StintOutcome outcome;
    private final StintResult result;

    StintReport(Console console, StintOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        this.result = outcome.result();
    }

    void print() {
        LapReport.heading(console, outcome.choice());
        Lines.item(console, "Race", race());
        Lines.item(console, "Fuel", fuel());
        Lines.item(console, "First lap", firstLap());
        console.line();
        needs();
        console.line();
        laps();
        if (result.runs().size() > 1) {
            console.line();
            crossovers();
        }
        console.line();
        Lines.paragraph(console, console.bold("Caution:") + " " + CAUTION);
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
                + Numbers.fixed(outcome.litres(result.use().fuel()), 2) + " l at " + Numbers.plain(outcome.density())
                + " kg/l";
    }

    private String firstLap() {
        return console.bold(Numbers.lapTime(result.lap().time())) + "; a kg of fuel more costs "
                + Numbers.signed(result.timePerKg(), 4) + " s, a percent more grip gains "
                + Numbers.fixed(result.timePerGrip(), 3) + " s";
    }

    private void needs() {
        Lines.paragraph(console, "Fuel to carry before the formation lap, for laps at the limit from flag to flag:");
        Table table = new Table()
                .words("compound")
                .numbers("laps", "")
                .numbers("race time", "")
                .numbers("per lap", "l")
                .numbers("formation", "l")
                .numbers("race", "l")
                .numbers("reserve", "l")
                .numbers("in all", "l")
                .numbers("in all", "kg");
        for (StintResult.Run run : result.runs()) {
            table.row(
                    run.compound().name(),
                    Integer.toString(run.laps().size()),
                    Numbers.lapTime(run.time()),
                    litres(run.fuelPerLap(), 2),
                    litres(run.formationFuel(), 1),
                    litres(run.raceFuel(), 1),
                    litres(run.reserveFuel(), 1),
                    litres(run.fuelNeeded(), 1),
                    Numbers.fixed(run.fuelNeeded(), 1));
        }
        table.printTo(console);
    }

    private String litres(double kg, int decimals) {
        return Numbers.fixed(outcome.litres(kg), decimals);
    }

    private static String law(Compound compound) {
        String text = compound.name() + " " + Numbers.plain(compound.grip()) + ", less "
                + Numbers.plain(100 * compound.wear()) + " % of that each lap";
        return compound.cliffWear() > 0
                ? text + ", after " + Numbers.plain(compound.cliffLap()) + " laps "
                        + Numbers.plain(100 * (compound.wear() + compound.cliffWear())) + " %"
                : text;
    }

    private void laps() {
        List<String> laws =
                result.runs().stream().map(run -> law(run.compound())).toList();
        Lines.paragraph(
                console,
                "Lap by lap, all compounds from " + litres(result.startFuel(), 1) + " l (grip: "
                        + String.join("; ", laws) + "; as given, not measured here):");
        Table table = new Table().numbers("lap", "").numbers("fuel", "l");
        for (StintResult.Run run : result.runs()) {
            table.numbers(run.compound().name(), "").numbers("grip", "%");
        }
        int longest =
                result.runs().stream().mapToInt(run -> run.laps().size()).max().orElseThrow();
        int step = (longest + MOST_ROWS - 1) / MOST_ROWS;
        for (int i = 0; i < longest - 1; i += step) {
            table.row(row(i), false);
        }
        table.row(row(longest - 1), false);
        table.printTo(console);
        if (step > 1) {
            console.line("One lap in " + step + "; all are in the result: --json, or --out.");
        }
    }

    private List<String> row(int i) {
        List<String> cells = new ArrayList<>();
        cells.add(Integer.toString(i + 1));
        String fuel = "-";
        List<String> times = new ArrayList<>();
        for (StintResult.Run run : result.runs()) {
            if (i < run.laps().size()) {
                StintResult.RunLap lap = run.laps().get(i);
                fuel = fuel.equals("-") ? litres(lap.fuelAtStart(), 1) : fuel;
                times.add(Numbers.lapTime(lap.time()));
                times.add(Numbers.percent(lap.grip()));
            } else {
                times.add("-");
                times.add("-");
            }
        }
        cells.add(fuel);
        cells.addAll(times);
        return cells;
    }

    private void crossovers() {
        for (int a = 0; a < result.runs().size(); a++) {
            for (int b = a + 1; b < result.runs().size(); b++) {
                crossover(result.runs().get(a), result.runs().get(b));
            }
        }
    }

    private void crossover(StintResult.Run first, StintResult.Run second) {
        boolean firstIsFaster =
                first.laps().get(0).time() <= second.laps().get(0).time();
        StintResult.Run fast = firstIsFaster ? first : second;
        StintResult.Run slow = firstIsFaster ? second : first;
        int common = Math.min(fast.laps().size(), slow.laps().size());
        double gain = slow.laps().get(0).time() - fast.laps().get(0).time();
        double end = slow.timeAfter(common) - fast.timeAfter(common);
        int faster = fast.fasterFrom(slow);
        int ahead = fast.aheadFrom(slow);
        String fastName = fast.compound().name();
        String slowName = slow.compound().name();
        Lines.paragraph(
                console,
                fastName + " is " + Numbers.fixed(gain, 3) + " s faster on lap 1; "
                        + (faster > 0
                                ? slowName + " is faster from lap " + faster + " on"
                                : slowName + " is never faster on these laps")
                        + (ahead > 0 ? ", and ahead in all after lap " + ahead : "") + ". After " + common + " laps "
                        + (end >= 0 ? fastName : slowName) + " is ahead by " + Numbers.fixed(Math.abs(end), 3) + " s.");
    }
}
