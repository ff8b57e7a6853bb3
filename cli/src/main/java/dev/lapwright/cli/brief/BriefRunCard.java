package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.ChangePlan;
import dev.lapwright.brief.TestPlan;
import dev.lapwright.cli.page.Page;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** Second sheet of a brief: the card for the runs, with room to write by hand. */
public final class BriefRunCard {
    private static final int DECIMALS = 2;
    private static final int PLACES = 2;

    private final BriefReport brief;
    private final BriefPlan plan;

    public BriefRunCard(BriefReport brief) {
        this.brief = brief;
        plan = new BriefPlan(brief);
    }

    public Page.Sheet sheet() {
        List<Page.Band> bands = new ArrayList<>();
        bands.add(Page.Band.of(day()));
        BriefResult.Part<TestPlan> part = brief.result().tests();
        part.value().ifPresentOrElse(found -> fill(bands, found), () -> {
            bands.add(Page.Band.of(BriefPage.missing(part)));
            bands.add(Page.Band.of(card(List.of(new Row("As it stands", "")))));
        });
        return new Page.Sheet(
                "card", "Run card: " + Report.verbatim(brief.subject().title()), List.of(), bands);
    }

    /** What is written in before the first run. */
    private static Page.Block day() {
        Table<String> table = Table.<String>of("The day")
                .blank("Date", "")
                .blank("Driver", "")
                .blank("Tyres", "")
                .blank("Air", "°C")
                .blank("Track", "°C");
        return Page.Block.table(table, List.of(""));
    }

    /** Run of the card: what is set, for what, how long. */
    private record Row(
            String setup,
            Optional<Double> expected,
            Optional<RobustnessResult.Standing> doubt,
            String laps,
            String look) {
        /** One that nothing is expected of. */
        Row(String setup, String laps) {
            this(setup, Optional.empty(), Optional.empty(), laps, "-");
        }
    }

    private void fill(List<Page.Band> bands, TestPlan found) {
        bands.add(Page.Band.of(Page.Block.paragraph(how(found)), card(rows(found))));
        if (!found.toDrive().isEmpty()) {
            bands.add(Page.Band.of(Page.Block.paragraph(
                    "Change nothing else meanwhile, write down every lap, and name the setup in the log by what is set, here "
                            + example(found.toDrive().get(0))
                            + " for the first, and base for the car as it stands: the same 'lapwright brief' with --after and that"
                            + " log says what to keep, and prints the next card. With --card and the JSON of this page the runs"
                            + " need no names.")));
        }
    }

    /** How the card is driven, and why steps go together. */
    private String how(TestPlan found) {
        String laps = laps(found, brief.result().isScatterLogged());
        if (found.toDrive().isEmpty()) {
            return "No change is large enough to show in " + laps
                    + ": how many laps it takes with each setup stands beside each. Shorter runs tell what the driver feels, no"
                    + " lap time.";
        }
        return "Clean laps, without out laps and in laps. Each difference shows four times in five. Of " + laps + ", "
                + (found.laps() - found.lapsLeft()) + " are used, " + found.lapsLeft() + " left."
                + (found.toDrive().stream().anyMatch(TestPlan.Run::isBundle)
                        ? " Changes that go together do so because fewer would not show in so many."
                        : "");
    }

    private List<Row> rows(TestPlan found) {
        List<Row> rows = new ArrayList<>();
        brief.result()
                .pressures()
                .value()
                .flatMap(BriefResult.StartPressures::worth)
                .filter(BriefResult.PressureWorth::isGain)
                .ifPresent(worth -> rows.add(new Row(
                        "Before all: hot pressures as wanted, by gauge",
                        Optional.of(worth.doubt()
                                .map(RobustnessResult.Standing::middle)
                                .orElse(worth.difference())),
                        worth.doubt(),
                        "-",
                        "-")));
        rows.add(new Row("As it stands", first(found)));
        for (TestPlan.Run run : found.runs()) {
            boolean driven = run.fate() == TestPlan.Run.Fate.DRIVE;
            String laps = driven
                    ? Integer.toString(run.changedLaps())
                    : BriefWords.laps(Math.max(run.changedLaps(), run.lapsToSee())) + "\u00A0needed";
            rows.add(new Row(title(run), Optional.of(plan.shown(run.steps())), run.doubt(), laps, lookAt(run)));
            rows.add(new Row("Back, as before it", driven ? Integer.toString(run.lastLaps()) : "-"));
        }
        return rows;
    }

