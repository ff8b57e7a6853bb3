package dev.lapwright.cli.page;

import dev.lapwright.report.Table;
import dev.lapwright.report.UnitSystem;
import java.util.ArrayList;
import java.util.List;

/** Table laid out for the template: headings, and cells that know the heading they stand under. */
public final class LaidTable {
    /** More columns than this do not fit a small screen: there each row becomes a card. */
    private static final int FEW = 5;

    /** Rows up to which a table stays on one sheet. */
    private static final int MOST_UNCUT = 8;

    /**
     * Heading of a column.
     *
     * @param title what it holds
     * @param unit of its numbers; empty for none
     * @param style its classes; empty for none
     */
    public record Column(String title, String unit, String style) {}

    /** Row of cells. */
    public record Row(List<Page.Cell> cells, boolean marked) {}

    private final String caption;
    private final List<Column> columns;
    private final List<Row> rows;
    private final boolean wide;
    private final boolean shortened;

    private LaidTable(String caption, List<Column> columns, List<Row> rows, boolean wide, boolean shortened) {
        this.caption = caption;
        this.columns = columns;
        this.rows = rows;
        this.wide = wide;
        this.shortened = shortened;
    }

    /** Rows of a declared table; its first column of words names each row. */
    static <R> LaidTable of(Table<R> table, Iterable<R> rows) {
        List<Table.Column<R>> shown = table.shown();
        List<Row> laid = new ArrayList<>();
        for (R row : rows) {
            List<Page.Cell> cells = new ArrayList<>();
            boolean named = false;
            for (Table.Column<R> column : shown) {
                boolean head = !named && column.isWords();
                named |= head;
                cells.add(new Page.Cell(
                        label(column.title(), column.unit()),
                        column.text().apply(row),
                        style(column),
                        kind(column, head)));
            }
            laid.add(new Row(List.copyOf(cells), table.isMarked(row)));
        }
        long kept = shown.stream()
                .filter(column -> !column.traits().contains(Table.Trait.LESSER))
                .count();
        boolean cards = shown.stream().anyMatch(column -> column.traits().contains(Table.Trait.LONG));
        return new LaidTable(
                table.caption(),
                shown.stream()
                        .map(column -> new Column(column.title(), column.unit(), style(column)))
                        .toList(),
                laid,
                cards || kept > FEW,
                kept < shown.size());
    }

    /** The same with its columns in other units. */
    LaidTable in(UnitSystem units) {
        List<Column> others = columns.stream()
                .map(column -> new Column(column.title(), units.symbol(column.unit()), column.style()))
                .toList();
        List<Row> converted = new ArrayList<>();
        for (Row row : rows) {
            List<Page.Cell> cells = new ArrayList<>();
            for (int i = 0; i < columns.size(); i++) {
                Page.Cell cell = row.cells().get(i);
                cells.add(new Page.Cell(
                        label(others.get(i).title(), others.get(i).unit()),
                        units.numbers(cell.text(), columns.get(i).unit()),
                        cell.style(),
                        cell.kind()));
            }
            converted.add(new Row(List.copyOf(cells), row.marked()));
        }
        return new LaidTable(caption, others, converted, wide, shortened);
    }

    private static String label(String title, String unit) {
        return unit.isEmpty() ? title : title + ", " + unit;
    }

    private static Page.Cell.Kind kind(Table.Column<?> column, boolean head) {
        return column.traits().contains(Table.Trait.BLANK)
                ? Page.Cell.Kind.BLANK
                : column.traits().contains(Table.Trait.BOX)
                        ? Page.Cell.Kind.BOX
                        : head ? Page.Cell.Kind.HEAD : Page.Cell.Kind.TOLD;
    }

    private static String style(Table.Column<?> column) {
        List<String> styles = new ArrayList<>();
        boolean told =
                !column.traits().contains(Table.Trait.BLANK) && !column.traits().contains(Table.Trait.BOX);
        if (told && !column.isWords()) {
            styles.add("number");
        }
        if (column.traits().contains(Table.Trait.LESSER)) {
            styles.add("lesser");
        }
        if (column.traits().contains(Table.Trait.LONG)) {
            styles.add("long");
        }
        return String.join(" ", styles);
    }

    /** What it is. */
    public String caption() {
        return caption;
    }

    /** Its columns. */
    public List<Column> columns() {
        return columns;
    }

    /** Its rows. */
    public List<Row> rows() {
        return rows;
    }

    /** Whether it is too wide for a small screen. */
    public boolean wide() {
        return wide;
    }

    /** Whether columns are left out where the screen is small. */
    public boolean shortened() {
        return shortened;
    }

    /** Whether it fits a sheet of paper with room to spare, so that it is not cut. */
    public boolean brief() {
        return rows.size() <= MOST_UNCUT;
    }

    /** Whether it has rows. */
    public boolean filled() {
        return !rows.isEmpty();
    }
}
