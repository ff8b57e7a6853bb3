package dev.lapwright.cli.output;

import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** Terminal rendering of a report: items under names, running text broken between words, tables in columns. */
public final class TerminalReport {
    private static final String GAP = "  ";
    private static final int LONG_TITLE = 14;
    /** Least width of words in the last column. */
    private static final int WORDS = 12;

    private final Console console;

    private TerminalReport(Console console) {
        this.console = console;
    }

    public static void print(Console console, Report report) {
        TerminalReport terminal = new TerminalReport(console);
        console.units().blocks(report).forEach(terminal::print);
    }

    private void print(Report.Block block) {
        if (block instanceof Report.Title title) {
            Lines.paragraph(console, console.bold(title.subject()) + styled(title.rest()));
        } else if (block instanceof Report.Item item) {
            Lines.item(console, item.name(), styled(item.text()));
        } else if (block instanceof Report.Hanging hanging) {
            Lines.under(console, hanging.beginning(), length(hanging.beginning()), styled(hanging.text()));
        } else if (block instanceof Report.Paragraph paragraph) {
            Lines.paragraph(console, styled(paragraph.text()));
        } else if (block instanceof Report.Point point) {
            Lines.print(console, "- ", 2, styled(point.text()));
        } else if (block instanceof Report.Line line) {
            line(styled(line.text()));
        } else if (block instanceof Report.Caution caution) {
            Lines.paragraph(console, console.bold(caution.beginning()) + " " + caution.text());
        } else if (block instanceof Report.Rows<?> rows) {
            new Grid<>(rows).print();
        } else {
            console.line();
        }
    }

    /** A line as it stands; where the terminal is too narrow for it, broken under its own indent. */
    private void line(String text) {
        if (length(Lines.seen(text)) <= console.width()) {
            console.line(text);
        } else {
            int indent = text.length() - text.stripLeading().length();
            Lines.print(console, text.substring(0, indent), indent, text.substring(indent));
        }
    }

    private String styled(String text) {
        // A sign that no text holds shows where bold type begins and ends.
        String bold = console.bold("\u0000");
        int at = bold.indexOf('\u0000');
        return Report.marked(text, bold.substring(0, at), bold.substring(at + 1));
    }

    /** A table laid out: all its cells as text. */
    private final class Grid<R> {
        private final List<Table.Column<R>> columns;
        private final List<List<String>> titles = new ArrayList<>();
        private final List<List<String>> cells = new ArrayList<>();
        private final List<Boolean> marked = new ArrayList<>();
        private final List<String> leftOut = new ArrayList<>();
        private final int[] widths;
        private final Report.Rows<R> rows;

        Grid(Report.Rows<R> rows) {
            this.rows = rows;
            columns = new ArrayList<>(rows.table().shown());
            columns.forEach(column -> titles.add(lines(column)));
            for (R row : rows.rows()) {
                cells.add(new ArrayList<>(
                        columns.stream().map(column -> column.text().apply(row)).toList()));
                marked.add(rows.table().isMarked(row));
            }
            fit();
            widths = IntStream.range(0, columns.size()).map(this::width).toArray();
            if (columns.get(0).isWords()) {
                // Names that are too long stand on lines of their own.
                widths[0] = Math.max(titleWidth(0), widths[0] - Math.max(0, wanted() - console.width()));
            }
        }

        /** Leaves out, from the right, columns that the report calls lesser, until the rest fits. */
        private void fit() {
            int room = console.width() - wanted();
            for (int i = columns.size() - 1; i >= 0 && room < 0; i--) {
                if (columns.get(i).traits().contains(Table.Trait.LESSER)) {
                    room += GAP.length() + width(i);
                    String title = columns.get(i).title();
                    if (!leftOut.contains(title)) {
                        leftOut.add(0, title);
                    }
                    columns.remove(i);
                    titles.remove(i);
                    for (List<String> row : cells) {
                        row.remove(i);
                    }
                }
            }
        }

