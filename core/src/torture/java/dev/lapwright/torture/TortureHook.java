package dev.lapwright.torture;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.AroundTryHook;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;
import net.jqwik.api.lifecycle.TryExecutionResult;
import net.jqwik.api.lifecycle.TryExecutor;
import net.jqwik.api.lifecycle.TryLifecycleContext;

/** How long a {@link Torture} lasts, from which seed, and what is told of it: a line, which is also kept in {@code target/torture.md}. */
public final class TortureHook implements AroundPropertyHook, AroundTryHook {
    private static final String MINUTES = "torture.minutes";
    private static final String SEED = "torture.seed";
    private static final Path TABLE = Path.of("target", "torture.md");
    private static final double PERCENT = 100;
    /** What was counted of the property that runs; jqwik runs one at a time. */
    private static final Map<String, Integer> COUNTS = new TreeMap<>();

    private static final long[] END = new long[1];

    static {
        try {
            // What an older run has left.
            Files.deleteIfExists(TABLE);
        } catch (IOException e) {
            throw new IllegalStateException("the table of the torture suite cannot be begun", e);
        }
    }

    /** Counts a case of a kind, told beside the number of all. */
    public static void count(String kind) {
        synchronized (COUNTS) {
            COUNTS.merge(kind, 1, Integer::sum);
        }
    }

    /** Whether few cases are tried, for which a build waits. */
    public static boolean isShort() {
        return minutes() == 0;
    }

    private static double minutes() {
        return Double.parseDouble(System.getProperty(MINUTES, "0"));
    }

    @Override
    public PropertyExecutionResult aroundProperty(PropertyLifecycleContext context, PropertyExecutor property) {
        Torture torture = context.findAnnotation(Torture.class).orElseThrow();
        boolean isShort = isShort();
        double seconds = TimeUnit.MINUTES.toSeconds(1) * minutes() * torture.percent() / PERCENT;
        context.attributes().setTries(isShort ? torture.cases() : Integer.MAX_VALUE);
        String given = System.getProperty(SEED, "");
        context.attributes().setSeed(!given.isBlank() ? given : isShort ? "1" : Long.toString(System.nanoTime()));
        synchronized (COUNTS) {
            COUNTS.clear();
        }
        END[0] = isShort ? Long.MAX_VALUE : System.nanoTime() + (long) (1e9 * seconds);
        PropertyExecutionResult result = property.execute();
        tell(context, result, isShort);
        return result;
    }

    /** After the time is up the case that runs is the last. */
    @Override
    public TryExecutionResult aroundTry(TryLifecycleContext context, TryExecutor aTry, List<Object> parameters) {
        TryExecutionResult result = aTry.execute(parameters);
        boolean over = END[0] != Long.MAX_VALUE && System.nanoTime() - END[0] >= 0;
        return over && result.isSatisfied() ? TryExecutionResult.satisfied(true) : result;
    }

    private static void tell(PropertyLifecycleContext context, PropertyExecutionResult result, boolean isShort) {
        String law =
                context.targetMethod().getName().replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
        String counts;
        synchronized (COUNTS) {
            counts = COUNTS.entrySet().stream()
                    .map(entry -> entry.getValue() + " " + entry.getKey())
                    .collect(Collectors.joining(", "));
        }
        String row = String.format(
                Locale.ROOT,
                "| %s | %d | %s | %s |%n",
                law,
                result.countChecks(),
                counts,
                result.seed().orElse(""));
        if (!isShort) {
            System.out.print("torture " + row);
        }
        try {
            Files.createDirectories(TABLE.getParent());
            Files.writeString(TABLE, row, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
        } catch (IOException e) {
            throw new IllegalStateException("the table of the torture suite cannot be written", e);
        }
    }
}
