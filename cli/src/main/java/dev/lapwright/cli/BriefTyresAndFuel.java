package dev.lapwright.cli;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageSection;
import dev.lapwright.cli.page.PageTable;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.StintResult;
import java.util.ArrayList;
import java.util.List;

/** Pressures to start from, and fuel for the race. */
final class BriefTyresAndFuel {
    /** Density of petrol, kg/l, within EN 228's 0.720 to 0.775; as in the command stint. */
    static final double KG_PER_LITRE = 0.745;

    private final BriefOutcome outcome;

    BriefTyresAndFuel(BriefOutcome outcome) {
        this.outcome = outcome;
    }

    PageSection pressures() {
        BriefResult.Part<BriefResult.StartPressures> part = outcome.result().pressures();
        List<PageBlock> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> pressures(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new PageSection(
                "pressures",
                "Tyre pressures to start from",
                "Set the cold pressure before driving; read the hot one straight after the first run and correct by the"
                        + " difference. All are gauge pressures.",
                blocks);
    }

    private static void pressures(List<PageBlock> blocks, BriefResult.StartPressures found) {
        PressureResult study = found.study();
        String from = found.logged()
                ? "They follow from the pairs of cold and hot pressure that were logged."
                : "No pressures were logged, so the gas is supposed to run at " + Numbers.fixed(found.gasTempC(), 0)
                        + " °C, as the tyres of the car's document do: a place to begin, not a result.";
        blocks.add(PageBlock.paragraph(from + " For tyres at " + Numbers.fixed(study.coldTempC(), 0)
                + " °C when they are set, " + day(study.next()) + "."));
        PageTable table = new PageTable("Cold pressures to set")
                .words("Tyre")
                .numbers("Cold", "psi")
                .numbers("Cold", "bar")
                .numbers("Cold", "kPa")
                .lesser()
                .numbers("Hot wanted", "psi")
                .numbers("Hot wanted", "bar")
                .lesser()
                .blank("Hot as read", "psi or bar");
        for (PressureResult.Tyre tyre : study.tyres()) {
            double cold = study.nextCold(tyre);
            table.row(
                    tyre.wheel().label(),
                    psi(cold),
                    bar(cold),
                    Numbers.fixed(cold, 0),
                    psi(tyre.targetKpa()),
                    bar(tyre.targetKpa()));
        }
        blocks.add(PageBlock.table(table));
        if (!study.tyres().isEmpty()) {
            PressureResult.Tyre first = study.tyres().get(0);
            blocks.add(PageBlock.paragraph("One psi more cold gives about "
                    + Numbers.fixed(first.hotPerCold(study.next(), study.coldTempC()), 2) + " psi more hot."
                    + weather(study, first)));
        }
    }

    private static String weather(PressureResult study, PressureResult.Tyre tyre) {
        List<String> said = new ArrayList<>();
        for (PressureDay other : study.weather()) {
            double shift = other.airTempC() - study.next().airTempC();
            if (Math.abs(shift) < 0.5) {
                continue;
            }
            double cold = tyre.coldFor(other, study.coldTempC() + shift);
            double change = Unit.KILOPASCAL.convert(cold - study.nextCold(tyre), Unit.PSI);
            said.add(Numbers.signed(change, 1) + " psi at " + Numbers.fixed(other.airTempC(), 0) + " °C air, "
                    + Numbers.fixed(other.trackTempC(), 0) + " °C track");
        }
        return said.isEmpty()
                ? ""
                : " If the weather is another when you set them, change the cold pressure at the "
                        + tyre.wheel().label() + " by " + BriefWords.listed(said) + ".";
    }

    private static String day(PressureDay day) {
        return "air at " + Numbers.fixed(day.airTempC(), 0) + " °C and track at " + Numbers.fixed(day.trackTempC(), 0)
                + " °C";
    }

    private static String psi(double kpa) {
        return Numbers.fixed(Unit.KILOPASCAL.convert(kpa, Unit.PSI), 1);
    }

    private static String bar(double kpa) {
        return Numbers.fixed(Unit.KILOPASCAL.convert(kpa, Unit.BAR), 2);
    }

    PageSection fuel() {
        BriefResult.Part<StintResult> part = outcome.result().stint();
        List<PageBlock> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fuel(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new PageSection(
                "fuel",
                "Fuel for the race",
                "What the engine burns on laps driven at the limit from flag to flag, with what the formation lap and the"
                        + " reserve need: more than most races take, and to be checked on your own car.",
                blocks);
    }

    private static void fuel(List<PageBlock> blocks, StintResult found) {
        blocks.add(PageBlock.paragraph(carry(found)));
        PageTable table = new PageTable("Where the fuel goes")
                .words("For")
                .numbers("Fuel", "l")
                .numbers("Fuel", "kg");
        StintResult.Run run = found.runs().get(0);
        row(table, "one racing lap", run.fuelPerLap(), 2);
        row(table, "formation", run.formationFuel(), 1);
        row(table, run.laps().size() + " racing laps", run.raceFuel(), 1);
        row(table, "reserve at the flag", run.reserveFuel(), 1);
        table.row(List.of("in all", litres(run.fuelNeeded(), 1), Numbers.fixed(run.fuelNeeded(), 1)), true);
        blocks.add(PageBlock.table(table));
        StintResult.RunLap first = run.laps().get(0);
        StintResult.RunLap last = run.laps().get(run.laps().size() - 1);
        blocks.add(PageBlock.paragraph("First lap " + Numbers.lapTime(first.time()) + " with "
                + litres(first.fuelAtStart(), 1) + " l on board, last lap " + Numbers.lapTime(last.time())
                + ". A kilogram of fuel costs " + Numbers.fixed(found.timePerKg(), 4)
                + " s a lap; the tyre is taken to lose "
                + Numbers.plain(100 * run.compound().wear())
                + " % of its grip each lap (common practice, no source). Consumption at full load "
                + Numbers.plain(found.consumption().gramPerKwh()[0]) + " g/kWh, fuel at "
                + Numbers.plain(KG_PER_LITRE) + " kg/l: weigh yours."));
    }

    /** What to carry, in one sentence. */
    static String carry(StintResult found) {
        return "For " + race(found.race()) + " carry " + litres(found.startFuel(), 1) + " l ("
                + Numbers.fixed(found.startFuel(), 1) + " kg) before the formation lap; a racing lap takes "
                + litres(found.runs().get(0).fuelPerLap(), 2) + " l on average.";
    }

    static String race(RaceLength race) {
        return race.laps() > 0
                ? race.laps() + " laps"
                : Numbers.plain(race.seconds() / 60) + " minutes and the lap under way then";
    }

    private static void row(PageTable table, String what, double kg, int decimals) {
        table.row(what, litres(kg, decimals), Numbers.fixed(kg, decimals));
    }

    private static String litres(double kg, int decimals) {
        return Numbers.fixed(kg / KG_PER_LITRE, decimals);
    }
}
