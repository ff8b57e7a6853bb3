package dev.lapwright.report;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/**
 * Declaration of a table: its columns, each with its name for machines, its title, unit and digits for people, and how its
 * value is read off a row. It holds no rows, so that a result of millions of laps is written row by row.
 *
 * <p>A column without a title is for machines alone, one without a key for people alone.
 *
 * @param <R> what a row stands for
 */
public final class Table<R> {
    /** Value of a column in a row where it is not known: null in JSON, empty in a table of values. */
    public static final Double NOT_KNOWN = Double.NaN;

    /** How a column is set, and what becomes of it where there is little room. */
    public enum Trait {
        /** Words, set to the left; other columns are numbers, set to the right. */
        WORDS,
        /** Left out where the screen is small. */
        LESSER,
        /** Has long texts: on a small screen each row becomes a card. */
        LONG,
        /** Empty, to be written in by hand; only on a page. */
        BLANK,
        /** A box to tick by hand; only on a page. */
        BOX
    }

    /**
     * Column of a table.
     *
     * @param key name for machines, which ends in the unit; empty where the column is for people alone
     * @param title what it holds, in lower case; empty where the column is for machines alone
     * @param unit symbol; empty for none
     * @param value of a row in that unit: a number, text, truth value, list or map; null where a row has none and leaves the
     *     column out; NaN where the number is not known
     * @param text of a row for people
     * @param traits how it is set
     * @param <R> what a row stands for
     */
    public record Column<R>(
            String key,
            String title,
            String unit,
            Function<? super R, ?> value,
            Function<? super R, String> text,
            Set<Trait> traits) {
        /** Whether it is set to the left. */
        public boolean isWords() {
            return traits.contains(Trait.WORDS);
        }
    }

    private final String caption;
    private final List<Column<R>> columns = new ArrayList<>();
    private Predicate<? super R> marked = row -> false;

    private Table(String caption) {
        this.caption = caption;
    }

    /**
     * A table without columns yet.
     *
     * @param caption what it is, for those who cannot see it
     */
    public static <R> Table<R> of(String caption) {
        return new Table<>(caption);
    }

    /** A table for machines alone of columns of numbers, one row for each place in them: see {@link #places(int)}. */
    public static Table<Integer> of(String caption, Map<String, double[]> columns) {
        Table<Integer> table = of(caption);
        columns.forEach((key, values) -> table.value(key, place -> values[place]));
        return table;
    }

    /** Rows of a table of columns: 0 to n - 1. */
    public static Iterable<Integer> places(int n) {
        return () -> IntStream.range(0, n).iterator();
    }

    /** Adds a column of words. */
    public Table<R> words(String key, String title, Function<? super R, String> text) {
        return add(key, title, "", text, text, EnumSet.of(Trait.WORDS));
    }

    /** Adds a column of names that come from documents: people read them as they are written there. */
    public Table<R> names(String key, String title, Function<? super R, String> name) {
        return add(key, title, "", name, row -> Report.verbatim(name.apply(row)), EnumSet.of(Trait.WORDS));
    }

    /**
     * Adds a column of numbers.
     *
     * @param digits how a number is written for people, as in {@link Numbers#fixed(int)}
     * @param value in the unit
     */
    public Table<R> number(
            String key,
            String title,
            String unit,
            DoubleFunction<String> digits,
            Function<? super R, ? extends Number> value) {
        return add(
                key,
                title,
                unit,
                value,
                row -> {
                    Number number = value.apply(row);
                    return number == null ? Numbers.NONE : digits.apply(number.doubleValue());
                },
                EnumSet.noneOf(Trait.class));
    }

    /** Adds a column that people read otherwise than machines: a number whose digits depend on the row, or a word. */
    public Table<R> said(
            String key, String title, String unit, Function<? super R, ?> value, Function<? super R, String> text) {
        return add(key, title, unit, value, text, EnumSet.noneOf(Trait.class));
    }

