package dev.lapwright.text;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Texts shipped in our jars, on the class path or the module path. */
public final class ClassPathText {
    /** Folder of the schemas. */
    public static final String SCHEMAS = "dev/lapwright/documents/schema/";
    /** Folder of the demo documents. */
    public static final String DEMOS = "dev/lapwright/demo/";

    private ClassPathText() {}

    public static Optional<String> find(String resource) {
        // Through the loader: a class in a module finds only what lies in its own, and the demos are another module.
        try (InputStream in = ClassPathText.class.getClassLoader().getResourceAsStream(resource)) {
            return in == null ? Optional.empty() : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static String required(String resource) {
        return find(resource)
                .orElseThrow(() -> new IllegalStateException(resource + " is on neither class path nor module path"));
    }
}