    private static String first(TestPlan found) {
        TestPlan.Run run = found.runs().get(0);
        return run.fate() == TestPlan.Run.Fate.DRIVE ? Integer.toString(run.firstLaps()) : "-";
    }

    private String title(TestPlan.Run run) {
        List<ChangePlan.Step> steps =
                brief.result().plan().value().map(ChangePlan::steps).orElse(List.of());
        return run.steps().stream()
                .map(step -> (1 + steps.indexOf(step)) + ". " + BriefWords.changes(step.changes()))
                .collect(Collectors.joining("; "));
    }

    private static String lookAt(TestPlan.Run run) {
        List<Comparison.Part> places = run.effect().places();
        List<String> names = new ArrayList<>();
        for (Comparison.Part place : places.subList(0, Math.min(PLACES, places.size()))) {
            names.add(Report.verbatim(place.label()));
        }
        return BriefWords.listed(names);
    }

    private Page.Block card(List<Row> rows) {
        Table<Row> table = Table.<Row>of("The runs")
                .words("", "Set", Row::setup)
                .text("Laps", "", Row::laps)
                .text(
                        "Expected",
                        "s",
                        row -> row.expected()
                                .map(expected -> Numbers.signed(expected, DECIMALS))
                                .orElse("-"))
                .text(
                        "Nine in ten",
                        "s",
                        row -> row.doubt().map(BriefPlan::interval).orElse("-"))
                .words("", "Look at", Row::look)
                .with(Table.Trait.LONG);
        for (Wheel wheel : Wheel.values()) {
            table.blank("Hot " + initials(wheel.label()), "");
        }
        table.blank("Times", "min:s").blank("Remark", "").boxes("Keep?");
        return Page.Block.table(table, rows);
    }

    private static String initials(String label) {
        StringBuilder initials = new StringBuilder();
        for (String word : label.split(" ")) {
            initials.append(Character.toUpperCase(word.charAt(0)));
        }
        return initials.toString();
    }

    /** @param logged whether the scatter is that of the log */
    private static String laps(TestPlan found, boolean logged) {
        return found.laps() + " laps that scatter by "
                + (logged
                        ? Numbers.fixed(found.scatter(), DECIMALS) + " s (the log's own)"
                        : Numbers.plain(found.scatter()) + " s");
    }

    /** As the log names the setup. */
    private static String example(TestPlan.Run run) {
        return run.changes().stream()
                .map(change -> change.adjustment().name() + "=" + Numbers.plain(change.to()))
                .collect(Collectors.joining(","));
    }

    /** The tests in a sentence, for the terminal and the first sheet. */
    static String shortly(TestPlan found, boolean logged) {
        List<TestPlan.Run> drive = found.toDrive();
        String laps = laps(found, logged);
        if (drive.isEmpty()) {
            return "In " + laps + " no change is large enough to show on the timing screen.";
        }
        TestPlan.Run first = drive.get(0);
        String steps = first.isBundle()
                ? "steps 1 to " + first.steps().size() + " together, as fewer would not show"
                : "step 1";
        return "In " + laps + " " + (drive.size() == 1 ? "one run shows" : drive.size() + " runs show") + ": "
                + (drive.size() == 1 ? "" : "first ") + steps + ", " + first.laps()
                + " laps with those before and after.";
    }
}
