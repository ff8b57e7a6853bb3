package dev.lapwright.cli.document;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Lines;
import dev.lapwright.documents.StoredLine;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.InputHash;
import java.util.LinkedHashMap;
import java.util.Map;

/** What a line document holds. */
public final class LineSheet implements Sheet {
    private final StoredLine line;

    public LineSheet(StoredLine line) {
        this.line = line;
    }

    @Override
    public void print(Console console) {
        console.line(console.bold(line.name()) + ", a line along " + line.road() + ", "
                + Numbers.fixed(line.roadLength(), 0) + " m");
        line.kind().ifPresent(kind -> Lines.item(console, "Looked for", kind.word()));
        said(console, "Car", line.car());
        said(console, "Setup", line.setup());
        line.lapTime().ifPresent(time -> Lines.item(console, "Lap time", Numbers.lapTime(time)));
        line.margin().ifPresent(margin -> Lines.item(console, "Margin", Numbers.plain(margin) + " m on each side"));
        double[] range = range();
        Lines.item(
                console,
                "Offsets",
                Numbers.signed(range[0], 2) + " to " + Numbers.signed(range[1], 2) + " m, positive to the left, at "
                        + line.offsets().length + " places");
    }

    private static void said(Console console, String name, String text) {
        if (!text.isEmpty()) {
            Lines.item(console, name, text);
        }
    }

    private double[] range() {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double offset : line.offsets()) {
            least = Math.min(least, offset);
            most = Math.max(most, offset);
        }
        return new double[] {least, most};
    }

    @Override
    public Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kind", "line");
        tree.put("name", line.name());
        tree.put("road", line.road());
        tree.put("roadLengthM", line.roadLength());
        line.kind().ifPresent(kind -> tree.put("lookedFor", kind.word()));
        tree.put("car", line.car());
        tree.put("setup", line.setup());
        line.lapTime().ifPresent(time -> tree.put("lapTimeS", time));
        line.margin().ifPresent(margin -> tree.put("marginM", margin));
        tree.put("distancesM", InputHash.list(line.distances()));
        tree.put("offsetsM", InputHash.list(line.offsets()));
        return tree;
    }
}
