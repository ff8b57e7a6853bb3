package dev.lapwright.cli.tables;

import dev.lapwright.car.Quantity;
import dev.lapwright.doubt.DoubtClass;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Prints as Markdown how well the numbers of a car are taken to be known where its document does not say. Uses the public API alone; run
 * from the top of the project, with the command built before:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/DoubtTables.java</pre>
 */
public final class DoubtTables {
    private DoubtTables() {}

    /** Prints it. */
    public static void main(String... ignored) {
        classes().forEach(System.out::println);
    }

    /** The class table, line by line. */
    public static List<String> classes() {
        List<String> lines = new ArrayList<>();
        lines.add("| unknown | off by | what moves | how to know it better |");
        lines.add("|---|---|---|---|");
        for (DoubtClass kind : DoubtClass.values()) {
            lines.add("| " + kind.title().replace("%s", "…") + " | " + size(kind) + " | " + moved(kind) + " | "
                    + kind.measure() + " |");
        }
        return lines;
    }

    private static String size(DoubtClass kind) {
        String size = BigDecimal.valueOf(kind.size()).stripTrailingZeros().toPlainString() + " " + kind.unit();
        return kind.isLimit() ? "at most " + size : size;
    }

    private static String moved(DoubtClass kind) {
        return kind.quantities().stream()
                .map(Quantity::path)
                .map(path -> "`" + path + "`")
                .collect(Collectors.joining(", "));
    }
}
