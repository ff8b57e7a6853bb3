package dev.lapwright.documents;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The list of demo documents on the class path. */
final class DemoIndex {
    private static final String RESOURCE = ClassPathText.DEMOS + "index.json";

    private final List<Demo> demos;
    private final List<DemoSurvey> surveys;
    private final List<DemoLog> logs;

    private DemoIndex(List<Demo> demos, List<DemoSurvey> surveys, List<DemoLog> logs) {
        this.demos = List.copyOf(demos);
        this.surveys = List.copyOf(surveys);
        this.logs = List.copyOf(logs);
    }

    /** Reads the index; without one there are no demos. */
    static DemoIndex load() {
        return ClassPathText.find(RESOURCE)
                .map(text -> read(new DocumentSource("demo index", text)))
                .orElse(new DemoIndex(List.of(), List.of(), List.of()));
    }

    static DemoIndex read(DocumentSource source) {
        Map<String, DocumentKind> kinds = new LinkedHashMap<>();
        for (DocumentKind kind : DocumentKind.values()) {
            kinds.put(kind.word(), kind);
        }
        Faults faults = new Faults(source.name());
        Fields root = DocumentHeader.open(source, "index/1", faults);
        List<Demo> demos = new ArrayList<>();
        for (Fields fields : root.objects("demos")) {
            String kind = fields.choice("kind", kinds.keySet(), "");
            String name = fields.shortName("write it like gt-car");
            String title = fields.text("title", name, Fields.MAX_NAME_LENGTH);
            String description = fields.text("description", "", Fields.MAX_DESCRIPTION_LENGTH);
            if (!fields.has("kind")) {
                fields.missing("kind", "kind of document");
            }
            fields.close();
            demos.add(new Demo(kinds.get(kind), name, title, description));
        }
        List<DemoSurvey> surveys = new ArrayList<>();
        for (Fields fields : root.objects("surveys")) {
            String file = fields.text("file", "", Fields.MAX_NAME_LENGTH);
            String title = fields.text("title", file, Fields.MAX_NAME_LENGTH);
            surveys.add(new DemoSurvey(file, title, fields.text("description", "", Fields.MAX_DESCRIPTION_LENGTH)));
            fields.close();
        }
        List<DemoLog> logs = new ArrayList<>();
        for (Fields fields : root.objects("logs")) {
            String file = fields.text("file", "", Fields.MAX_NAME_LENGTH);
            String title = fields.text("title", file, Fields.MAX_NAME_LENGTH);
            logs.add(new DemoLog(file, title, fields.text("description", "", Fields.MAX_DESCRIPTION_LENGTH)));
            fields.close();
        }
        root.close();
        faults.throwIfAny();
        return new DemoIndex(demos, surveys, logs);
    }

    List<Demo> demos() {
        return demos;
    }

    List<DemoSurvey> surveys() {
        return surveys;
    }

    List<DemoLog> logs() {
        return logs;
    }

    /** Names of the demos of a kind. */
    List<String> names(DocumentKind kind) {
        return demos.stream()
                .filter(demo -> demo.kind() == kind)
                .map(Demo::name)
                .toList();
    }
}
