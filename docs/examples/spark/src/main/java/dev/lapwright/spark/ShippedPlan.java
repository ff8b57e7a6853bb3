package dev.lapwright.spark;

import dev.lapwright.documents.Documents;
import dev.lapwright.documents.PlanDocument;
import dev.lapwright.results.plan.PlanRows;
import dev.lapwright.results.plan.PlannedCases;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.plan.LapPlan;
import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentMap;
import java.util.stream.Stream;

/**
 * Plan with the documents of all that it names, as it is shipped to machines that have none of them. A process that drives laps of it reads it once.
 *
 * @param plan its own document
 * @param documents by the names under which the plan knows them; demos are not shipped, every build has them
 * @param program which one computes, as text
 */
public record ShippedPlan(String plan, Map<String, String> documents, String program) implements Serializable {
    private static final long serialVersionUID = 1L;

    /** Laps that are driven together. */
    private static final int BLOCK = 512;

    private static final ConcurrentMap<ShippedPlan, Unpacked> UNPACKED = new ConcurrentHashMap<>();

    private record Unpacked(LapPlan plan, PlanRows rows) {}

    /** A plan's file with the files that it names. */
    public static ShippedPlan of(Path file, String program) throws IOException {
        PlanDocument document = Documents.plan(file);
        Map<String, String> documents = new LinkedHashMap<>();
        for (List<String> names : List.of(document.cars(), document.circuits(), document.conditions())) {
            for (String name : names) {
                if (Files.isRegularFile(Path.of(name))) {
                    documents.put(name, Files.readString(Path.of(name)));
                }
            }
        }
        return new ShippedPlan(Files.readString(file), documents, program);
    }

    /** The plan itself. */
    public LapPlan unpacked() {
        return here().plan();
    }

    /** Names of the columns of {@link #rows}. */
    public List<String> head() {
        return here().rows().head();
    }

    /** Rows of laps, driven as they are asked for, some hundred at a time. */
    public Iterator<List<Object>> rows(Iterator<Long> numbers) {
        Unpacked plan = here();
        return new Iterator<>() {
            private Iterator<List<Object>> block = List.<List<Object>>of().iterator();
            private Long waiting;

            @Override
            public boolean hasNext() {
                return block.hasNext() || waiting != null || numbers.hasNext();
            }

            @Override
            public List<Object> next() {
                if (!block.hasNext()) {
                    block = drive();
                }
                return block.next();
            }

            /** The laps whose numbers come one after another, as those of a part do, are driven together. */
            private Iterator<List<Object>> drive() {
                long from = waiting == null ? numbers.next() : waiting;
                long to = from + 1;
                waiting = null;
                while (waiting == null && to < from + BLOCK && numbers.hasNext()) {
                    long number = numbers.next();
                    if (number == to) {
                        to++;
                    } else {
                        waiting = number;
                    }
                }
                List<List<Object>> rows = new ArrayList<>();
                plan.plan()
                        .drive(
                                from,
                                to,
                                StudyRun.onThreads(1),
                                lap -> rows.add(plan.rows().row(lap)));
                return rows.iterator();
            }
        };
    }

    private Unpacked here() {
        return UNPACKED.computeIfAbsent(this, shipped -> {
            try {
                return shipped.unpack();
            } catch (IOException e) {
                throw new UncheckedIOException("the plan's documents cannot be unpacked", e);
            }
        });
    }

    private Unpacked unpack() throws IOException {
        Path folder = Files.createTempDirectory("plan");
        try {
            Map<String, String> places = new LinkedHashMap<>();
            for (Map.Entry<String, String> document : documents.entrySet()) {
                Path place = folder.resolve(places.size() + ".json");
                Files.writeString(place, document.getValue());
                places.put(document.getKey(), place.toString());
            }
            Path own = folder.resolve("plan.json");
            Files.writeString(own, plan);
            LapPlan unpacked = PlannedCases.plan(
                    Documents.plan(own), name -> places.getOrDefault(name, name), System.err::println);
            return new Unpacked(unpacked, new PlanRows(unpacked, program));
        } finally {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }
}
