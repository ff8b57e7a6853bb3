package dev.lapwright.cli.bench;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.cli.option.LineOptions;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.StoredLine;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.line.LineChoices;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Cars, circuits and days that the page may ask for: the demos, and those named on the command line. Whatever else a request
 * names is not there; no file is opened for it. A document is read once, and again only when that is asked for.
 */
final class Catalogue {
    private final Map<String, Entry> cars = new LinkedHashMap<>();
    private final Map<String, Entry> circuits = new LinkedHashMap<>();
    private final Map<String, Entry> days = new LinkedHashMap<>();
    private final Optional<NamedLine> line;
    private int edition;

    /**
     * Line that was named on the command line.
     *
     * @param file as it was named
     */
    record NamedLine(String file, StoredLine stored) {
        /** The same on a road. */
        ChosenLine on(Track road, Car car, LineChoices choices) {
            return new ChosenLine(road, file, Optional.of(stored.on(road, car, choices)), Optional.of(stored), choices);
        }
    }

    /** Document that was named, as it was when it was read. */
    private static final class Entry {
        private final DocumentKind kind;
        private final String given;
        private final String title;
        private DocumentSource source;
        private Object read;

        Entry(DocumentKind kind, String given, String title) {
            this.kind = kind;
            this.given = given;
            this.title = title;
        }

        Object read() {
            if (read == null) {
                DocumentSource found = Documents.find(kind, given);
                read = switch (kind) {
                    case CAR -> Documents.car(found);
                    case CONDITIONS -> Documents.conditions(found);
                    default -> Documents.circuit(found);
                };
                source = found;
            }
            return read;
        }

        /** Title of the demo; of any other document the name in it. */
        String title() {
            if (!title.isEmpty()) {
                return title;
            }
            return switch (kind) {
                case CAR -> ((Car) read()).name();
                case CONDITIONS -> ((Conditions) read()).name();
                default -> ((Track) read()).name();
            };
        }

        /** What became of it since it was read: empty, or a sentence. */
        String news() {
            if (read == null) {
                return "";
            }
            try {
                boolean same = Documents.find(kind, given).text().equals(source.text());
                return same ? "" : source.name() + " was edited after it was read.";
            } catch (LapwrightException gone) {
                return source.name() + " can no longer be read: " + gone.problem() + ".";
            }
        }

        /** Reads it anew; where it has faults nothing changes. */
        boolean again() {
            if (news().isEmpty()) {
                return false;
            }
            Entry fresh = new Entry(kind, given, title);
            read = fresh.read();
            source = fresh.source;
            return true;
        }
    }

    /**
     * @param car file or name of a demo; empty for none
     * @param circuit the same
     * @param line file of a line; empty for none
     * @param day file or name of a demo of a day; empty for none
     */
    Catalogue(String car, String circuit, String line, String day) {
        this.line = line.isEmpty() ? Optional.empty() : Optional.of(new NamedLine(line, LineOptions.stored(line)));
        enter(cars, DocumentKind.CAR, car);
        enter(circuits, DocumentKind.CIRCUIT, circuit);
        enter(days, DocumentKind.CONDITIONS, day);
        if (cars.isEmpty() || circuits.isEmpty()) {
            throw new InvalidValueException(
                    cars.isEmpty() ? "car" : "circuit", "none was named, and no demos are installed", "name a file");
        }
    }

    private static void enter(Map<String, Entry> entries, DocumentKind kind, String named) {
        boolean demo = false;
        for (Demos.Document document : Documents.demos()) {
            if (document.kind() == kind) {
                entries.put(document.name(), new Entry(kind, document.name(), document.title()));
                demo |= document.name().equals(named);
            }
        }
        if (!named.isEmpty() && !demo) {
            Entry own = new Entry(kind, named, "");
            // What is wrong with it is said at once.
            own.read();
            entries.put(named, own);
        }
    }

    /** Enters a car's file that was written on the bench. */
    synchronized void enterCar(String file) {
        enter(cars, DocumentKind.CAR, file);
    }

    /** Enters a circuit's file that was written on the bench. */
    synchronized void enterCircuit(String file) {
        enter(circuits, DocumentKind.CIRCUIT, file);
    }

    /** A document as it was read, for a copy of it. */
    synchronized DocumentSource source(DocumentKind kind, String name) {
        Entry entry = kind == DocumentKind.CAR ? entry(cars, "car", name) : entry(circuits, "circuit", name);
        entry.read();
        return entry.source;
    }

    /** The first car, for who names none. */
    String firstCar() {
        return cars.keySet().iterator().next();
    }

    /** The first circuit, for who names none. */
    String firstCircuit() {
        return circuits.keySet().iterator().next();
    }

    synchronized Car car(String name) {
        return (Car) entry(cars, "car", name).read();
    }

    synchronized Track circuit(String name) {
        return (Track) entry(circuits, "circuit", name).read();
    }

    /** The days, the standard one first. */
    synchronized List<Conditions> days() {
        List<Conditions> all = new ArrayList<>(List.of(Conditions.STANDARD));
        days.values().forEach(entry -> all.add((Conditions) entry.read()));
        return all;
    }

    /** The line whose file was named. */
    NamedLine line() {
        return line.orElseThrow(() -> new InvalidValueException(
                "line", "no file of a line is on this bench", "start it with --line FILE, or take another line"));
    }

    private static Entry entry(Map<String, Entry> entries, String kind, String name) {
        Entry entry = entries.get(name);
        if (entry == null) {
            throw new InvalidValueException(
                    kind, "'" + name + "' is not on this bench", "take one of " + String.join(", ", entries.keySet()));
        }
        return entry;
    }

    /** Title of a car or a circuit. */
    synchronized String title(String kind, String name) {
        return entry(kind.equals("car") ? cars : circuits, kind, name).title();
    }

    /** How often documents were read anew: what was made of older ones is out of date. */
    synchronized int edition() {
        return edition;
    }

    /** Documents that were edited after they were read, a sentence each. */
    synchronized List<String> news() {
        List<String> news = new ArrayList<>();
        for (Map<String, Entry> entries : List.of(cars, circuits, days)) {
            for (Entry entry : entries.values()) {
                String said = entry.news();
                if (!said.isEmpty()) {
                    news.add(said);
                }
            }
        }
        return news;
    }

    /** Reads what was edited anew; where that has faults it is refused, and all stays as it was. */
    synchronized void again() {
        boolean any = false;
        for (Map<String, Entry> entries : List.of(cars, circuits, days)) {
            for (Entry entry : entries.values()) {
                any |= entry.again();
            }
        }
        edition += any ? 1 : 0;
    }

    synchronized Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("cars", titles(cars));
        tree.put("circuits", titles(circuits));
        List<Map<String, Object>> told = new ArrayList<>();
        for (Conditions day : days()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("title", day.name());
            one.put("day", Question.Stand.values(day));
            told.add(one);
        }
        tree.put("days", told);
        return tree;
    }

    private static List<Map<String, Object>> titles(Map<String, Entry> entries) {
        List<Map<String, Object>> list = new ArrayList<>();
        entries.forEach((name, entry) -> {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", name);
            one.put("title", entry.title());
            list.add(one);
        });
        return list;
    }
}