        /** Width of a line; words in the last column go on under themselves and take little. */
        private int wanted() {
            int last = columns.size() - 1;
            int sum = 0;
            for (int i = 0; i <= last; i++) {
                int width = width(i);
                boolean goesOn = i == last && columns.get(i).isWords();
                sum += GAP.length() + (goesOn ? Math.min(width, Math.max(WORDS, titleWidth(i))) : width);
            }
            return sum;
        }

        /** A title of several words or, if it is long, parts of a path in as many lines. */
        private List<String> lines(Table.Column<R> column) {
            String title = column.title();
            if (column.isWords()) {
                return List.of(title);
            }
            if (title.indexOf(' ') >= 0) {
                return List.of(title.split(" "));
            }
            return title.length() <= LONG_TITLE ? List.of(title) : List.of(title.split("(?<=\\.)"));
        }

        private int titleWidth(int column) {
            int width = length(columns.get(column).unit());
            for (String line : titles.get(column)) {
                width = Math.max(width, length(line));
            }
            return width;
        }

        private int width(int column) {
            int width = titleWidth(column);
            for (List<String> row : cells) {
                width = Math.max(width, length(row.get(column)));
            }
            return width;
        }

        /** Prints it, indented by two spaces; where it finds no room, each row as running text. */
        void print() {
            if (wanted() - width(0) + widths[0] > console.width()) {
                rows.rows().forEach(this::tell);
                return;
            }
            int lines = titles.stream().mapToInt(List::size).max().orElse(1);
            for (int line = lines - 1; line >= 0; line--) {
                int fromBelow = line;
                console.line(console.bold(joined(titles.stream()
                        .map(title -> fromBelow < title.size() ? title.get(title.size() - 1 - fromBelow) : "")
                        .toList())));
            }
            if (columns.stream().anyMatch(column -> !column.unit().isEmpty())) {
                console.line(console.faint(
                        joined(columns.stream().map(Table.Column::unit).toList())));
            }
            for (int i = 0; i < cells.size(); i++) {
                print(cells.get(i), marked.get(i));
            }
            if (!leftOut.isEmpty()) {
                Lines.print(
                        console,
                        GAP,
                        GAP.length(),
                        "For want of room without "
                                + String.join(", ", leftOut)
                                + ": a wider terminal has that, and --json.");
            }
        }

        /** A row as running text: its first cell, then each of the others under its title. */
        private void tell(R row) {
            List<String> said = new ArrayList<>();
            for (Table.Column<R> column : rows.table().shown()) {
                String cell = column.text().apply(row).strip();
                boolean isName = said.isEmpty() && column.isWords();
                // A form of times, such as m:ss, is no unit to be said after one.
                String unit = column.unit().isEmpty() || column.unit().indexOf(':') >= 0 ? "" : " " + column.unit();
                if (!cell.isEmpty()) {
                    said.add(isName || column.title().isEmpty() ? cell : column.title() + " " + cell + unit);
                }
            }
            Lines.print(console, GAP, GAP.length(), 2 * GAP.length(), String.join(", ", said));
        }

        private void print(List<String> whole, boolean marked) {
            List<String> row = whole;
            if (length(row.get(0)) > widths[0]) {
                console.line(GAP + row.get(0));
                row = new ArrayList<>(row);
                row.set(0, "");
            }
            String line = joined(row);
            int last = columns.size() - 1;
            if (length(line) <= Math.min(Lines.WIDTH, console.width())
                    || !columns.get(last).isWords()) {
                console.line(marked ? console.bold(line) : line);
                return;
            }
            // Words that are too wide go on under themselves.
            int start = last * GAP.length()
                    + GAP.length()
                    + IntStream.of(widths).limit(last).sum();
            List<String> before = new ArrayList<>(row);
            before.set(last, "");
            String beginning = joined(before);
            Lines.under(console, beginning, start, row.get(last));
        }

        private String joined(List<String> texts) {
            StringBuilder line = new StringBuilder();
            for (int i = 0; i < widths.length; i++) {
                String padding = " ".repeat(Math.max(0, widths[i] - length(texts.get(i))));
                line.append(GAP);
                line.append(columns.get(i).isWords() ? texts.get(i) + padding : padding + texts.get(i));
            }
            return line.toString().stripTrailing();
        }
    }

    private static int length(String text) {
        return TextWidth.of(text);
    }
}
