package dev.lapwright.cli.document;

import dev.lapwright.car.Nearest;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;

/** A document whose kind is found out from its text, or from the list of demos. */
public record KindOfDocument(DocumentKind kind, DocumentSource source) {
    /** @param word the kind the user says it is, or null */
    public static KindOfDocument of(String nameOrFile, String word) {
        if (word != null) {
            DocumentKind kind = ofWord(word);
            return new KindOfDocument(kind, Documents.find(kind, nameOrFile));
        }
        List<DocumentKind> kinds = new ArrayList<>();
        List<String> names = new ArrayList<>();
        for (Demos.Document demo : Documents.demos()) {
            names.add(demo.name());
            if (demo.name().equals(nameOrFile)) {
                kinds.add(demo.kind());
            }
        }
        boolean file = isFile(nameOrFile);
        if (!file && kinds.isEmpty() && Files.isDirectory(SafeFile.path(nameOrFile))) {
            throw new InvalidValueException(nameOrFile, "this is a folder, not a file", "name a file inside it");
        }
        if (!file && kinds.size() > 1) {
            throw new InvalidValueException(
                    nameOrFile,
                    "there are demos of several kinds by that name",
                    "add --as " + kinds.get(0).word() + " or --as "
                            + kinds.get(1).word());
        }
        if (!file && kinds.isEmpty() && !nameOrFile.endsWith(".json") && !nameOrFile.contains("/")) {
            String near = Nearest.remedy(nameOrFile, names);
            throw new InvalidValueException(
                    nameOrFile,
                    "there is neither a file nor a demo of that name",
                    near.startsWith("perhaps") ? near : "see the list with 'lapwright demo'");
        }
        DocumentSource source = Documents.find(kinds.isEmpty() ? DocumentKind.CAR : kinds.get(0), nameOrFile);
        return new KindOfDocument(Documents.kindOf(source), source);
    }

    private static boolean isFile(String name) {
        return Files.isRegularFile(SafeFile.path(name));
    }

    private static DocumentKind ofWord(String word) {
        List<String> words = new Words();
        int index = words.indexOf(word);
        if (index < 0) {
            throw new InvalidValueException(
                    "--as " + word, "there is no such kind of document", "use one of " + String.join(", ", words));
        }
        return DocumentKind.values()[index];
    }

    /** Words for the kinds of document, for shell completion. */
    public static final class Words extends ArrayList<String> {
        private static final long serialVersionUID = 1L;

        public Words() {
            for (DocumentKind kind : DocumentKind.values()) {
                add(kind.word());
            }
        }
    }
}
