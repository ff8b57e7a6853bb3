package dev.lapwright.study;

import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/**
 * Circumstances under which a study is run: on how many threads, whom it tells of its progress, and who may stop it. None
 * of it changes what a study finds. Immutable; a study of one's own can use it as those here do.
 */
public final class StudyRun {
    private final int threads;
    private final Progress progress;
    private final BooleanSupplier stop;

    private StudyRun(int threads, Progress progress, BooleanSupplier stop) {
        this.threads = threads;
        this.progress = progress;
        this.stop = stop;
    }

    /** A run on one thread for each core, of which nobody is told and which nobody stops. */
    public static StudyRun onAllCores() {
        return new StudyRun(Runtime.getRuntime().availableProcessors(), Progress.NONE, () -> false);
    }

    /** The same on this many threads, at least 1. */
    public static StudyRun onThreads(int count) {
        if (count < 1) {
            throw new InvalidValueException("threads", count + " is below 1", "give 1 or more");
        }
        return new StudyRun(count, Progress.NONE, () -> false);
    }

    /** The same on one thread, as for one of several studies that are run in parallel themselves. */
    public StudyRun alone() {
        return new StudyRun(1, progress, stop);
    }

    /** The same, but telling of its progress. */
    public StudyRun reporting(Progress told) {
        return new StudyRun(threads, told, stop);
    }

    /** The same, but stopped at the next lap once this says so; asked by several threads at once. */
    public StudyRun stoppedWhen(BooleanSupplier wanted) {
        return new StudyRun(threads, progress, wanted);
    }

    /**
     * Tells how far the study has come, and stops it if that is wanted.
     *
     * @throws StudyStoppedException if it is to stop
     */
    public void report(int done, int total) {
        stopIfWanted();
        progress.report(done, total);
    }

    /**
     * Tells how much there is to do before the first part is done, with a way to try how long a part takes.
     *
     * @param parts to be done, about
     * @param atOnce on how many threads they can be at the most
     * @param part does one like them
     */
    public void begin(long parts, int atOnce, Runnable part) {
        progress.begin(parts, Math.min(threads, atOnce), part);
    }

    /** @throws StudyStoppedException if the study is to stop */
    public void stopIfWanted() {
        if (stop.getAsBoolean()) {
            throw new StudyStoppedException("it was stopped", null);
        }
    }

    /** Part of a study's work, done with a thread's own tool. */
    @FunctionalInterface
    public interface Part<T, R> {
        R at(T tool, int index);
    }

    /**
     * Does parts of the work on the threads of this run, each thread with a tool of its own. Results stand in the parts' order,
     * whatever the threads.
     *
     * @param done told the number of parts done, never by two threads at once
     * @throws StudyStoppedException if the run is to stop, or the calling thread is interrupted
     */
    public <T, R> List<R> inParallel(int parts, Supplier<T> tool, Part<T, R> part, IntConsumer done) {
        return new Parts<>(parts, tool, part, done).all();
    }

    /**
     * The same for parts that are a whole study: who is told of its progress can do some of them first, to see how long they take. No lap is driven twice
     * for that.
     */
    public <T, R> List<R> allInParallel(int parts, Supplier<T> tool, Part<T, R> part, IntConsumer done) {
        Parts<T, R> all = new Parts<>(parts, tool, part, done);
        if (parts > 0) {
            begin(parts, parts, all.oneByOne());
        }
        return all.all();
    }

    /** Parts of the work, done by any threads. */
    private final class Parts<T, R> {
        private final Object[] results;
        private final AtomicInteger next = new AtomicInteger();
        private final Supplier<T> tool;
        private final Part<T, R> part;
        private final IntConsumer done;
        private int finished;

        Parts(int count, Supplier<T> tool, Part<T, R> part, IntConsumer done) {
            results = new Object[count];
            this.tool = tool;
            this.part = part;
            this.done = done;
        }

        /** Does the next part that is not done, if there is one. */
        private boolean next(T own) {
            int i = next.getAndIncrement();
            if (i >= results.length || Thread.currentThread().isInterrupted()) {
                return false;
            }
            stopIfWanted();
            results[i] = part.at(own, i);
            finished();
            return true;
        }

        private synchronized void finished() {
            done.accept(++finished);
        }

        /** Does the next part each time that it is run. */
        Runnable oneByOne() {
            T own = tool.get();
            return () -> next(own);
        }

        List<R> all() {
            Callable<Void> work = () -> {
                T own = tool.get();
                while (next(own)) {
                    // The next one.
                }
                return null;
            };
            onWorkers(work, Math.min(threads, results.length));
            @SuppressWarnings("unchecked")
            List<R> list = (List<R>) Arrays.asList(results);
            return list;
        }
    }

    private static void onWorkers(Callable<Void> work, int workers) {
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
            throw new StudyStoppedException("it was interrupted", interrupted);
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
