package dev.lapwright.documents;

import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.ClassPathText;
import dev.lapwright.text.NearestWord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Search for the text that a name given by a user stands for: a file, or else a demo document. */
final class DocumentFinder {
    private final Demos index;

    DocumentFinder(Demos index) {
        this.index = index;
    }

    DocumentSource find(DocumentKind kind, String nameOrFile) {
        Path path = path(nameOrFile);
        boolean exists = path != null && !nameOrFile.isBlank() && Files.exists(path);
        if (exists && !Files.isDirectory(path)) {
            return DocumentSource.ofFile(path);
        }
        Optional<DocumentSource> demo = demoIfAny(kind, nameOrFile);
        if (demo.isPresent()) {
            return demo.get();
        }
        if (exists) {
            return DocumentSource.ofFile(path);
        }
        if (looksLikeFile(nameOrFile)) {
            throw new DocumentException(nameOrFile, "there is no such file", nearFiles(path, kind));
        }
        throw unknown(kind, nameOrFile, "there is neither a file nor a demo " + kind.word() + " of that name");
    }

    DocumentSource demo(DocumentKind kind, String name) {
        return demoIfAny(kind, name)
                .orElseThrow(() -> unknown(kind, name, "there is no demo " + kind.word() + " of that name"));
    }

    private Optional<DocumentSource> demoIfAny(DocumentKind kind, String name) {
        if (!index.names(kind).contains(name)) {
            return Optional.empty();
        }
        String resource = ClassPathText.DEMOS + kind.folder() + "/" + name + ".json";
        return Optional.of(new DocumentSource("demo " + kind.word() + " " + name, ClassPathText.required(resource)));
    }

    private DocumentException unknown(DocumentKind kind, String name, String problem) {
        List<String> names = index.names(kind);
        String shown = name.isBlank() ? "(no name)" : name;
        if (names.isEmpty()) {
            return new DocumentException(shown, problem, "no demo " + kind.folder() + " are installed: name a file");
        }
        String list = "demo " + kind.folder() + ": " + String.join(", ", names);
        return new DocumentException(
                shown,
                problem,
                NearestWord.near(name, names)
                        .map(near -> "perhaps you meant " + near + " (" + list + ")")
                        .orElse(list));
    }

    private static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException e) {
            return null;
        }
    }

    private static boolean looksLikeFile(String name) {
        return name.contains("/") || name.contains("\\") || name.endsWith(".json");
    }

    private String nearFiles(Path path, DocumentKind kind) {
        String plain = "check its name and the folder you are in";
        Path name = path == null ? null : path.getFileName();
        if (name == null) {
            return plain;
        }
        Path folder = path.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            return "there is no folder " + (path.getParent() == null ? folder : path.getParent()) + " either";
        }
        String demos = index.names(kind).isEmpty() ? "" : "; demo " + kind.folder() + " go by name alone";
        try (Stream<Path> files = Files.list(folder)) {
            List<String> names = files.map(file -> file.getFileName().toString())
                    .filter(file -> file.endsWith(".json"))
                    .sorted()
                    .toList();
            return NearestWord.remedy(name.toString(), names, plain + demos);
        } catch (IOException e) {
            return plain;
        }
    }
}
