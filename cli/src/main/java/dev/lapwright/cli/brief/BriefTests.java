package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.TestPlan;
import dev.lapwright.cli.page.Page;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.compare.Comparison;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Section of a brief on testing: what to drive, in order, and what each run should show. */
public final class BriefTests {
    private static final int PLACES = 2;

    private final BriefReport brief;

    public BriefTests(BriefReport brief) {
        this.brief = brief;
    }

    public Page.Section section() {
        BriefResult.Part<TestPlan> part = brief.result().tests();
        List<Page.Block> blocks = new ArrayList<>();
        part.value().ifPresentOrElse(found -> fill(blocks, found), () -> blocks.add(BriefPage.missing(part)));
        return new Page.Section(
                "tests",
                "Test runs, in the order to do them",
                "Each test is driven as it was, with the change, and as it was again, in clean laps without out laps and in"
                        + " laps; it shows a difference of the size expected four times in five. Tick off and write in by hand.",
                blocks);
    }

    private static void fill(List<Page.Block> blocks, TestPlan plan) {
        List<TestPlan.Run> drive = plan.toDrive();
        if (drive.isEmpty()) {
            blocks.add(
                    Page.Block.paragraph("None: nothing that could be changed is worth enough to show in " + plan.laps()
                            + " laps that scatter by " + Numbers.plain(plan.scatter())
                            + " s. Use the laps to drive; a driver who repeats better sees more."));
        } else {
            blocks.add(toDrive(drive));
            blocks.add(Page.Block.paragraph("Of " + plan.laps() + " laps " + (plan.laps() - plan.lapsLeft())
                    + " are used up by these, " + plan.lapsLeft()
                    + " are left. Change nothing else meanwhile, write down"
                    + " every lap, and name the setup that was changed by what is set, here " + example(drive.get(0))
                    + " for the first: from a log so named this tool tells afterwards what the laps proved (--laps)."));
        }
        List<TestPlan.Run> not = plan.runs().stream()
                .filter(run -> run.fate() != TestPlan.Run.Fate.DRIVE)
                .toList();
        if (!not.isEmpty()) {
            blocks.add(Page.Block.subheading("Not worth laps"));
            blocks.add(notToDrive(not));
        }
    }

    /** As the log names the setup. */
    private static String example(TestPlan.Run run) {
        return run.changes().stream()
                .map(change -> change.adjustment().name() + "=" + Numbers.plain(change.to()))
                .collect(Collectors.joining(","));
    }

    private static Page.Block toDrive(List<TestPlan.Run> runs) {
        Table<TestPlan.Run> table = Table.<TestPlan.Run>of("Test runs")
                .boxes("Done")
                .words("", "Change", run -> runs.indexOf(run) + 1 + ". " + title(run))
                .words(
                        "",
                        "Laps before + with + after",
                        run -> run.firstLaps() + " + " + run.changedLaps() + " + " + run.lastLaps() + " (" + run.total()
                                + " so far)")
                .number(
                        "",
                        "Expected",
                        "s a lap",
                        Numbers.signed(3),
                        run -> run.effect().difference())
                .words("", "Look at", BriefTests::lookAt)
                .with(Table.Trait.LONG)
                .blank("Mean as it was", "min:s")
                .blank("Mean with it", "min:s")
                .blank("Kept?", "");
        return Page.Block.table(table, runs);
    }

    private static String title(TestPlan.Run run) {
        return run.isWhole()
                ? "The suggested setup as a whole (" + run.changes().size() + " changes)"
                : BriefWords.changes(run.changes());
    }

    private static String lookAt(TestPlan.Run run) {
        boolean faster = run.effect().difference() <= 0;
        List<Comparison.Part> places = run.effect().places();
        List<String> names = new ArrayList<>();
        for (int i = 0; i < Math.min(PLACES, places.size()); i++) {
            Comparison.Part place = places.get(faster ? i : places.size() - 1 - i);
            names.add(Report.verbatim(place.label()) + " " + Numbers.signed(place.difference(), 3) + " s");
        }
        String sector =
                run.effect().bySector().size() > 1 ? "sector " + run.effect().mainSector() + "; " : "";
        return sector + String.join(", ", names);
    }

    private static Page.Block notToDrive(List<TestPlan.Run> runs) {
        Table<TestPlan.Run> table = Table.<TestPlan.Run>of("What these laps cannot show")
                .words("", "Change", BriefTests::title)
                .number(
                        "",
                        "Expected",
                        "s a lap",
                        Numbers.signed(3),
                        run -> run.effect().difference())
                .text("Laps to see it", "each setting", run -> BriefWords.laps(run.lapsToSee()))
                .words(
                        "",
                        "Why not",
                        run -> run.fate() == TestPlan.Run.Fate.LAPS_USED_UP
                                ? "the tests above use up the laps"
                                : "the laps there are cannot show it: believe the model or leave it")
                .with(Table.Trait.LONG);
        return Page.Block.table(table, runs);
    }
}
