package dev.lapwright.checks;

import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListSet;

/**
 * What the checks of this run have computed, for the page of validation. Only {@link CheckRow#verify} writes here, so that
 * no number gets onto the page that was not held to its expected value.
 */
final class ValidationLog {
    private static final Map<String, Double> COMPUTED = new ConcurrentHashMap<>();
    private static final Map<String, Set<String>> TESTS = new ConcurrentHashMap<>();

    private ValidationLog() {}

    /** Of a row that several tests verify, the value farthest from the expected one is kept. */
    static void note(CheckRow row, Class<?> test, double computed) {
        TESTS.computeIfAbsent(row.file(), file -> new ConcurrentSkipListSet<>()).add(test.getName());
        COMPUTED.merge(key(row), computed, (one, other) -> {
            double expected = row.expected();
            return Math.abs(one - expected) >= Math.abs(other - expected) ? one : other;
        });
    }

    static Optional<Double> computed(CheckRow row) {
        return Optional.ofNullable(COMPUTED.get(key(row)));
    }

    /** Names of the classes that have verified rows of a file. */
    static Set<String> tests(String file) {
        return new TreeSet<>(TESTS.getOrDefault(file, Set.of()));
    }

    private static String key(CheckRow row) {
        return row.file() + ":" + row.line();
    }
}
