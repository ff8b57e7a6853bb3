package dev.lapwright.results.plan;

import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.GrowingFile;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.report.CsvText;
import dev.lapwright.study.plan.LapPlan;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;

/**
 * Table that the laps of a plan are written to as they are driven, in the order of their numbers, a row each. So it is its own journal: a table that was
 * broken off is gone on with where it ends, a last row that was not finished is cut off. One process writes it at a time.
 */
public final class PlanTable implements AutoCloseable {
    /** Columns behind the settings: figures, fault and hash. */
    private static final int AFTER_SETTINGS = PlanRows.FIGURES.size() + 2;

    private final LapPlan plan;
    private final PlanRows rows;
    private final Path file;
    private final GrowingFile opened;
    private final BufferedWriter out;
    private final CsvText csv;
    private final PlanSummary summary;
    private long next;

    private PlanTable(LapPlan plan, Path file, GrowingFile opened, long from, String program) {
        this.plan = plan;
        this.file = file;
        this.opened = opened;
        rows = new PlanRows(plan, program);
        out = new BufferedWriter(new OutputStreamWriter(opened.out(), StandardCharsets.UTF_8));
        csv = new CsvText(out);
        summary = new PlanSummary(plan);
        next = from;
    }

    /**
     * The table in a file.
     *
     * @param from number of the first lap that it is to hold
     * @param program which one computes; another one's laps are not gone on from
     * @param goesOn whether what stands there is gone on with; else the file must not be there, or be empty
     * @throws LapwrightException if it cannot be read or written, is another plan's, or is being written
     */
    @SuppressWarnings("resource") // Closed with the table.
    public static PlanTable open(LapPlan plan, Path file, long from, boolean goesOn, String program) {
        GrowingFile opened = GrowingFile.open(file, "table");
        try {
            PlanTable table = new PlanTable(plan, file, opened, from, program);
            if (!opened.isEmpty() && !goesOn) {
                throw fault(file, "this file is there already", "go on with it by --resume, or name another");
            }
            table.goOn();
            return table;
        } catch (IOException e) {
            opened.close();
            throw fault(file, "this table cannot be read: " + e.getMessage(), "check the folder and its rights");
        } catch (LapwrightException e) {
            opened.close();
            throw e;
        }
    }

    private static LapwrightException fault(Path file, String problem, String remedy) {
        return new DocumentException(file.toString(), problem, remedy);
    }

    /** Reads what stands there, makes sure that it is this plan's, and stands behind the last whole row. */
    private void goOn() throws IOException {
        boolean[] begun = {false};
        String unfinished = opened.lines((line, number) -> {
            begun[0] = true;
            row(line, number == 1);
        });
        CsvText head = new CsvText();
        head.row(rows.head());
        if (!begun[0] && !head.text().startsWith(unfinished)) {
            throw fault(file, "this is no table of this plan", "name another file");
        }
        opened.cut();
        if (!begun[0]) {
            csv.row(rows.head());
            out.flush();
        }
    }

    private void row(String line, boolean isHead) {
        List<String> cells = cells(line);
        if (isHead) {
            if (!cells.equals(rows.head())) {
                throw fault(file, "these columns are not those of this plan", "name another file");
            }
            return;
        }
        int count = rows.head().size();
        boolean isNext = cells.size() == count && cells.get(0).equals(Long.toString(next)) && next < plan.laps();
        if (!isNext) {
            throw fault(
                    file,
                    "lap " + next + " of the plan is not where it belongs",
                    "name another file; this one holds another part of the plan, or was changed");
        }
        int at = plan.caseOf(next);
        if (!cells.get(count - 1).equals(rows.inputs(next))) {
            throw fault(
                    file,
                    "lap " + next
                            + " was driven by another car, on another circuit, line or day, or by another build of Lapwright or Java",
                    "name another file, or ask for the same plan again");
        }
        String time = cells.get(count - AFTER_SETTINGS);
        summary.add(at, plan.design().values(next % plan.design().count()), time.isEmpty() ? Double.NaN : number(time));
        next++;
    }

    private double number(String text) {
        return DecimalText.number(text)
                .orElseThrow(() -> fault(
                        file, "the time of lap " + next + " is no number", "name another file; this one was changed"));
    }

    private List<String> cells(String line) {
        try {
            List<CSVRecord> records =
                    CSVFormat.RFC4180.parse(new StringReader(line)).getRecords();
            return records.isEmpty() ? List.of() : records.get(0).toList();
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            throw fault(
                    file,
                    "the row of lap " + next + " is no row of a table",
                    "name another file; this one was changed");
        }
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
        try {
            csv.row(PlanRows.cells(rows.row(lap)));
        } catch (UncheckedIOException e) {
            throw unkept(e.getCause());
        }
        summary.add(
                plan.caseOf(lap.number()),
                lap.values(),
                lap.figures().map(LapFigures::lapTime).orElse(Double.NaN));
        next++;
        save();
    }

    private void save() {
        try {
            out.flush();
        } catch (IOException e) {
            throw unkept(e);
        }
    }

    private LapwrightException unkept(IOException why) {
        return fault(
                file,
                "a lap cannot be kept: " + why.getMessage(),
                "make room; what stands in the file is whole, and --resume goes on from it");
    }

    @Override
    public void close() {
        try {
            save();
        } finally {
            opened.close();
        }
    }
}
