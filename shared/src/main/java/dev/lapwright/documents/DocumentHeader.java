package dev.lapwright.documents;

import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonReader;
import dev.lapwright.text.JsonValue;
import dev.lapwright.text.TextPlace;
import java.util.ArrayList;
import java.util.List;

/** Fields that every document begins with: {@code lapwright} with kind and version, then name and description. */
final class DocumentHeader {
    /** Lets an editor find the schema of a document; not looked at here. */
    static final String SCHEMA = "$schema";

    private DocumentHeader() {}

    /**
     * Parses a document and makes sure that it is of the kind wanted.
     *
     * @throws DocumentException if it is not JSON or another kind of document, for then nothing else in it would
     *     make sense
     */
    static ObjectReader open(DocumentSource source, DocumentKind kind, FaultList faults) {
        return open(source, kind.mark(), faults);
    }

    static ObjectReader open(DocumentSource source, String mark, FaultList faults) {
        JsonValue node = JsonReader.parse(source, faults);
        ObjectReader root = ObjectReader.of(node, "", faults);
        if (root.isPresent()) {
            checkMark(root, mark, faults);
            root.ignoredText(SCHEMA);
        } else {
            faults.throwIfAny();
        }
        return root;
    }

    /** The kind of a document by its mark. */
    static DocumentKind kindOf(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        ObjectReader root = ObjectReader.of(JsonReader.parse(source, faults), "", faults);
        JsonValue mark = root.isPresent() ? root.node(DocumentKind.MARK) : null;
        List<String> marks = new ArrayList<>();
        for (DocumentKind kind : DocumentKind.values()) {
            if (mark instanceof JsonValue.Text text && text.value().equals(kind.mark())) {
                return kind;
            }
            marks.add('"' + kind.mark() + '"');
        }
        String problem = mark == null
                ? "this is not marked as a document of Lapwright"
                : mark.describe() + " is not a mark known to this version";
        stop(
                root.isPresent() ? root.place(DocumentKind.MARK) : TextPlace.NONE,
                mark == null ? "" : DocumentKind.MARK,
                problem,
                "begin it with \"" + DocumentKind.MARK + "\": and one of " + String.join(", ", marks),
                faults);
        throw new IllegalStateException(problem);
    }

    private static void checkMark(ObjectReader root, String wanted, FaultList faults) {
        JsonValue mark = root.node(DocumentKind.MARK);
        String word = wanted.substring(0, wanted.indexOf('/'));
        String line = "\"" + DocumentKind.MARK + "\": \"" + wanted + "\"";
        if (mark == null) {
            stop(root.place(), "", "this is not marked as a " + word + " document", "begin it with " + line, faults);
        }
        TextPlace place = root.place(DocumentKind.MARK);
        String found = mark instanceof JsonValue.Text text ? text.value() : "";
        if (found.equals(wanted)) {
            return;
        }
        for (DocumentKind other : DocumentKind.values()) {
            if (found.equals(other.mark()) && !other.word().equals(word)) {
                stop(
                        place,
                        DocumentKind.MARK,
                        "this is a " + other.word() + " document, but a " + word + " document is wanted here",
                        "name a document marked " + line,
                        faults);
            }
        }
        if (found.matches(word + "/[0-9]+")) {
            stop(
                    place,
                    DocumentKind.MARK,
                    "its format " + found + " is not known to this version",
                    "use a newer version, or a document marked " + wanted,
                    faults);
        }
        stop(
                place,
                DocumentKind.MARK,
                mark.describe() + " is not the mark of a " + word + " document",
                "write " + line,
                faults);
    }

    private static void stop(TextPlace place, String path, String problem, String remedy, FaultList faults) {
        // Keys given twice may have been noted; they do not matter in a document of the wrong kind.
        FaultList alone = faults.emptied();
        alone.form(place, path, problem, remedy);
        alone.throwIfAny();
    }
}
