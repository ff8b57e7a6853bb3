package dev.lapwright.study;

import dev.lapwright.fault.LapwrightException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/**
 * Spreads the parts of a study over threads, each with a tool of its own. Results stand in the parts' order, whatever the
 * threads.
 */
public final class Work {
    private Work() {}

    /** One part of the work, with a thread's own tool. */
    @FunctionalInterface
    public interface Part<T, R> {
        R at(T tool, int index);
    }

    /**
     * Does all parts.
     *
     * @param progress told the number of parts done, never by two threads at once
     */
    public static <T, R> List<R> all(int threads, int parts, Supplier<T> tool, Part<T, R> part, IntConsumer progress) {
        Object[] results = new Object[parts];
        AtomicInteger next = new AtomicInteger();
        Object reporting = new Object();
        int[] done = {0};
        Callable<Void> work = () -> {
            T own = tool.get();
            for (int i = next.getAndIncrement(); i < parts; i = next.getAndIncrement()) {
                if (Thread.currentThread().isInterrupted()) {
                    break;
                }
                results[i] = part.at(own, i);
                synchronized (reporting) {
                    progress.accept(++done[0]);
                }
            }
            return null;
        };
        run(work, Math.min(threads, parts));
        @SuppressWarnings("unchecked")
        List<R> list = (List<R>) Arrays.asList(results);
        return list;
    }

    private static void run(Callable<Void> work, int workers) {
        if (workers < 1) {
            return;
        }
        ExecutorService pool = Executors.newFixedThreadPool(workers, task -> {
            Thread thread = new Thread(task, "study");
            thread.setDaemon(true);
            return thread;
        });
        try {
            List<Future<Void>> running = new ArrayList<>();
            for (int i = 0; i < workers; i++) {
                running.add(pool.submit(work));
            }
            for (Future<Void> future : running) {
                future.get();
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new LapwrightException("study", "it was interrupted", "run it again", interrupted);
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(failed.getCause());
        } finally {
            pool.shutdownNow();
        }
    }
}
