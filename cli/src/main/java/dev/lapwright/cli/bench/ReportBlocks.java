package dev.lapwright.cli.bench;

import dev.lapwright.cli.output.MinusSign;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reports as the page reads them: the same words and tables that the commands print. */
final class ReportBlocks {
    private ReportBlocks() {}

    /** All that people read of a report. */
    static List<Map<String, Object>> of(Report report) {
        List<Map<String, Object>> blocks = new ArrayList<>();
        for (Report.Block block : report.blocks()) {
            // The page has a title of its own, and its own space.
            boolean isFirst = block instanceof Report.Title && blocks.isEmpty();
            if (!isFirst && !(block instanceof Report.Gap)) {
                blocks.add(of(block));
            }
        }
        return blocks;
    }

    /** The rows of a report under a table's caption; none if it has no such table. */
    static List<Map<String, Object>> tables(Report report, String caption) {
        return report.blocks().stream()
                .filter(block -> block instanceof Report.Rows<?> rows
                        && rows.table().caption().equals(caption))
                .map(ReportBlocks::of)
                .toList();
    }

    /** What a report says under some names, in its order. */
    static List<Map<String, Object>> items(Report report, List<String> names) {
        return report.blocks().stream()
                .filter(block -> block instanceof Report.Item item && names.contains(item.name()))
                .map(ReportBlocks::of)
                .toList();
    }

    private static Map<String, Object> of(Report.Block block) {
        Map<String, Object> tree = new LinkedHashMap<>();
        if (block instanceof Report.Title title) {
            tree.put("kind", "heading");
            tree.put("text", told(title.subject() + title.rest()));
        } else if (block instanceof Report.Item item) {
            tree.put("kind", "item");
            tree.put("name", item.name());
            tree.put("text", told(item.text()));
        } else if (block instanceof Report.Hanging hanging) {
            tree.put("kind", "item");
            tree.put("name", hanging.beginning().strip());
            tree.put("text", told(hanging.text()));
        } else if (block instanceof Report.Paragraph paragraph) {
            tree.put("kind", "paragraph");
            tree.put("text", told(paragraph.text()));
        } else if (block instanceof Report.Point point) {
            tree.put("kind", "point");
            tree.put("text", told(point.text()));
        } else if (block instanceof Report.Line line) {
            tree.put("kind", "paragraph");
            tree.put("text", told(line.text().strip()));
        } else if (block instanceof Report.Caution caution) {
            tree.put("kind", "caution");
            tree.put("name", caution.beginning());
            tree.put("text", told(caution.text()));
        } else if (block instanceof Report.Rows<?> rows) {
            rows(tree, rows);
        }
        return tree;
    }

    private static <R> void rows(Map<String, Object> tree, Report.Rows<R> rows) {
        Table<R> table = rows.table();
        tree.put("kind", "table");
        tree.put("caption", table.caption());
        List<Map<String, Object>> columns = new ArrayList<>();
        for (Table.Column<R> column : table.shown()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("title", column.title());
            one.put("unit", column.unit());
            one.put("words", column.isWords());
            one.put("lesser", column.traits().contains(Table.Trait.LESSER));
            columns.add(one);
        }
        tree.put("columns", columns);
        List<List<String>> cells = new ArrayList<>();
        List<Boolean> marked = new ArrayList<>();
        for (R row : rows.rows()) {
            cells.add(table.shown().stream()
                    .map(column -> told(column.text().apply(row)))
                    .toList());
            marked.add(table.isMarked(row));
        }
        tree.put("rows", cells);
        tree.put("marked", marked);
    }

    /** As people read it: true minus signs, degrees as a sign, and marks where it stands out. */
    static String told(String text) {
        return MinusSign.in(Report.marked(text, "\u0001", "\u0001")).replace("degC", "°C");
    }
}
