package dev.lapwright.study;

import dev.lapwright.fault.LapwrightException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Does independent work on several threads and hands the answers back in the order of the work. */
final class OptimisationThreads implements AutoCloseable {
    private final ExecutorService pool;

    OptimisationThreads(int count) {
        pool = Executors.newFixedThreadPool(count, task -> {
            Thread thread = new Thread(task, "optimisation");
            thread.setDaemon(true);
            return thread;
        });
    }

    <T> List<T> all(List<Callable<T>> work) {
        List<Future<T>> running = new ArrayList<>(work.size());
        for (Callable<T> one : work) {
            running.add(pool.submit(one));
        }
        List<T> answers = new ArrayList<>(work.size());
        try {
            for (Future<T> future : running) {
                answers.add(future.get());
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new LapwrightException("optimisation", "it was interrupted", "run it again", interrupted);
        } catch (ExecutionException failed) {
            if (failed.getCause() instanceof RuntimeException cause) {
                throw cause;
            }
            throw new IllegalStateException(failed.getCause());
        } finally {
            running.forEach(future -> future.cancel(true));
        }
        return answers;
    }

    @Override
    public void close() {
        pool.shutdownNow();
    }
}
