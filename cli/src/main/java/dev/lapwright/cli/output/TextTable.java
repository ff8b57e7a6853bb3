package dev.lapwright.cli.output;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Text in columns under header lines: what a column holds, and its unit. */
public final class TextTable {
    private static final String GAP = "  ";
    private static final int LONG_TITLE = 14;

    /** To which side a column is set. */
    public enum Side {
        LEFT,
        RIGHT
    }

    private record Column(List<String> title, String unit, Side side) {
        /** A line of the title, counted from the lowest; empty above the first. */
        String titleLine(int fromBelow) {
            return fromBelow < title.size() ? title.get(title.size() - 1 - fromBelow) : "";
        }
    }

    private record Row(List<String> cells, boolean marked) {}

    private final List<Column> columns = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();

    /** Adds a column of words. */
    public TextTable words(String title) {
        columns.add(new Column(List.of(title), "", Side.LEFT));
        return this;
    }

    /** Adds a column of numbers. */
    public TextTable numbers(String title, String unit) {
        columns.add(new Column(lines(title), unit, Side.RIGHT));
        return this;
    }

    /** Adds a row, one cell for each column. */
    public TextTable row(String... cells) {
        return row(List.of(cells), false);
    }

    /** Adds a row, one cell for each column; a marked row stands out on a terminal. */
    public TextTable row(List<String> cells, boolean marked) {
        if (cells.size() != columns.size()) {
            throw new IllegalArgumentException(cells.size() + " cells for " + columns.size() + " columns");
        }
        rows.add(new Row(List.copyOf(cells), marked));
        return this;
    }

    /** Prints it, indented by two spaces. */
    public void printTo(Console console) {
        int[] widths = widths();
        int over = IntStream.of(widths).map(width -> width + GAP.length()).sum() - console.width();
        boolean wordsLast = columns.get(columns.size() - 1).side() == Side.LEFT;
        if (over > 0 && !wordsLast && columns.get(0).side() == Side.LEFT) {
            // Names that are too long stand on lines of their own.
            widths[0] = Math.max(0, widths[0] - over);
        }
        int lines =
                columns.stream().mapToInt(column -> column.title().size()).max().orElse(1);
        for (int line = lines - 1; line >= 0; line--) {
            int fromBelow = line;
            List<String> titles =
                    columns.stream().map(column -> column.titleLine(fromBelow)).toList();
            console.line(console.bold(joined(titles, widths)));
        }
        if (columns.stream().anyMatch(column -> !column.unit().isEmpty())) {
            console.line(console.faint(joined(columns.stream().map(Column::unit).toList(), widths)));
        }
        for (Row row : rows) {
            print(console, row, widths);
        }
    }

    private void print(Console console, Row whole, int[] widths) {
        Row row = whole;
        if (length(row.cells().get(0)) > widths[0]) {
            console.line(GAP + row.cells().get(0));
            List<String> rest = new ArrayList<>(row.cells());
            rest.set(0, "");
            row = new Row(rest, row.marked());
        }
        String line = joined(row.cells(), widths);
        int last = columns.size() - 1;
        if (length(line) <= Math.min(Lines.WIDTH, console.width())
                || columns.get(last).side() == Side.RIGHT) {
            console.line(row.marked() ? console.bold(line) : line);
            return;
        }
        // Words that are too wide go on under themselves.
        int start = last * GAP.length()
                + GAP.length()
                + IntStream.of(widths).limit(last).sum();
        List<String> before = new ArrayList<>(row.cells());
        before.set(last, "");
        String beginning = joined(before, widths);
        Lines.under(console, beginning, start, row.cells().get(last));
    }

    /** A title of several words or, if it is long, parts of a path in as many lines. */
    private static List<String> lines(String title) {
        if (title.indexOf(' ') >= 0) {
            return List.of(title.split(" "));
        }
        return title.length() <= LONG_TITLE ? List.of(title) : List.of(title.split("(?<=\\.)"));
    }

    private int[] widths() {
        int[] widths = new int[columns.size()];
        for (int i = 0; i < widths.length; i++) {
            widths[i] = length(columns.get(i).unit());
            for (String line : columns.get(i).title()) {
                widths[i] = Math.max(widths[i], length(line));
            }
            for (Row row : rows) {
                widths[i] = Math.max(widths[i], length(row.cells().get(i)));
            }
        }
        return widths;
    }

    private String joined(List<String> cells, int[] widths) {
        StringBuilder line = new StringBuilder();
        for (int i = 0; i < widths.length; i++) {
            String padding = " ".repeat(Math.max(0, widths[i] - length(cells.get(i))));
            line.append(GAP);
            if (columns.get(i).side() == Side.RIGHT) {
                line.append(padding).append(cells.get(i));
            } else {
                line.append(cells.get(i)).append(padding);
            }
        }
        return line.toString().stripTrailing();
    }

    private static int length(String text) {
        return TextWidth.of(text);
    }
}
