package dev.lapwright.report;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Result of a study, in the order in which it is told: to people as blocks, to machines as fields, and as tables for files.
 * Each fact is said once and goes wherever it is named for.
 */
public final class Report {
    /** What people read, one after the other. */
    public sealed interface Block {}

    /** First line: what it is about, which stands out, and what is said of that. */
    public record Title(String subject, String rest) implements Block {}

    /** A name and what there is to say under it. */
    public record Item(String name, String text) implements Block {}

    /** A beginning that keeps its place, and text that goes on under its own first word. */
    public record Hanging(String beginning, String text) implements Block {}

    /** Running text. */
    public record Paragraph(String text) implements Block {}

    /** One point of a list. */
    public record Point(String text) implements Block {}

    /** A line that is never broken. */
    public record Line(String text) implements Block {}

    /** Something that can hurt people or cars. */
    public record Caution(String beginning, String text) implements Block {}

    /** Space between two blocks. */
    public record Gap() implements Block {}

    /** Rows of a table. */
    public record Rows<R>(Table<R> table, Iterable<R> rows) implements Block {}

    private record Csv<R>(Table<R> table, Iterable<R> rows) {}

    private static final char STRONG = '\u0002';
    private static final char PLAIN = '\u0003';
    /** Stands for a hyphen that is no minus; no text that is read holds it. */
    private static final char KEPT = '\u0004';

    private final Map<String, Object> fields = new LinkedHashMap<>();
    private final List<Block> blocks = new ArrayList<>();
    private final Map<String, Csv<?>> tables = new LinkedHashMap<>();

    /** A report that says nothing yet. */
    public Report() {}

    /** Text that stands out within other text, where the renderer can do that. */
    public static String strong(String text) {
        return STRONG + text + PLAIN;
    }

    /** A name or text of a document within other text: its hyphens stay hyphens, where numbers for people get minus signs, and its numbers stay as they are in all units. */
    public static String verbatim(String text) {
        return UnitSystem.named(text.replace('-', KEPT));
    }

    /** Text in which hyphens that were to be kept are hyphens. */
    public static String plain(String text) {
        return text.replace(KEPT, '-').replace("\u0005", "");
    }

    /** Text with its strong parts put between two marks of the renderer. */
    public static String marked(String text, String begin, String end) {
        return text.replace(String.valueOf(STRONG), begin).replace(String.valueOf(PLAIN), end);
    }

    /** Begins with what the report is about. */
    public Report title(String subject, String rest) {
        return block(new Title(subject, rest));
    }

    /** Says one thing under a name. */
    public Report item(String name, String text) {
        return block(new Item(name, text));
    }

    /** Says something after a beginning that keeps its spaces, as in a list of names in a column of one width. */
    public Report hanging(String beginning, String text) {
        return block(new Hanging(beginning, text));
    }

    /** Adds running text. */
    public Report paragraph(String text) {
        return block(new Paragraph(text));
    }

    /** Adds one point of a list. */
    public Report point(String text) {
        return block(new Point(text));
    }

    /** Adds a line that is never broken. */
    public Report line(String text) {
        return block(new Line(text));
    }

    /** Adds space. */
    public Report gap() {
        return block(new Gap());
    }

    /** Shows rows to people. */
    public <R> Report rows(Table<R> table, Iterable<R> rows) {
        return block(new Rows<>(table, rows));
    }

    /** Warns, after some space. */
    public Report caution(String text) {
        return caution("Caution:", text);
    }

    /** Warns, after some space, with a beginning of its own. */
    public Report caution(String beginning, String text) {
        return gap().block(new Caution(beginning, text));
    }

    /** Adds a block of another report. */
    public Report add(Block block) {
        return block(block);
    }

    private Report block(Block block) {
        blocks.add(block);
        return this;
    }

    /** Adds a field for machines: a number, text, truth value, list, map, or null. */
    public Report field(String key, Object value) {
        fields.put(key, value instanceof String text ? plain(text) : value);
        return this;
    }

    /** Adds all fields of a map for machines. */
    public Report fields(Map<String, ?> more) {
        fields.putAll(more);
        return this;
    }

    /** Adds rows for machines, written one by one. */
    public <R> Report field(String key, Table<R> table, Iterable<R> rows) {
        return field(key, table.maps(rows));
    }

    /** Adds a field with a list for each column that a table has for machines; numbers to nine digits, as in a file. */
    public <R> Report columns(Table<R> table, Iterable<R> rows) {
        for (Table.Column<R> column : table.keyed()) {
            List<Object> values = new ArrayList<>();
            for (R row : rows) {
                Object value = column.value().apply(row);
                values.add(value instanceof Double number ? CsvText.rounded(number) : value);
            }
            field(column.key(), values);
        }
        return this;
    }

    /** Declares a table of values parted by commas, under the name of its file in a folder. */
    public <R> Report csv(String file, Table<R> table, Iterable<R> rows) {
        tables.put(file, new Csv<>(table, rows));
        return this;
    }

    /** What people read. */
    public List<Block> blocks() {
        return List.copyOf(blocks);
    }

    /** What machines read, by name. */
    public Map<String, Object> fields() {
        return new LinkedHashMap<>(fields);
    }

    /** The fields as JSON. */
    public String json() {
        return JsonLayout.text(fields);
    }

    /** Writes the fields as JSON, rows one by one. */
    public void json(Appendable out) throws IOException {
        JsonLayout.write(fields, out);
    }

    /** Writes a table that was declared. */
    public void csv(String file, Appendable out) throws IOException {
        write(tables.get(file), out);
    }

    private static <R> void write(Csv<R> csv, Appendable out) throws IOException {
        CsvText.write(csv.table(), csv.rows(), out);
    }
}
