package dev.lapwright.logs;

import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.PlainText;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.TextPlace;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Reader of one lap log. */
final class LapLogReader {
    /** What all laps are taken for where the log names no setup. */
    static final String ONE_SETUP = "the only setup";

    private static final String REMEDY = "begin the file with a line such as lap,time,setup,flag";
    /** How far down the headings may stand. */
    private static final int PREAMBLE = 40;

    /** A middle lap time is between these, s; else the unit is another. */
    private static final double SHORTEST = 5;

    private static final double LONGEST = 1200;
    /** No lap lasts a day, s. */
    private static final double DAY = 86_400;

    private static final Set<String> NO_FLAG = Set.of("", "-", "0", "ok", "clean", "flying", "timed", "valid", "green");
    private static final Set<String> OUT = Set.of("out", "outlap", "o", "pitout");
    private static final Set<String> IN = Set.of("in", "inlap", "i", "pit", "pitin", "box");
    private static final Set<String> SPOILT = Set.of(
            "1",
            "x",
            "spoilt",
            "spoiled",
            "traffic",
            "yellow",
            "red",
            "invalid",
            "deleted",
            "off",
            "spin",
            "mistake",
            "slow",
            "cool",
            "cooldown",
            "safetycar",
            "fcy",
            "rain",
            "wet",
            "drop",
            "exclude",
            "bad");

    private final DocumentSource source;
    private final FaultList faults;

    LapLogReader(DocumentSource source) {
        this.source = source;
        faults = new FaultList(source.name());
    }

    LapLogFile file() {
        List<CsvTable.Row> rows = rows();
        int at = headerAt(rows);
        LapLogHeader header = new LapLogHeader(rows.get(at), faults);
        faults.throwIfAny();
        if (!header.has(LapLogHeader.Column.TIME)) {
            faults.form(
                    rows.get(at).line(),
                    "",
                    "no heading is known for the lap times; the first line is "
                            + Excerpt.of(String.join(", ", rows.get(at).values().toList())),
                    REMEDY);
            faults.throwIfAny();
        }
        List<CsvTable.Row> values = rows.subList(at + 1, rows.size());
        if (values.isEmpty()) {
            throw new DocumentException(source.name(), "there are headings and no laps", "log some laps");
        }
        List<TimingLog.Lap> laps = laps(header, values);
        faults.throwIfAny();
        checkTimes(laps);
        boolean clock =
                values.stream().anyMatch(row -> LapTimeText.isClock(header.text(LapLogHeader.Column.TIME, row)));
        boolean blank = values.stream()
                .anyMatch(row -> header.text(LapLogHeader.Column.SETUP, row).isEmpty());
        return new LapLogFile(source.name(), log(laps, values), header.said(clock, blank));
    }

