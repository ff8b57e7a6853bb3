package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.page.Page;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Table;
import dev.lapwright.results.Standings;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.pressures.PressureResult;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.StintResult;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Section of a brief on tyres and fuel: pressures to start from, and fuel for the race. */
public final class BriefTyresAndFuel {
    /** Density of petrol, kg/l, within EN 228's 0.720 to 0.775; as in the command stint. */
    public static final double KG_PER_LITRE = 0.745;

    private final BriefReport brief;

    public BriefTyresAndFuel(BriefReport brief) {
        this.brief = brief;
    }

    public Page.Section pressures() {
        BriefResult.Part<BriefResult.StartPressures> part = brief.result().pressures();
        List<Page.Block> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> pressures(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new Page.Section(
                "pressures",
                "Tyre pressures to start from",
                "Set the cold pressure before driving; read the hot one straight after the first run and correct by the"
                        + " difference. All are gauge pressures.",
                blocks);
    }

    private static void pressures(List<Page.Block> blocks, BriefResult.StartPressures found) {
        PressureResult study = found.study();
        String from = found.logged()
                ? "They follow from the pairs of cold and hot pressure that were logged."
                : "No pressures were logged, so the gas is supposed to run at " + Numbers.fixed(found.gasTempC(), 0)
                        + " °C, as the tyres of the car's document do: a place to begin, not a result.";
        blocks.add(Page.Block.paragraph(from + " For tyres at " + Numbers.fixed(study.coldTempC(), 0)
                + " °C when they are set, " + day(study.next()) + "."));
        Table<PressureResult.Tyre> table = Table.<PressureResult.Tyre>of("Cold pressures to set")
                .words("", "Tyre", tyre -> tyre.wheel().label())
                .text("Cold", "psi", tyre -> psi(study.nextCold(tyre)))
                .text("Cold", "bar", tyre -> bar(study.nextCold(tyre)))
                .number("", "Cold", "kPa", Numbers.fixed(0), study::nextCold)
                .with(Table.Trait.LESSER)
                .text("Hot wanted", "psi", tyre -> psi(tyre.targetKpa()))
                .text("Hot wanted", "bar", tyre -> bar(tyre.targetKpa()))
                .with(Table.Trait.LESSER)
                .blank("Hot as read", "psi or bar");
        blocks.add(Page.Block.table(table, study.tyres()));
        worth(found).ifPresent(text -> blocks.add(Page.Block.paragraph(text)));
        if (!study.tyres().isEmpty()) {
            PressureResult.Tyre first = study.tyres().get(0);
            blocks.add(Page.Block.paragraph("One psi more cold gives about "
                    + Numbers.fixed(first.hotPerCold(study.next(), study.coldTempC()), 2) + " psi more hot."
                    + weather(study, first)));
        }
    }

    /** Cold pressures to set, in short. */
    static Page.Block coldPressures(BriefResult.StartPressures found) {
        PressureResult study = found.study();
        Table<PressureResult.Tyre> table = Table.<PressureResult.Tyre>of("Cold pressures to set, for air at "
                        + Numbers.fixed(study.next().airTempC(), 0) + " °C"
                        + (found.logged() ? "" : "; a place to begin, nothing was logged"))
                .words("", "Tyre", tyre -> tyre.wheel().label())
                .text("Cold", "psi", tyre -> psi(study.nextCold(tyre)))
                .text("Cold", "bar", tyre -> bar(study.nextCold(tyre)))
                .text("Hot wanted", "psi", tyre -> psi(tyre.targetKpa()));
        return Page.Block.table(table, study.tyres());
    }

    /** What it is worth to set them as wanted, and when; empty without logged ones. */
    static Optional<String> worth(BriefResult.StartPressures found) {
        return found.worth()
                .map(worth -> "Hot pressures as wanted are worth "
                        + Numbers.signed(
                                worth.doubt()
                                        .map(RobustnessResult.Standing::middle)
                                        .orElse(worth.difference()),
                                2)
                        + " s a lap beside those logged last"
                        + worth.doubt()
                                .map(doubt -> ", " + Standings.interval(doubt) + " s in nine of ten of " + doubt.laps()
                                        + " cars that this one may be")
                                .orElse("")
                        + (worth.isGain()
                                ? ": set them before the first run, as it takes no laps of the test. Within what their maker allows."
                                : ": no gain that stands, so no run is driven for it."));
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

    public Page.Section fuel() {
        BriefResult.Part<StintResult> part = brief.result().stint();
        List<Page.Block> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fuel(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new Page.Section(
                "fuel",
                "Fuel for the race",
                "What the engine burns on laps driven at the limit from flag to flag, with what the formation lap and the"
                        + " reserve need: more than most races take, and to be checked on your own car.",
                blocks);
    }

    private static void fuel(List<Page.Block> blocks, StintResult found) {
        blocks.add(Page.Block.paragraph(carry(found)));
        StintResult.Run run = found.runs().get(0);
        List<Fuel> rows = List.of(
                new Fuel("one racing lap", run.fuelPerLap(), 2),
                new Fuel("formation", run.formationFuel(), 1),
                new Fuel(run.laps().size() + " racing laps", run.raceFuel(), 1),
                new Fuel("reserve at the flag", run.reserveFuel(), 1),
                new Fuel("in all", run.fuelNeeded(), 1));
        Table<Fuel> table = Table.<Fuel>of("Where the fuel goes")
                .words("", "For", Fuel::what)
                .text("Fuel", "l", fuel -> litres(fuel.kg(), fuel.decimals()))
                .text("Fuel", "kg", fuel -> Numbers.fixed(fuel.kg(), fuel.decimals()))
                .marking(fuel -> fuel.what().equals("in all"));
        blocks.add(Page.Block.table(table, rows));
        StintResult.RunLap first = run.laps().get(0);
        StintResult.RunLap last = run.laps().get(run.laps().size() - 1);
        blocks.add(Page.Block.paragraph("First lap " + Numbers.lapTime(first.time()) + " with "
                + litres(first.fuelAtStart(), 1) + " l on board, last lap " + Numbers.lapTime(last.time())
                + ". A kilogram of fuel costs " + Numbers.fixed(found.timePerKg(), 4)
                + " s a lap; the tyre is taken to lose "
                + Numbers.plain(100 * run.compound().wear())
                + " % of its grip each lap (common practice, no source). Consumption at full load "
                + Numbers.plain(found.consumption().gramPerKwh()[0]) + " g/kWh, fuel at "
                + Numbers.plain(KG_PER_LITRE) + " kg/l: weigh yours."));
    }

    /** What to carry, in one sentence. */
    public static String carry(StintResult found) {
        return "For " + race(found.race()) + " carry " + litres(found.startFuel(), 1) + " l ("
                + Numbers.fixed(found.startFuel(), 1) + " kg) before the formation lap; a racing lap takes "
                + litres(found.runs().get(0).fuelPerLap(), 2) + " l on average.";
    }

    public static String race(RaceLength race) {
        return race.laps() > 0
                ? race.laps() + " laps"
                : Numbers.plain(race.seconds() / 60) + " minutes and the lap under way then";
    }

    /** A part of the fuel, kg, and how many decimals are known of it. */
    private record Fuel(String what, double kg, int decimals) {}

    private static String litres(double kg, int decimals) {
        return Numbers.fixed(kg / KG_PER_LITRE, decimals);
    }
}
