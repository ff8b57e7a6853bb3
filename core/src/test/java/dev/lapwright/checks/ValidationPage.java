package dev.lapwright.checks;

import java.io.IOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The generated part of {@code docs/validation.md}: a summary by subject, then every file of checks as a table. */
final class ValidationPage {
    /** A file of checks on the page, and the names of the classes that verify its rows. */
    record Section(String subject, String file, String title, List<String> tests) {}

    /** A row and what was computed for it, to a hundredth of its tolerance. */
    private record Result(CheckRow row, BigDecimal computed) {
        static Result of(CheckRow row) {
            double value = ValidationLog.computed(row)
                    .orElseThrow(() -> new IllegalStateException(
                            row.file() + " line " + row.line() + " is verified by no test of contents.csv"));
            // Beyond a hundredth of the tolerance digits would only tell one processor from another.
            int scale = (int) Math.ceil(2 - Math.log10(row.tolerance()));
            BigDecimal rounded = new BigDecimal(value).setScale(Math.max(0, scale), RoundingMode.HALF_EVEN);
            return new Result(row, rounded);
        }

        double error() {
            return computed.subtract(new BigDecimal(row.text("expected"))).doubleValue();
        }

        double shareOfTolerance() {
            return Math.abs(error()) / row.tolerance();
        }

        /** Not a number where the expected value is 0. */
        double relativeError() {
            return row.expected() == 0 ? Double.NaN : Math.abs(error() / row.expected());
        }
    }

    private final Map<Section, List<Result>> results = new LinkedHashMap<>();

    /** Needs all checks to have run. */
    ValidationPage() throws IOException {
        for (Section section : sections()) {
            results.put(
                    section,
                    CheckRows.read(section.file()).stream().map(Result::of).toList());
        }
    }

    /** In the order of the page. */
    static List<Section> sections() throws IOException {
        return CheckRows.table("contents.csv").values().stream()
                .map(row -> new Section(
                        row.get("subject"),
                        row.get("file"),
                        row.get("title"),
                        Stream.of(row.get("tests").split(" "))
                                .map("dev.lapwright."::concat)
                                .toList()))
                .toList();
    }

    /** The text, its lines ended by newlines. */
    String text() throws IOException {
        StringBuilder text = new StringBuilder();
        summary(text);
        String subject = "";
        for (Section section : results.keySet()) {
            if (!section.subject().equals(subject)) {
                subject = section.subject();
                text.append("\n## ").append(subject).append('\n');
            }
            section(text, section);
        }
        return text.toString();
    }

    private void summary(StringBuilder text) {
        text.append(
                "| subject | checks | published | from memory | derived | worst error | in | of a tolerance, most |\n");
        text.append("|---|---|---|---|---|---|---|---|\n");
        Map<String, List<Result>> bySubject = new LinkedHashMap<>();
        Map<String, String> titles = new LinkedHashMap<>();
        results.forEach((section, rows) -> {
            titles.put(section.file(), section.title());
            bySubject
                    .computeIfAbsent(section.subject(), subject -> new ArrayList<>())
                    .addAll(rows);
        });
        bySubject.forEach((subject, rows) -> summaryLine(
                text, "[" + subject + "](#" + subject.toLowerCase(Locale.ROOT).replace(' ', '-') + ")", rows, titles));
        summaryLine(
                text, "all", bySubject.values().stream().flatMap(List::stream).toList(), titles);
    }

    private static void summaryLine(StringBuilder text, String subject, List<Result> rows, Map<String, String> titles) {
        Result worst = rows.stream()
                .filter(result -> Double.isFinite(result.relativeError()))
                .max(Comparator.comparingDouble(Result::relativeError))
                .orElseThrow();
        double share = rows.stream().mapToDouble(Result::shareOfTolerance).max().orElse(0);
        text.append(String.format(
                Locale.ROOT,
                "| %s | %d | %d | %d | %d | %s %% | %s | %.0f %% |%n",
                subject,
                rows.size(),
                count(rows, "published"),
                count(rows, "from memory"),
                count(rows, "derived"),
                figures(100 * worst.relativeError()),
                titles.get(worst.row().file()),
                100 * share));
    }

    private static long count(List<Result> rows, String provenance) {
        return rows.stream()
                .filter(result -> result.row().text("provenance").equals(provenance))
                .count();
    }

    private void section(StringBuilder text, Section section) throws IOException {
        text.append("\n### ").append(section.title()).append("\n\n");
        String remarks = CheckRows.remarks(section.file());
        if (!remarks.isEmpty()) {
            text.append(remarks).append("\n\n");
        }
        Notes sources = new Notes("abcdefghijklmnopqrstuvwxyz"
                .chars()
                .mapToObj(Character::toString)
                .toList());
        Notes reasons =
                new Notes(IntStream.range(1, 30).mapToObj(Integer::toString).toList());
        text.append("| what | with | expected | computed | error | tolerance | source |\n");
        text.append("|---|---|---|---|---|---|---|\n");
        for (Result result : results.get(section)) {
            CheckRow row = result.row();
            text.append("| ").append(row.quantity());
            text.append(" | ").append(row.inputs());
            text.append(" | ").append(row.text("expected")).append(unit(row));
            text.append(" | ").append(plain(result.computed()));
            text.append(" | ").append(result.error() == 0 ? "0" : signed(result.error()));
            text.append(" | ").append(figures(row.tolerance()));
            text.append(" | ").append(sources.mark(source(row)));
            text.append(reasons.mark(row.text("tolerance_reason"))).append(" |\n");
        }
        text.append('\n');
        sources.list(text, "");
        reasons.list(text, "tolerance: ");
        text.append("\nFile `").append(section.file()).append("`, asserted by `");
        text.append(String.join("`, `", section.tests()).replace("dev.lapwright.", ""))
                .append("`.\n");
    }

    private static String unit(CheckRow row) {
        return row.has("unit") ? " " + row.text("unit") : "";
    }

    private static String source(CheckRow row) {
        String seen = row.has("seen") ? "; seen: " + row.text("seen") : "";
        return row.text("provenance") + ": " + row.text("source") + seen;
    }

    /** Without an exponent unless the number is small. */
    private static String plain(BigDecimal value) {
        return value.signum() == 0 ? "0" : value.abs().doubleValue() < 1e-3 ? value.toString() : value.toPlainString();
    }

    private static String signed(double value) {
        return (value > 0 ? "+" : "-") + figures(Math.abs(value));
    }

    /** Two significant figures. */
    private static String figures(double value) {
        BigDecimal rounded = new BigDecimal(value).round(new MathContext(2, RoundingMode.HALF_EVEN));
        BigDecimal stripped = rounded.stripTrailingZeros();
        return Math.abs(value) < 1e-4 && value != 0
                ? stripped.toString().toLowerCase(Locale.ROOT)
                : stripped.toPlainString();
    }

    /** Remarks below a table, each said once and referred to by its mark. */
    private static final class Notes {
        private final List<String> marks;
        private final Map<String, String> byText = new LinkedHashMap<>();

        Notes(List<String> marks) {
            this.marks = marks;
        }

        String mark(String text) {
            return byText.computeIfAbsent(text, t -> marks.get(byText.size()));
        }

        void list(StringBuilder page, String before) {
            byText.forEach((text, mark) -> page.append("- ")
                    .append(mark)
                    .append(": ")
                    .append(before)
                    .append(text)
                    .append('\n'));
        }
    }
}
