package dev.lapwright.results.plan;

import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.CsvText;
import dev.lapwright.results.InputHash;
import dev.lapwright.results.LapTrace;
import dev.lapwright.study.plan.LapPlan;
import dev.lapwright.study.sweep.SweepAxis;
import java.io.BufferedWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.io.StringReader;
import java.nio.channels.Channels;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * Table that the laps of a plan are written to as they are driven, in the order of their numbers, a row each. So it is its own journal: a table that was
 * broken off is gone on with where it ends, a last row that was not finished is cut off. One process writes it at a time.
 *
 * <p>The last column of a row is the SHA-256 of all its case depends on but the settings that stand in the row: car, circuit, line and day.
 */
public final class PlanTable implements AutoCloseable {
    /** Rows that a crash may lose. */
    private static final int UNSAVED = 256;

    private static final String LAP = "lap";

    private final LapPlan plan;
    private final List<String> inputs;
    private final Path file;
    private final RandomAccessFile opened;
    private final BufferedWriter out;
    private final CsvText csv;
    private final PlanSummary summary;
    private long next;
    private int unsaved;

    private PlanTable(LapPlan plan, Path file, RandomAccessFile opened, long from) {
        this.plan = plan;
        this.file = file;
        this.opened = opened;
        inputs = plan.cases().stream()
                .map(one -> InputHash.of(
                        one.car(),
                        one.day(),
                        one.stations().track(),
                        one.stations().count()))
                .toList();
        out = new BufferedWriter(Channels.newWriter(opened.getChannel(), StandardCharsets.UTF_8));
        csv = new CsvText(out);
        summary = new PlanSummary(plan);
        next = from;
    }

    /**
     * The table in a file.
     *
     * @param from number of the first lap that it is to hold
     * @param goesOn whether what stands there is gone on with; else the file must not be there, or be empty
     * @throws LapwrightException if it cannot be read or written, is another plan's, or is being written
     */
    @SuppressWarnings("resource") // Closed with the table.
    public static PlanTable open(LapPlan plan, Path file, long from, boolean goesOn) {
        RandomAccessFile opened = null;
        try {
            if (Files.exists(file) && !Files.isRegularFile(file)) {
                throw fault(file, "this is no file", "name a file");
            }
            opened = new RandomAccessFile(file.toFile(), "rw");
            if (lock(opened) == null) {
                throw fault(file, "another process is writing this table", "wait for it, or name another file");
            }
            PlanTable table = new PlanTable(plan, file, opened, from);
            if (opened.length() == 0) {
                table.csv.row(table.head());
                table.out.flush();
            } else if (goesOn) {
                table.goOn();
            } else {
                throw fault(file, "this file is there already", "go on with it by --resume, or name another");
            }
            return table;
        } catch (IOException e) {
            close(opened);
            throw fault(file, "this table cannot be opened: " + e.getMessage(), "check the folder and its rights");
        } catch (LapwrightException e) {
            close(opened);
            throw e;
        }
    }

    private static FileLock lock(RandomAccessFile opened) throws IOException {
        try {
            return opened.getChannel().tryLock();
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private static void close(RandomAccessFile opened) {
        try {
            if (opened != null) {
                opened.close();
            }
        } catch (IOException e) {
            // Whatever was to be said of it has been.
        }
    }

    private static LapwrightException fault(Path file, String problem, String remedy) {
        return new DocumentException(file.toString(), problem, remedy);
    }

    private List<String> head() {
        List<String> head = new ArrayList<>(List.of(LAP, "case"));
        plan.design().axes().stream().map(SweepAxis::name).forEach(head::add);
        head.addAll(List.of(
                "lapTimeS",
                "topSpeedKmh",
                "minimumSpeedKmh",
                "minimumCornerSpeedKmh",
                "meanCornerSpeedKmh",
                "meanSpeedKmh",
                "fault",
                "inputs"));
        return head;
    }

    /** Reads what stands there, makes sure that it is this plan's, and stands behind the last whole row. */
    private void goOn() throws IOException {
        long end = 0;
        boolean isHead = true;
        byte[] buffer = new byte[1 << 16];
        ByteArrayOutputStream line = new ByteArrayOutputStream();
        opened.seek(0);
        for (int read = opened.read(buffer); read > 0; read = opened.read(buffer)) {
            int begin = 0;
            for (int i = 0; i < read; i++) {
                if (buffer[i] == '\n') {
                    line.write(buffer, begin, i + 1 - begin);
                    end += line.size();
                    row(line.toString(StandardCharsets.UTF_8), isHead);
                    isHead = false;
                    line.reset();
                    begin = i + 1;
                }
            }
            line.write(buffer, begin, read - begin);
        }
        opened.setLength(end);
        opened.seek(end);
        if (isHead) {
            csv.row(head());
            out.flush();
        }
    }

    private void row(String line, boolean isHead) throws IOException {
        CSVRecord cells =
                CSVFormat.RFC4180.parse(new StringReader(line)).getRecords().get(0);
        if (isHead) {
            if (!cells.toList().equals(head())) {
                throw fault(file, "these columns are not those of this plan", "name another file");
            }
            return;
        }
        int count = head().size();
        boolean isNext = cells.size() == count && cells.get(0).equals(Long.toString(next)) && next < plan.laps();
        if (!isNext) {
            throw fault(
                    file,
                    "lap " + next + " of the plan is not where it belongs",
                    "name another file; this one holds another part of the plan, or was changed");
        }
        int at = plan.caseOf(next);
        if (!cells.get(count - 1).equals(inputs.get(at))) {
            throw fault(
                    file,
                    "lap " + next + " was driven by another car, on another circuit, line or day",
                    "name another file, or ask for the same plan again");
        }
        String time = cells.get(count - 8);
        summary.add(
                at,
                plan.design().values(next % plan.design().count()),
                time.isEmpty() ? Double.NaN : Double.parseDouble(time));
        next++;
    }

    /** Number of the next lap that is missing. */
    public long next() {
        return next;
    }

    /** What all rows say. */
    public PlanSummary summary() {
        return summary;
    }

    /** Adds the next lap. */
    public void write(LapPlan.PlannedLap lap) {
        int at = plan.caseOf(lap.number());
        List<String> cells = new ArrayList<>(
                List.of(Long.toString(lap.number()), lap.driven().name()));
        for (double value : lap.values()) {
            cells.add(CsvText.number(value));
        }
        if (lap.figures().isPresent()) {
            LapFigures figures = lap.figures().get();
            cells.add(CsvText.number(figures.lapTime()));
            for (double speed : new double[] {
                figures.topSpeed(),
                figures.minimumSpeed(),
                figures.minimumCornerSpeed(),
                figures.meanCornerSpeed(),
                figures.meanSpeed()
            }) {
                cells.add(CsvText.number(LapTrace.kmh(speed)));
            }
        } else {
            cells.addAll(List.of("", "", "", "", "", ""));
        }
        cells.add(lap.fault().replaceAll("[\\r\\n]", " "));
        cells.add(inputs.get(at));
        csv.row(cells);
        summary.add(at, lap.values(), lap.figures().map(LapFigures::lapTime).orElse(Double.NaN));
        next++;
        if (++unsaved >= UNSAVED) {
            save();
        }
    }

    private void save() {
        try {
            out.flush();
            unsaved = 0;
        } catch (IOException e) {
            throw fault(
                    file,
                    "a lap cannot be kept: " + e.getMessage(),
                    "make room; what stands in the file is whole, and --resume goes on from it");
        }
    }

    @Override
    public void close() {
        try {
            save();
        } finally {
            close(opened);
        }
    }
}
