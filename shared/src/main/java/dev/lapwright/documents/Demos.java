package dev.lapwright.documents;

import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.ClassPathText;
import dev.lapwright.text.FaultList;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The demos on the class path or the module path, by name: documents, surveys and lap logs. There are none without the module
 * that holds them.
 */
public final class Demos {
    private static final String RESOURCE = ClassPathText.DEMOS + "index.json";

    /**
     * A demo document.
     *
     * @param kind what it describes
     * @param name by which it is called
     * @param title for people
     * @param description one line
     */
    public record Document(DocumentKind kind, String name, String title, String description) {}

    /**
     * A demo survey, to be imported as a circuit.
     *
     * @param fileName by which it is called
     * @param title for people
     * @param description one line
     */
    public record Survey(String fileName, String title, String description) {
        /** Its text, to read or to copy. */
        public String text() {
            return ClassPathText.required(ClassPathText.DEMOS + "surveys/" + fileName);
        }
    }

    /**
     * A demo log of laps or of driven laps.
     *
     * @param fileName by which it is called
     * @param title for people
     * @param description one line
     */
    public record Log(String fileName, String title, String description) {
        /** Its text, to read or to copy. */
        public String text() {
            return ClassPathText.required(ClassPathText.DEMOS + "logs/" + fileName);
        }
    }

    private final List<Document> documents;
    private final List<Survey> surveys;
    private final List<Log> logs;

    private Demos(List<Document> documents, List<Survey> surveys, List<Log> logs) {
        this.documents = List.copyOf(documents);
        this.surveys = List.copyOf(surveys);
        this.logs = List.copyOf(logs);
    }

    /** Reads the index; without one there are no demos. */
    public static Demos load() {
        return ClassPathText.find(RESOURCE)
                .map(text -> read(new DocumentSource("demo index", text)))
                .orElse(new Demos(List.of(), List.of(), List.of()));
    }

    static Demos read(DocumentSource source) {
        Map<String, DocumentKind> kinds = new LinkedHashMap<>();
        for (DocumentKind kind : DocumentKind.values()) {
            kinds.put(kind.word(), kind);
        }
        FaultList faults = new FaultList(source.name());
        ObjectReader root = DocumentHeader.open(source, "index/1", faults);
        List<Document> documents = new ArrayList<>();
        for (ObjectReader fields : root.objects("demos")) {
            String kind = fields.choice("kind", kinds.keySet(), "");
            String name = fields.shortName("write it like gt-car");
            String title = fields.text("title", name, ObjectReader.MAX_NAME_LENGTH);
            String description = fields.description();
            if (!fields.has("kind")) {
                fields.missing("kind", "kind of document");
            }
            fields.close();
            documents.add(new Document(kinds.get(kind), name, title, description));
        }
        List<Survey> surveys = new ArrayList<>();
        for (ObjectReader fields : root.objects("surveys")) {
            String file = fields.text("file", "", ObjectReader.MAX_NAME_LENGTH);
            String title = fields.text("title", file, ObjectReader.MAX_NAME_LENGTH);
            surveys.add(new Survey(file, title, fields.description()));
            fields.close();
        }
        List<Log> logs = new ArrayList<>();
        for (ObjectReader fields : root.objects("logs")) {
            String file = fields.text("file", "", ObjectReader.MAX_NAME_LENGTH);
            String title = fields.text("title", file, ObjectReader.MAX_NAME_LENGTH);
            logs.add(new Log(file, title, fields.description()));
            fields.close();
        }
        root.close();
        faults.throwIfAny();
        return new Demos(documents, surveys, logs);
    }

    /** Cars, setups, circuits, conditions, lines, in the order of the index; unmodifiable. */
    public List<Document> documents() {
        return documents;
    }

    /** Surveys in the order of the index; unmodifiable. */
    public List<Survey> surveys() {
        return surveys;
    }

    /** Logs in the order of the index; unmodifiable. */
    public List<Log> logs() {
        return logs;
    }

    /** Names of the demos of a kind. */
    List<String> names(DocumentKind kind) {
        return documents.stream()
                .filter(demo -> demo.kind() == kind)
                .map(Document::name)
                .toList();
    }
}
