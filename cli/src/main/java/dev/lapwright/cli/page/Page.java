package dev.lapwright.cli.page;

import java.util.List;
import java.util.Objects;

/**
 * A page for people.
 *
 * @param title the heading, and the document's title
 * @param facts what it is about, in a few lines
 * @param summary what it comes to, read first; the name is what each is about
 * @param cautions what to mind before acting on it; may be empty
 * @param sections in the order to read them
 * @param footer where it comes from
 */
public record Page(
        String title,
        List<PageFact> facts,
        List<PageFact> summary,
        List<String> cautions,
        List<PageSection> sections,
        String footer) {
    public Page {
        Objects.requireNonNull(title, "title");
        facts = List.copyOf(facts);
        summary = List.copyOf(summary);
        cautions = List.copyOf(cautions);
        sections = List.copyOf(sections);
        Objects.requireNonNull(footer, "footer");
    }

    /** Whether there is something to mind. */
    public boolean cautioned() {
        return !cautions.isEmpty();
    }
}
