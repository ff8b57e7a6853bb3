package dev.lapwright.cli.page;

import dev.lapwright.report.Table;
import java.util.List;

/**
 * Block of a section, such as a table or a drawing; all components but one are null.
 *
 * @param paragraph running text
 * @param subheading the heading of what follows
 * @param list points
 * @param table a table
 * @param figure a drawing
 * @param missing what could not be found
 * @param terms words and what they mean
 * @param gauges shares of a whole, drawn as bars
 */
public record PageBlock(
        String paragraph,
        String subheading,
        List<String> list,
        LaidTable table,
        PageFigure figure,
        PageMissing missing,
        List<PageFact> terms,
        List<PageShare> gauges) {

    /** Running text. */
    public static PageBlock paragraph(String text) {
        return new PageBlock(text, null, null, null, null, null, null, null);
    }

    /** The heading of what follows. */
    public static PageBlock subheading(String text) {
        return new PageBlock(null, text, null, null, null, null, null, null);
    }

    /** Points, at least one. */
    public static PageBlock list(List<String> points) {
        return new PageBlock(null, null, List.copyOf(points), null, null, null, null, null);
    }

    /** Rows of a table. */
    public static <R> PageBlock table(Table<R> table, Iterable<R> rows) {
        return new PageBlock(null, null, null, LaidTable.of(table, rows), null, null, null, null);
    }

    /** A drawing. */
    public static PageBlock figure(PageFigure figure) {
        return new PageBlock(null, null, null, null, figure, null, null, null);
    }

    /** What could not be found, and what to do. */
    public static PageBlock missing(String problem, String remedy) {
        return new PageBlock(null, null, null, null, null, new PageMissing(problem, remedy), null, null);
    }

    /** Words and what they mean. */
    public static PageBlock terms(List<PageFact> terms) {
        return new PageBlock(null, null, null, null, null, null, List.copyOf(terms), null);
    }

    /** Shares of a whole. */
    public static PageBlock shares(List<PageShare> shares) {
        return new PageBlock(null, null, null, null, null, null, null, List.copyOf(shares));
    }
}
