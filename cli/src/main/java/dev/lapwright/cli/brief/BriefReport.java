package dev.lapwright.cli.brief;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.cli.output.TerminalReport;
import dev.lapwright.cli.page.PageFact;

/** Brief as it is printed at the terminal: what it comes to, and what is missing; the page has the rest. */
public final class BriefReport {
    private BriefReport() {}

    public static void print(Console console, BriefOutcome outcome) {
        TerminalReport.print(console, outcome.subject().heading());
        console.line();
        for (PageFact fact : new BriefShort(outcome).facts()) {
            // What must not be broken on the page is an ordinary space here.
            Lines.item(console, fact.name(), fact.text().replace('\u00A0', ' '));
        }
        console.line();
        Lines.paragraph(
                console,
                console.bold("Caution:")
                        + " Read the cautions at the top of the page before you turn anything; the makers'"
                        + " limits and the rules of the event come first.");
        console.line();
    }

    /** What is missing, and what to do about it, beside the result. */
    public static void remarks(Console console, BriefOutcome outcome) {
        outcome.missing()
                .forEach((about, part) -> console.remark("lapwright: " + about + ": " + part.problem()
                        + (part.remedy().isEmpty() ? "" : "; " + part.remedy())));
    }
}