    /** Adds a column of numbers for people alone, which are already text. */
    public Table<R> text(String title, String unit, Function<? super R, String> text) {
        return add("", title, unit, row -> null, text, EnumSet.noneOf(Trait.class));
    }

    /** Adds a column for machines alone: a number, text, truth value, list or map. */
    public Table<R> value(String key, Function<? super R, ?> value) {
        return add(key, "", "", value, row -> "", EnumSet.noneOf(Trait.class));
    }

    /** Adds a column for machines alone that holds rows of another table. */
    public <S> Table<R> rows(String key, Table<S> table, Function<? super R, ? extends Iterable<S>> rows) {
        return value(key, row -> table.maps(rows.apply(row)));
    }

    /** Adds a column to be written in by hand. */
    public Table<R> blank(String title, String unit) {
        return add("", title, unit, row -> null, row -> "", EnumSet.of(Trait.BLANK));
    }

    /** Adds a column of boxes to tick. */
    public Table<R> boxes(String title) {
        return add("", title, "", row -> null, row -> "", EnumSet.of(Trait.BOX));
    }

    /** Adds all columns of another table, whose rows are parts of these. */
    public <S> Table<R> all(Table<S> other, Function<? super R, ? extends S> part) {
        for (Column<S> column : other.columns) {
            add(
                    column.key(),
                    column.title(),
                    column.unit(),
                    row -> value(column, part.apply(row)),
                    row -> column.text().apply(part.apply(row)),
                    column.traits());
        }
        return this;
    }

    private static <S> Object value(Column<S> column, S part) {
        return part == null ? null : column.value().apply(part);
    }

    /** Gives the column added last another trait. */
    public Table<R> with(Trait trait) {
        int last = columns.size() - 1;
        Column<R> column = columns.get(last);
        Set<Trait> traits = EnumSet.of(trait);
        traits.addAll(column.traits());
        columns.set(
                last, new Column<>(column.key(), column.title(), column.unit(), column.value(), column.text(), traits));
        return this;
    }

    /** Makes rows stand out. */
    public Table<R> marking(Predicate<? super R> rows) {
        marked = rows;
        return this;
    }

    private Table<R> add(
            String key,
            String title,
            String unit,
            Function<? super R, ?> value,
            Function<? super R, String> text,
            Set<Trait> traits) {
        columns.add(new Column<>(key, title, unit, value, text, traits));
        return this;
    }

    /** All columns, in order. */
    List<Column<R>> columns() {
        return columns;
    }

    /** The same rows in other columns. */
    Table<R> with(List<Column<R>> others) {
        Table<R> table = new Table<>(caption);
        table.columns.addAll(others);
        table.marked = marked;
        return table;
    }

    /** What it is, for those who cannot see it. */
    public String caption() {
        return caption;
    }

    /** Whether a row stands out. */
    public boolean isMarked(R row) {
        return marked.test(row);
    }

    /** The columns for people, in order. */
    public List<Column<R>> shown() {
        return columns.stream()
                .filter(column -> !column.title().isEmpty() || column.key().isEmpty())
                .toList();
    }

    /** The columns for machines, in order. */
    public List<Column<R>> keyed() {
        return columns.stream().filter(column -> !column.key().isEmpty()).toList();
    }

    /** A row as a map, in the order of the columns, for {@link JsonLayout}. */
    public Map<String, Object> map(R row) {
        Map<String, Object> map = new LinkedHashMap<>();
        for (Column<R> column : columns) {
            Object value = column.key().isEmpty() ? null : column.value().apply(row);
            if (value != null) {
                map.put(column.key(), value);
            }
        }
        return map;
    }

    /** Rows as maps, each made when it is asked for. */
    public Iterable<Map<String, Object>> maps(Iterable<R> rows) {
        return () -> {
            java.util.Iterator<R> each = rows.iterator();
            return new java.util.Iterator<>() {
                @Override
                public boolean hasNext() {
                    return each.hasNext();
                }

                @Override
                public Map<String, Object> next() {
                    return map(each.next());
                }
            };
        };
    }
}
