package dev.lapwright.notebook;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.PlainText;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.FileSet;
import dev.lapwright.files.SafeFile;
import dev.lapwright.files.UnwritableFileException;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonReader;
import dev.lapwright.text.JsonValue;
import dev.lapwright.text.NearestWord;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Folder of an event on the disk: {@code event.json}, the documents that it names, and {@code runs/run-001.txt} and so on. A run is written
 * beside and takes its name whole, the first that is free at that moment: two writers at once get two numbers, and neither loses a run.
 */
public final class EventFolder {
    /** The file that makes a folder an event. */
    public static final String EVENT = "event.json";

    private static final String MARK = "event/1";
    private static final String RUNS = "runs";
    private static final String LOGS = "logs";
    private static final String LOCK = ".lock";
    private static final Pattern RUN = Pattern.compile("run-(\\d{3,6})\\.txt");
    private static final Pattern LOG = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._-]{0,80}\\.(?:csv|txt)");
    private static final int MOST_RUNS = 999_999;
    private static final int TRIES = 200;
    private static final int WAIT_MS = 25;

    private final Path folder;

    private EventFolder(Path folder) {
        this.folder = folder;
    }

    /** An event's folder. */
    public static EventFolder of(Path folder) {
        if (!Files.isRegularFile(folder.resolve(EVENT))) {
            throw new DocumentException(
                    folder.toString().isEmpty() ? "." : folder.toString(),
                    Files.isDirectory(folder)
                            ? "this folder is no event: it has no " + EVENT
                            : "there is no such folder",
                    "make one with 'lapwright event new FOLDER --car CAR --circuit CIRCUIT', or name another");
        }
        return new EventFolder(folder);
    }

    /** The event that a folder lies in: its own, or that of a folder above it. */
    public static Optional<EventFolder> about(Path place) {
        for (Path at = place.toAbsolutePath().normalize(); at != null; at = at.getParent()) {
            if (isEvent(at.resolve(EVENT))) {
                return Optional.of(new EventFolder(at));
            }
        }
        return Optional.empty();
    }

    /** Whether a file of that name is ours, and not of another program. */
    private static boolean isEvent(Path file) {
        try {
            return Files.isRegularFile(file)
                    && DocumentSource.ofFile(file).text().contains("\"" + MARK + "\"");
        } catch (DocumentException unreadable) {
            return false;
        }
    }

    /** The folder. */
    public Path path() {
        return folder;
    }

    /**
     * Documents with which an event begins, as texts; they are checked before anything is written.
     *
     * @param name of the event, for people
     * @param car document
     * @param circuit document
     * @param conditions document; empty for a standard day
     * @param setup document; empty for the car's standard
     */
    public record Beginning(
            String name,
            DocumentSource car,
            DocumentSource circuit,
            Optional<DocumentSource> conditions,
            Optional<DocumentSource> setup) {}

    /**
     * A new event in a folder that is made, or has none yet.
     *
     * @throws UnwritableFileException if there is one already, or the folder cannot be written into; nothing has changed then
     */
    public static EventFolder create(Path folder, Beginning beginning) {
        if (Files.exists(folder.resolve(EVENT))) {
            throw new UnwritableFileException(
                    folder.toString(),
                    "this folder is an event already",
                    "go on with it, or name another folder",
                    null);
        }
        Car car = Documents.car(beginning.car());
        Documents.circuit(beginning.circuit());
        beginning.conditions().ifPresent(Documents::conditions);
        beginning.setup().ifPresent(setup -> Documents.setup(setup, car));
        Map<String, Object> event = new LinkedHashMap<>();
        Map<String, String> files = new LinkedHashMap<>();
        event.put("lapwright", MARK);
        event.put("name", beginning.name());
        paper(event, files, "car", beginning.car());
        paper(event, files, "circuit", beginning.circuit());
        beginning.conditions().ifPresent(source -> paper(event, files, "conditions", source));
        beginning.setup().ifPresent(source -> paper(event, files, "setup", source));
        files.put(EVENT, JsonLayout.text(event));
        write(folder, files);
        return new EventFolder(folder);
    }

    private static void paper(
            Map<String, Object> event, Map<String, String> files, String kind, DocumentSource source) {
        event.put(kind, kind + ".json");
        files.put(kind + ".json", source.text());
    }

    /** Texts written into a folder that is made if need be, all or none, over nothing. */
    static void write(Path folder, Map<String, String> files) {
        try {
            Files.createDirectories(folder.resolve(RUNS));
            if (files.keySet().stream().anyMatch(name -> name.startsWith(LOGS + "/"))) {
                Files.createDirectories(folder.resolve(LOGS));
            }
        } catch (IOException e) {
            throw new UnwritableFileException(
                    folder.toString(), "this folder cannot be made", "name another, or change the permissions", e);
        }
        try (FileSet set = new FileSet(false)) {
            files.forEach((name, text) ->
                    set.stage(folder.resolve(name), out -> out.write(text.getBytes(StandardCharsets.UTF_8))));
            set.commit();
        }
    }

    /**
     * The event as it is now.
     *
     * @throws DocumentException if a file of it is missing or wrong, with its place
     */
    public Event read() {
        Path file = folder.resolve(EVENT);
        Map<String, String> fields = fields(DocumentSource.ofFile(file));
        Event.Papers papers = new Event.Papers(
                fields.get("car"),
                fields.get("circuit"),
                Optional.ofNullable(fields.get("conditions")),
                Optional.ofNullable(fields.get("setup")));
        Car car = Documents.car(paper(papers.car()));
        Setup base =
                papers.setup().map(name -> Documents.setup(paper(name), car)).orElse(Setup.STANDARD);
        List<Event.Numbered> runs = new ArrayList<>();
        runFiles()
                .forEach((number, run) ->
                        runs.add(new Event.Numbered(number, RunText.read(DocumentSource.ofFile(run), car))));
        return new Event(
                folder,
                fields.get("name"),
                papers,
                car,
                Documents.circuit(paper(papers.circuit())),
                papers.conditions()
                        .map(name -> Documents.conditions(paper(name)))
                        .orElse(Conditions.STANDARD),
                base,
                runs);
    }

    private DocumentSource paper(String name) {
        return DocumentSource.ofFile(folder.resolve(name));
    }

    private static Map<String, String> fields(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        JsonValue root = JsonReader.parse(source, faults);
        faults.throwIfAny();
        List<String> known = List.of("lapwright", "name", "car", "circuit", "conditions", "setup");
        Map<String, String> fields = new LinkedHashMap<>();
        if (!(root instanceof JsonValue.Obj object)) {
            throw new DocumentException(
                    source.name(), root.describe() + " is no event", "make one with 'lapwright event new'");
        }
        object.members().forEach((name, member) -> {
            if (!known.contains(name)) {
                faults.form(
                        member.place(),
                        name,
                        "this field is unknown here",
                        NearestWord.remedy(name, known, "known here: " + String.join(", ", known)));
            } else if (!(member.value() instanceof JsonValue.Text text) || PlainText.isBlank(text.value())) {
                faults.form(
                        member.place(),
                        name,
                        member.value().describe() + " stands where a text belongs",
                        "put a name into double quotes");
            } else if (!name.equals("name") && !name.equals("lapwright") && !isPlain(text.value())) {
                faults.form(
                        member.place(),
                        name,
                        "'" + PlainText.shown(text.value()) + "' is no file of this folder",
                        "name a file beside " + EVENT);
            } else {
                fields.put(name, PlainText.shown(text.value()));
            }
        });
        for (String name : List.of("lapwright", "name", "car", "circuit")) {
            if (!object.members().containsKey(name)) {
                faults.form(object.place(), name, "the field " + name + " is missing", "give it");
            }
        }
        faults.throwIfAny();
        if (!fields.get("lapwright").equals(MARK)) {
            throw new DocumentException(
                    source.name(),
                    "it is '" + fields.get("lapwright") + "' and no event",
                    "its mark must be '" + MARK + "'");
        }
        return fields;
    }

    /** Whether a name is that of a file in a folder, not of one elsewhere. */
    static boolean isPlain(String name) {
        return name.matches("[A-Za-z0-9][A-Za-z0-9 ._-]{0,99}");
    }

    private Map<Integer, Path> runFiles() {
        Map<Integer, Path> runs = new TreeMap<>();
        Path place = folder.resolve(RUNS);
        if (!Files.isDirectory(place)) {
            return runs;
        }
        try (Stream<Path> files = Files.list(place)) {
            files.forEach(file -> {
                Matcher name = RUN.matcher(file.getFileName().toString());
                if (name.matches()) {
                    runs.put(Integer.parseInt(name.group(1)), file);
                }
            });
        } catch (IOException e) {
            throw new DocumentException(place.toString(), "its runs cannot be read", "change its permissions");
        }
        return runs;
    }

    private Path runFile(int number) {
        return folder.resolve(RUNS).resolve(String.format(Locale.ROOT, "run-%03d.txt", number));
    }

    /**
     * Adds a run behind all that there are, whoever else is adding one.
     *
     * @return its number
     * @throws UnwritableFileException if it cannot be written; nothing has changed then
     */
    public int add(EventRun run, Car car) {
        byte[] text = RunText.of(run, car).getBytes(StandardCharsets.UTF_8);
        Path place = folder.resolve(RUNS);
        Path aside = null;
        try {
            Files.createDirectories(place);
            aside = place.resolve(".lapwright-" + UUID.randomUUID() + ".part");
            Files.write(aside, text, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            int number = runFiles().keySet().stream().mapToInt(n -> n).max().orElse(0) + 1;
            while (!taken(aside, text, runFile(number))) {
                number++;
                if (number > MOST_RUNS) {
                    throw new IOException("there are too many runs");
                }
            }
            return number;
        } catch (IOException e) {
            throw new UnwritableFileException(
                    place.toString(),
                    "the run cannot be written there: " + e.getMessage(),
                    "make room, or change the permissions",
                    e);
        } finally {
            remove(aside);
        }
    }

    /**
     * Keeps a log with the event, whole and under a name that no other has.
     *
     * @param named as its file was named; its ending and what a name may hold are seen to
     * @return the name that it has here; that of a log with the same text where there is one
     */
    public String keep(String named, DocumentSource log) {
        byte[] text = log.text().getBytes(StandardCharsets.UTF_8);
        String bare = named.replaceFirst("^.*[/\\\\]", "").replaceFirst("\\.[A-Za-z]{1,4}$", "");
        String plain = bare.replaceAll("[^\\p{L}\\p{N}._-]+", "-").replaceFirst("^[^\\p{L}\\p{N}]+", "");
        String stem = plain.isEmpty() ? "log" : plain.substring(0, Math.min(60, plain.length()));
        Path place = folder.resolve(LOGS);
        Path aside = null;
        try {
            Files.createDirectories(place);
            aside = place.resolve(".lapwright-" + UUID.randomUUID() + ".part");
            Files.write(aside, text, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            for (int i = 1; ; i++) {
                String name = stem + (i == 1 ? "" : "-" + i) + ".csv";
                if (taken(aside, text, place.resolve(name))
                        || DocumentSource.ofFile(place.resolve(name)).text().equals(log.text())) {
                    return name;
                }
            }
        } catch (IOException e) {
            throw new UnwritableFileException(
                    place.toString(),
                    "the log cannot be written there: " + e.getMessage(),
                    "make room, or change the permissions",
                    e);
        } finally {
            remove(aside);
        }
    }

    /**
     * A log that is kept with the event.
     *
     * @throws DocumentException if there is none of that name
     */
    public DocumentSource log(EventRun.KeptLog log) {
        // Named as it lies in the event, wherever that lies: answers do not hang on the folder.
        return new DocumentSource(
                LOGS + "/" + log.file(),
                DocumentSource.ofFile(folder.resolve(LOGS).resolve(log.file())).text());
    }

    /** Whether a name is one that a log of an event may have. */
    static boolean isLog(String name) {
        return LOG.matcher(name).matches();
    }

    /** Names of the logs that there are, in their order. */
    private List<String> logs() {
        Path place = folder.resolve(LOGS);
        if (!Files.isDirectory(place)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(place)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(EventFolder::isLog)
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new DocumentException(place.toString(), "it cannot be read: " + e.getMessage(), "see to it");
        }
    }

    /** Gives a file written aside a name that nobody has: another name of it where there are links, which is one step; false if somebody has. */
    private static boolean taken(Path aside, byte[] text, Path name) throws IOException {
        try {
            try {
                Files.createLink(name, aside);
            } catch (UnsupportedOperationException e) {
                Files.write(name, text, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
            }
            return true;
        } catch (FileAlreadyExistsException e) {
            return false;
        }
    }

    private static void remove(Path file) {
        if (file != null) {
            try {
                Files.deleteIfExists(file);
            } catch (IOException e) {
                // It is no run, and nobody reads it.
            }
        }
    }

    /**
     * Changes a run, one writer at a time.
     *
     * @param change from what it is now
     * @throws InvalidValueException if there is no such run, or another writer does not let go
     */
    public void change(int number, Car car, UnaryOperator<EventRun> change) {
        Path file = runFile(number);
        if (!Files.isRegularFile(file)) {
            throw new InvalidValueException(
                    "run " + number,
                    "there is none",
                    "there are " + runFiles().size() + " runs; 'lapwright event show' lists them");
        }
        try (FileChannel channel = FileChannel.open(
                folder.resolve(RUNS).resolve(LOCK), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            FileLock lock = lock(channel);
            try {
                EventRun changed = change.apply(RunText.read(DocumentSource.ofFile(file), car));
                SafeFile.write(file, true, RunText.of(changed, car));
            } finally {
                lock.release();
            }
        } catch (IOException e) {
            throw new UnwritableFileException(
                    file.toString(), "it cannot be written: " + e.getMessage(), "change its permissions", e);
        }
    }

    private static FileLock lock(FileChannel channel) throws IOException {
        for (int i = 0; i < TRIES; i++) {
            try {
                FileLock lock = channel.tryLock();
                if (lock != null) {
                    return lock;
                }
            } catch (OverlappingFileLockException e) {
                // Another thread of this program has it.
            }
            try {
                Thread.sleep(WAIT_MS);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                break;
            }
        }
        throw new InvalidValueException("event", "somebody else is changing a run", "try again");
    }

    /** All files that the event is made of, by their names from its folder with slashes, in a fixed order. */
    public Map<String, String> texts() {
        Map<String, String> fields = fields(DocumentSource.ofFile(folder.resolve(EVENT)));
        Map<String, String> texts = new LinkedHashMap<>();
        texts.put(EVENT, DocumentSource.ofFile(folder.resolve(EVENT)).text());
        for (String kind : List.of("car", "circuit", "conditions", "setup")) {
            if (fields.containsKey(kind)) {
                texts.put(fields.get(kind), paper(fields.get(kind)).text());
            }
        }
        runFiles()
                .forEach((number, file) -> texts.put(
                        RUNS + "/" + file.getFileName(),
                        DocumentSource.ofFile(file).text()));
        logs().forEach(name -> texts.put(
                LOGS + "/" + name,
                DocumentSource.ofFile(folder.resolve(LOGS).resolve(name)).text()));
        return texts;
    }

    /** Whether a name is one that {@link #texts()} may give: of a file that belongs to an event, and nowhere else. */
    static boolean belongs(String name) {
        if (name.startsWith(LOGS + "/")) {
            return isLog(name.substring(LOGS.length() + 1));
        }
        return name.startsWith(RUNS + "/")
                ? RUN.matcher(name.substring(RUNS.length() + 1)).matches()
                : isPlain(name);
    }
}
