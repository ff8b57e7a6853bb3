package dev.lapwright.spark;

import dev.lapwright.cli.output.VersionText;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.report.CsvText;
import dev.lapwright.results.plan.PlanRows;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import org.apache.spark.api.java.function.MapPartitionsFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.DataTypes;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/**
 * Laps of a plan driven on a Spark cluster. A lap depends on its number alone, so that a part of the numbers is all that a task needs, and a task that
 * failed or whose machine is gone is done again elsewhere.
 */
public final class PlanOnSpark {
    /** Bits of a task's laps that are enough for its start to be no matter, and few enough for its loss to be none. */
    private static final int LAPS_A_TASK = 20_000;

    private static final int TEXTS_AT_END = 2;

    private PlanOnSpark() {}

    /** Drives a plan: its file, the folder for the laps as Parquet, and, if wanted, a file for them as CSV. */
    public static void main(String[] args) throws IOException {
        if (args.length < 2 || args.length > 3) {
            System.err.println(
                    "Give the plan's file, a folder for the laps as Parquet, and a file for them as CSV if wanted:"
                            + " spark-submit ... plan.json laps [laps.csv]");
            System.exit(2);
        }
        try (SparkSession spark =
                SparkSession.builder().appName("Laps of " + args[0]).getOrCreate()) {
            ShippedPlan plan =
                    ShippedPlan.of(Path.of(args[0]), VersionText.build().orElse(""));
            long laps = plan.unpacked().laps();
            int tasks =
                    (int) Math.min(1 << 20, Math.max(spark.sparkContext().defaultParallelism(), laps / LAPS_A_TASK));
            laps(spark, plan, tasks).write().parquet(args[1]);
            if (args.length > 2) {
                writeCsv(spark.read().parquet(args[1]), Path.of(args[2]));
            }
        } catch (LapwrightException e) {
            System.err.println(e.getMessage());
            System.exit(2);
        }
    }

    /** The laps of a plan, in so many tasks. */
    public static Dataset<Row> laps(SparkSession spark, ShippedPlan plan, int tasks) {
        MapPartitionsFunction<Long, Row> drive = numbers -> {
            Iterator<List<Object>> rows = plan.rows(numbers);
            return new Iterator<>() {
                @Override
                public boolean hasNext() {
                    return rows.hasNext();
                }

                @Override
                public Row next() {
                    return RowFactory.create(rows.next().toArray());
                }
            };
        };
        return spark.range(0, plan.unpacked().laps(), 1, tasks).mapPartitions(drive, Encoders.row(schema(plan.head())));
    }

    /** Number, case, numbers, fault and hash. */
    private static StructType schema(List<String> head) {
        List<StructField> fields = new ArrayList<>();
        for (int i = 0; i < head.size(); i++) {
            boolean text = i == 1 || i >= head.size() - TEXTS_AT_END;
            fields.add(DataTypes.createStructField(
                    head.get(i),
                    i == 0 ? DataTypes.LongType : text ? DataTypes.StringType : DataTypes.DoubleType,
                    true));
        }
        return DataTypes.createStructType(fields);
    }

    /** Writes laps as the table that {@code lapwright plan} writes, byte for byte: in the order of their numbers, one task's at a time in memory. */
    public static void writeCsv(Dataset<Row> laps, Path file) throws IOException {
        try (BufferedWriter out = Files.newBufferedWriter(file)) {
            CsvText csv = new CsvText(out);
            csv.row(List.of(laps.columns()));
            Iterator<Row> rows = laps.sort(PlanRows.LAP).toLocalIterator();
            while (rows.hasNext()) {
                Row row = rows.next();
                List<Object> cells = new ArrayList<>();
                for (int i = 0; i < row.size(); i++) {
                    cells.add(row.get(i));
                }
                csv.row(PlanRows.cells(cells));
            }
        }
    }
}
