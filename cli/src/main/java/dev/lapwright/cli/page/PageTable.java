package dev.lapwright.cli.page;

import java.util.ArrayList;
import java.util.List;

/** A table; built column by column, then row by row. */
public final class PageTable {
    /** More columns than this do not fit a small screen: there each row becomes a card. */
    private static final int FEW = 5;

    /** Rows up to which a table stays on one sheet. */
    private static final int MOST_UNCUT = 8;

    private enum Kind {
        WORDS,
        NUMBERS,
        BLANK,
        BOX
    }

    /**
     * A column's heading, as the template asks for it.
     *
     * @param title what it holds
     * @param unit of its numbers; empty for none
     * @param style its classes; empty for none
     */
    public record Column(String title, String unit, String style) {
        private boolean lesser() {
            return style.contains(LESSER);
        }
    }

    /** A row, as the template asks for it. */
    public record Row(List<PageCell> cells, boolean marked) {}

    private static final String NUMBER = "number";
    private static final String LESSER = "lesser";

    private final String caption;
    private final List<Column> columns = new ArrayList<>();
    private final List<Kind> kinds = new ArrayList<>();
    private final List<Row> rows = new ArrayList<>();
    private boolean cards;

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
        columns.add(new Column(title, unit, kind == Kind.NUMBERS ? NUMBER : ""));
        kinds.add(kind);
        return this;
    }

    /** Leaves the column added last out where the screen is small. */
    public PageTable lesser() {
        return styled(LESSER);
    }

    /** Says that the column added last has long texts: on a small screen each row then becomes a card. */
    public PageTable longTexts() {
        cards = true;
        return styled("long");
    }

    private PageTable styled(String style) {
        int last = columns.size() - 1;
        Column column = columns.get(last);
        columns.set(last, new Column(column.title(), column.unit(), (column.style() + " " + style).strip()));
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
            Column column = columns.get(i);
            Kind kind = kinds.get(i);
            boolean told = kind == Kind.WORDS || kind == Kind.NUMBERS;
            boolean head = !named && kind == Kind.WORDS;
            named |= head;
            cells.add(new PageCell(label(column), told ? texts.get(next++) : "", column.style(), kind(kind, head)));
        }
        if (next != texts.size()) {
            throw new IllegalArgumentException(texts.size() + " texts for " + next + " columns");
        }
        rows.add(new Row(List.copyOf(cells), marked));
        return this;
    }

    private static PageCell.Kind kind(Kind kind, boolean head) {
        return switch (kind) {
            case BLANK -> PageCell.Kind.BLANK;
            case BOX -> PageCell.Kind.BOX;
            case WORDS, NUMBERS -> head ? PageCell.Kind.HEAD : PageCell.Kind.TOLD;
        };
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
        return cards || columns.stream().filter(column -> !column.lesser()).count() > FEW;
    }

    /** Whether columns are left out where the screen is small. */
    public boolean shortened() {
        return columns.stream().anyMatch(Column::lesser);
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
