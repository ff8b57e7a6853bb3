package dev.lapwright.spark;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BooleanSupplier;
import org.apache.spark.api.java.function.FilterFunction;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A master and two workers as processes of this machine, of which one worker and its executor are killed in the midst of the work. */
class ClusterTest {
    private static final String HOST = InetAddress.getLoopbackAddress().getHostAddress();
    /** A generous bound, so that a broken cluster fails the test and does not hang it. */
    private static final Duration PATIENCE = Duration.ofMinutes(4);

    @TempDir
    Path folder;

    private final List<Process> processes = new ArrayList<>();

    @AfterEach
    void stop() {
        processes.forEach(ClusterTest::kill);
    }

    @Test
    @Timeout(value = 10, unit = TimeUnit.MINUTES)
    void aKilledWorkerLosesNothingAndDoublesNothing() throws Exception {
        SmallPlan plan = new SmallPlan(folder);
        String table = plan.table(folder.resolve("table.csv"));
        int port = freePort();
        String master = "spark://" + HOST + ":" + port;
        start("org.apache.spark.deploy.master.Master", "--host", HOST, "--port", "" + port, "--webui-port", "0");
        Process worker = worker(master, "one");
        worker(master, "two");
        Path parquet = folder.resolve("laps");
        try (SparkSession spark = SparkSession.builder()
                .master(master)
                .config("spark.ui.enabled", "false")
                .config("spark.driver.host", HOST)
                .config("spark.driver.bindAddress", HOST)
                .config("spark.executor.memory", "512m")
                .config("spark.sql.shuffle.partitions", "4")
                .config("spark.executor.extraClassPath", ours())
                .getOrCreate()) {
            await("two executors", () -> spark.sparkContext().statusTracker().getExecutorInfos().length == 3);
            // Some seconds of work on the fastest machine.
            FilterFunction<Row> slow = row -> {
                Thread.sleep(30);
                return true;
            };
            CompletableFuture<Void> work = CompletableFuture.runAsync(() -> PlanOnSpark.laps(spark, plan.shipped, 60)
                    .filter(slow)
                    .write()
                    .parquet(parquet.toString()));
            await("the first laps", () -> work.isDone() || finishedTasks(spark) > 4);
            assertThat(work).as("killed in the midst of the work").isNotDone();
            kill(worker);
            work.get(PATIENCE.toSeconds(), TimeUnit.SECONDS);
            Path csv = folder.resolve("laps.csv");
            PlanOnSpark.writeCsv(spark.read().parquet(parquet.toString()), csv);
            assertThat(Files.readString(csv)).isEqualTo(table);
        }
    }

    private static int finishedTasks(SparkSession spark) {
        int finished = 0;
        for (int stage : spark.sparkContext().statusTracker().getActiveStageIds()) {
            var info = spark.sparkContext().statusTracker().getStageInfo(stage);
            finished += info.isDefined() ? info.get().numCompletedTasks() : 0;
        }
        return finished;
    }

    /** Our own classes; libraries are in the folder of Spark's. */
    private static String ours() {
        List<String> own = new ArrayList<>();
        for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
            if (Files.isDirectory(Path.of(entry)) || entry.contains("lapwright-")) {
                own.add(entry);
            }
        }
        return String.join(File.pathSeparator, own);
    }

    private Process worker(String master, String name) throws IOException {
        return start(
                "org.apache.spark.deploy.worker.Worker",
                "--host",
                HOST,
                "--cores",
                "1",
                "--memory",
                "600m",
                "--webui-port",
                "0",
                "--work-dir",
                folder.resolve(name).toString(),
                master);
    }

    private Process start(String main, String... arguments) throws IOException {
        Path home = Path.of("target", "spark").toAbsolutePath();
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx300m",
                "-cp",
                home.resolve("jars") + "/*",
                main));
        command.addAll(List.of(arguments));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(
                        folder.resolve("process" + processes.size() + ".log").toFile());
        builder.environment().put("SPARK_HOME", home.toString());
        builder.environment().put("SPARK_SCALA_VERSION", "2.13");
        builder.environment().put("SPARK_LOCAL_IP", HOST);
        Process process = builder.start();
        processes.add(process);
        return process;
    }

    /** At once, with all that it started. */
    private static void kill(Process process) {
        List<ProcessHandle> all = new ArrayList<>(process.descendants().toList());
        process.destroyForcibly();
        all.forEach(ProcessHandle::destroyForcibly);
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private static void await(String what, BooleanSupplier there) throws InterruptedException {
        Instant end = Instant.now().plus(PATIENCE);
        while (!there.getAsBoolean()) {
            assertThat(Instant.now()).as(what + " in time").isBefore(end);
            Thread.sleep(50);
        }
    }
}