    private List<CsvTable.Row> rows() {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter())
                .setTrim(true)
                .setIgnoreEmptyLines(true)
                // 1'44"851 is a lap time.
                .setQuote(source.text().matches("(?s).*\\d\"\\d.*") ? null : '"')
                .get();
        try (CSVParser parser = CSVParser.parse(source.text(), format)) {
            List<CsvTable.Row> rows = new ArrayList<>();
            for (CSVRecord row : parser) {
                if (row.stream().anyMatch(cell -> !cell.isBlank())) {
                    rows.add(new CsvTable.Row(row, new TextPlace((int) parser.getCurrentLineNumber(), 0)));
                }
            }
            if (rows.isEmpty()) {
                throw new DocumentException(source.name(), "it is empty", REMEDY);
            }
            return rows;
        } catch (IOException | UncheckedIOException e) {
            throw new DocumentException(
                    source.name(), "it cannot be read as comma-separated values", "check its quotation marks");
        }
    }

    /** A semicolon or tab on most of the first lines. */
    private char delimiter() {
        List<String> lines =
                source.text().lines().limit(PREAMBLE).filter(l -> !l.isBlank()).toList();
        for (char delimiter : new char[] {';', '\t'}) {
            if (lines.stream().filter(l -> l.indexOf(delimiter) >= 0).count() * 2 > lines.size()) {
                return delimiter;
            }
        }
        return ',';
    }

    /** The first row that names lap times and something else, or else the first that names them, or the very first. */
    private int headerAt(List<CsvTable.Row> rows) {
        int found = 0;
        for (int i = Math.min(PREAMBLE, rows.size()) - 1; i >= 0; i--) {
            LapLogHeader header = new LapLogHeader(rows.get(i), new FaultList(source.name()));
            found = header.has(LapLogHeader.Column.TIME) ? i : found;
        }
        return found;
    }

    private List<TimingLog.Lap> laps(LapLogHeader header, List<CsvTable.Row> rows) {
        List<TimingLog.Lap> laps = new ArrayList<>();
        String setup = header.has(LapLogHeader.Column.SETUP) ? "" : ONE_SETUP;
        int counted = 0;
        for (CsvTable.Row row : rows) {
            if (row.values().size() > header.width()) {
                faults.form(
                        row.line(),
                        "",
                        "it has " + row.values().size() + " cells under " + header.width()
                                + " headings, which looks like decimal commas between commas",
                        "write decimal points, or part the cells with semicolons");
                continue;
            }
            String named = name(LapLogHeader.Column.SETUP, header, row);
            setup = named.isEmpty() ? setup : named;
            if (setup.isEmpty()) {
                faults.form(row.line(), "setup", "the first lap names none", "name the setup");
                return laps;
            }
            counted++;
            int number = header.has(LapLogHeader.Column.LAP) ? number(header, row) : counted;
            double time = time(header, row);
            TimingLog.Flag flag = flag(header, row);
            if (time > 0 && number >= 0) {
                laps.add(new TimingLog.Lap(number, time, setup, name(LapLogHeader.Column.RUN, header, row), flag));
            }
        }
        return laps;
    }

    private String name(LapLogHeader.Column column, LapLogHeader header, CsvTable.Row row) {
        String name = header.text(column, row);
        PlainText.problem(name).ifPresent(problem -> faults.form(row.line(), column.title(), problem, "leave it out"));
        return name;
    }

    private int number(LapLogHeader header, CsvTable.Row row) {
        String text = header.text(LapLogHeader.Column.LAP, row);
        if (text.matches("\\d{1,6}([.,]0*)?")) {
            return Integer.parseInt(text.replaceAll("[.,].*$", ""));
        }
        faults.form(
                row.line(),
                "lap",
                text.isEmpty() ? "there is no number" : "'" + Excerpt.of(text) + "' is no number of a lap",
                "give a whole number");
        return -1;
    }

    private double time(LapLogHeader header, CsvTable.Row row) {
        String text = header.text(LapLogHeader.Column.TIME, row);
        double seconds = LapTimeText.seconds(text, header.unit());
        if (!(seconds > 0)) {
            faults.form(
                    row.line(),
                    "time",
                    text.isEmpty() ? "there is no lap time" : "'" + Excerpt.of(text) + "' is no lap time",
                    "write it like 1:44.851 or 104.851, or take the line out");
        }
        return seconds;
    }

    private TimingLog.Flag flag(LapLogHeader header, CsvTable.Row row) {
        String text = header.text(LapLogHeader.Column.FLAG, row);
        String plain = text.toLowerCase(Locale.ROOT).replaceAll("[ _.]", "").replaceAll("(?<=.)-", "");
        if (NO_FLAG.contains(plain)) {
            return TimingLog.Flag.NONE;
        }
        if (OUT.contains(plain)) {
            return TimingLog.Flag.OUT;
        }
        if (IN.contains(plain)) {
            return TimingLog.Flag.IN;
        }
        if (!SPOILT.contains(plain)) {
            faults.form(
                    row.line(),
                    "flag",
                    "'" + Excerpt.of(text) + "' is not known",
                    "write out, in, or spoilt (also traffic, yellow, off, invalid); leave it empty for a flying lap");
        }
        return TimingLog.Flag.SPOILT;
    }

    /** Times that can be no lap times tell a unit taken for another, or another kind of time. */
    private void checkTimes(List<TimingLog.Lap> laps) {
        double[] sorted =
                laps.stream().mapToDouble(TimingLog.Lap::time).sorted().toArray();
        double middle = sorted[sorted.length / 2];
        String looks = middle > LONGEST ? "milliseconds" : middle < SHORTEST ? "minutes, or seconds called ms" : "";
        if (!looks.isEmpty()) {
            throw new DocumentException(
                    source.name(),
                    "its lap times are about " + Check.text(middle) + " s, which looks like " + looks,
                    "put their unit in the heading: time (s), time (ms) or time (min)");
        }
        boolean rising = laps.size() > 3;
        for (int i = 1; i < laps.size(); i++) {
            rising &= laps.get(i).time() > laps.get(i - 1).time();
        }
        if (rising && sorted[sorted.length - 1] > 3 * sorted[0]) {
            throw new DocumentException(
                    source.name(),
                    "its times only rise, from " + Check.text(sorted[0]) + " to "
                            + Check.text(sorted[sorted.length - 1]) + " s, which looks like a clock that runs on",
                    "give the time of each lap by itself");
        }
    }

    private TimingLog log(List<TimingLog.Lap> laps, List<CsvTable.Row> rows) {
        // Laps are as many as rows: there was no fault.
        for (int i = 0; i < laps.size(); i++) {
            if (!(laps.get(i).time() < DAY)) {
                faults.form(
                        rows.get(i).line(),
                        "time",
                        Check.text(laps.get(i).time()) + " s is no lap time",
                        "correct it or take the line out");
            }
        }
        faults.throwIfAny();
        for (int i = 1; i < laps.size(); i++) {
            TimingLog.Lap lap = laps.get(i);
            TimingLog.Lap before = laps.get(i - 1);
            if (lap.number() <= before.number() && lap.run().equals(before.run())) {
                faults.meaning(
                        rows.get(i).line(),
                        "lap",
                        "lap " + lap.number() + " follows lap " + before.number()
                                + (lap.number() == before.number() ? "" : ": this looks like two logs in one file"),
                        lap.number() == before.number()
                                ? "take one of them out"
                                : "give each a file of its own, or name the runs in a column run");
                faults.throwIfAny();
            }
        }
        try {
            return TimingLog.of(laps);
        } catch (InvalidValueException e) {
            throw new DocumentException(source.name(), e.place() + ": " + e.problem(), e.remedy());
        }
    }
}
