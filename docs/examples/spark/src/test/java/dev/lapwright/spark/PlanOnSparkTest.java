package dev.lapwright.spark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.spark.TaskContext;
import org.apache.spark.api.java.function.FilterFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

/** Laps of a plan by Spark within one process are those of one machine, byte for byte. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PlanOnSparkTest {
    private Path folder;

    private SparkSession spark;
    private SmallPlan plan;
    private String table;

    @BeforeAll
    void start(@TempDir Path shared) throws IOException {
        folder = shared;
        plan = new SmallPlan(folder);
        table = plan.table(folder.resolve("table.csv"));
        // Two threads; a task may fail three times.
        spark = SparkSession.builder()
                .master("local[2,4]")
                .config("spark.ui.enabled", "false")
                .config("spark.sql.shuffle.partitions", "4")
                .getOrCreate();
    }

    @AfterAll
    void stop() {
        spark.stop();
    }

    @Test
    void anyNumberOfTasksGivesTheTableOfOneMachine() throws IOException {
        assertThat(table.lines().filter(row -> row.contains(",,,,,,")))
                .as("laps that there are not")
                .isNotEmpty();
        for (int tasks : new int[] {1, 3, 16}) {
            assertThat(kept(PlanOnSpark.laps(spark, plan.shipped, tasks), "tasks" + tasks))
                    .isEqualTo(table);
        }
    }

    /** Each of several tasks fails on its first attempt, with half of its rows written. */
    @Test
    void tasksThatFailLoseNothingAndDoubleNothing() throws IOException {
        FilterFunction<Row> failing = row -> {
            if (row.getLong(0) % 60 == 30 && TaskContext.get().attemptNumber() == 0) {
                throw new IllegalStateException("on purpose");
            }
            return true;
        };
        assertThat(kept(PlanOnSpark.laps(spark, plan.shipped, 6).filter(failing), "failing"))
                .isEqualTo(table);
    }

    /** Through Parquet, which holds every digit, into the table, which holds what is beyond the model. */
    private String kept(Dataset<Row> laps, String name) throws IOException {
        String parquet = folder.resolve(name).toString();
        laps.write().parquet(parquet);
        Path csv = folder.resolve(name + ".csv");
        PlanOnSpark.writeCsv(spark.read().parquet(parquet), csv);
        return Files.readString(csv);
    }

    /** Names of columns hold dots, as those of quantities do. */
    @Test
    void parquetHasTheColumnsOfTheTable() {
        String parquet = folder.resolve("columns").toString();
        PlanOnSpark.laps(spark, plan.shipped, 2).write().parquet(parquet);
        assertThat(spark.read().parquet(parquet).columns())
                .containsExactly(plan.shipped.head().toArray(String[]::new));
        List<Row> first = spark.read().parquet(parquet).sort("lap").takeAsList(1);
        assertThat(first.get(0).getLong(0)).isZero();
    }
}
