package dev.lapwright.cli.page;

import java.util.ArrayList;
import java.util.List;

/** A table; built column by column, then row by row. */
public final class PageTable {
    /** More columns than this do not fit a small screen: there each row becomes a card. */
    private static final int FEW = 4;

    private enum Kind {
        WORDS,
        NUMBERS,
        BLANK,
        BOX
    }

    /** A column's heading, as the template asks for it. */
    public record Column(String title, String unit, boolean number) {}

    /** A row, as the template asks for it. */
    public record Row(List<PageCell> cells, boolean marked) {}

    private final String caption;
    private final List<Column> columns = new ArrayList<>();
    private final List<Kind> kinds = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();

    /** @param caption what it is, for those who cannot see it */
    public PageTable(String caption) {
        this.caption = caption;
    }

    /** Adds a column of words; the first of all names its row. */
    public PageTable words(String title) {
        return column(title, "", Kind.WORDS);
    }

    /** Adds a column of numbers; the unit may be empty. */
    public PageTable numbers(String title, String unit) {
        return column(title, unit, Kind.NUMBERS);
    }

    /** Adds a column to be written in by hand. */
    public PageTable blank(String title, String unit) {
        return column(title, unit, Kind.BLANK);
    }

    /** Adds a column of boxes to tick. */
    public PageTable boxes(String title) {
        return column(title, "", Kind.BOX);
    }

    private PageTable column(String title, String unit, Kind kind) {
        columns.add(new Column(title, unit, kind == Kind.NUMBERS));
        kinds.add(kind);
        return this;
    }

    /** Adds a row: a text for each column that is not blank and no box. */
    public PageTable row(String... texts) {
        return row(List.of(texts), false);
    }

    /** Adds a row: a text for each column that is not blank and no box. */
    public PageTable row(List<String> texts, boolean marked) {
        List<PageCell> cells = new ArrayList<>();
        int next = 0;
        boolean named = false;
        for (int i = 0; i < columns.size(); i++) {
            Kind kind = kinds.get(i);
            boolean told = kind == Kind.WORDS || kind == Kind.NUMBERS;
            String text = told ? texts.get(next++) : "";
            boolean head = !named && kind == Kind.WORDS;
            named |= head;
            cells.add(new PageCell(
                    label(columns.get(i)), text, kind == Kind.NUMBERS, head, kind == Kind.BLANK, kind == Kind.BOX));
        }
        if (next != texts.size()) {
            throw new IllegalArgumentException(texts.size() + " texts for " + next + " columns");
        }
        rows.add(new Row(List.copyOf(cells), marked));
        return this;
    }

    private static String label(Column column) {
        return column.unit().isEmpty() ? column.title() : column.title() + ", " + column.unit();
    }

    /** What it is. */
    public String caption() {
        return caption;
    }

    /** Its columns. */
    public List<Column> columns() {
        return List.copyOf(columns);
    }

    /** Its rows. */
    public List<Row> rows() {
        return List.copyOf(rows);
    }

    /** Whether it is too wide for a small screen. */
    public boolean wide() {
        return columns.size() > FEW;
    }

    /** Whether it has rows. */
    public boolean filled() {
        return !rows.isEmpty();
    }
}
