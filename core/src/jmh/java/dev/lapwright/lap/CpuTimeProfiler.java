package dev.lapwright.lap;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.List;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.infra.IterationParams;
import org.openjdk.jmh.profile.InternalProfiler;
import org.openjdk.jmh.results.AggregationPolicy;
import org.openjdk.jmh.results.IterationResult;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.ScalarResult;

/**
 * Processor time of the whole process for each operation: unlike wall-clock time it hardly changes when other programs run.
 * Ask for it with {@code -prof dev.lapwright.lap.CpuTimeProfiler}.
 */
public final class CpuTimeProfiler implements InternalProfiler {
    private final OperatingSystemMXBean system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();

    private long before;

    @Override
    public String getDescription() {
        return "processor time of the process for each operation";
    }

    @Override
    public void beforeIteration(BenchmarkParams benchmark, IterationParams iteration) {
        before = system.getProcessCpuTime();
    }

    @Override
    public Collection<? extends Result<?>> afterIteration(
            BenchmarkParams benchmark, IterationParams iteration, IterationResult result) {
        double spent = system.getProcessCpuTime() - before;
        double milliseconds = spent / 1e6 / Math.max(1, result.getMetadata().getMeasuredOps());
        return List.of(new ScalarResult("cpu", milliseconds, "ms/op", AggregationPolicy.AVG));
    }
}
