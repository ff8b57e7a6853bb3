package dev.lapwright.cli.output;

import java.io.IOException;
import java.io.InputStream;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Enumeration;
import java.util.HexFormat;
import java.util.Optional;
import java.util.jar.Attributes;
import java.util.jar.Manifest;
import picocli.CommandLine.IVersionProvider;

/** Text of {@code --version}: the version of Lapwright, and the Java it runs on. */
public final class VersionText implements IVersionProvider {
    private static final String TITLE = "Implementation-Title";

    @Override
    public String[] getVersion() {
        return new String[] {
            "lapwright " + version() + " (" + commit() + ")",
            "Java " + System.getProperty("java.version") + " on " + System.getProperty("os.name") + " "
                    + System.getProperty("os.arch")
        };
    }

    /** The version alone; "unreleased" where the classes do not come from our jar. */
    public static String version() {
        String version = ours().getValue(Attributes.Name.IMPLEMENTATION_VERSION);
        return version == null ? "unreleased" : version;
    }

    /**
     * All that may change what this program finds from the same question: version, commit, the build's own file, Java and the machine's kind.
     * Empty where the classes do not come from our jar, which may then change at any time.
     */
    public static Optional<String> fingerprint() {
        return fingerprint(
                jar -> Files.size(jar) + "|" + Files.getLastModifiedTime(jar).toMillis());
    }

    /** The same for copies of the build on several machines: by what its file holds, which takes a moment to read. */
    public static Optional<String> build() {
        return fingerprint(jar -> {
            try {
                return HexFormat.of()
                        .formatHex(MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(jar)));
            } catch (NoSuchAlgorithmException e) {
                throw new IllegalStateException("every Java platform has SHA-256", e);
            }
        });
    }

    /** What tells one build's file from another's. */
    @FunctionalInterface
    private interface Mark {
        String of(Path jar) throws IOException;
    }

    private static Optional<String> fingerprint(Mark mark) {
        try {
            Path jar = Path.of(VersionText.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            if (!Files.isRegularFile(jar)) {
                return Optional.empty();
            }
            return Optional.of(String.join(
                    "|",
                    version(),
                    commit(),
                    mark.of(jar),
                    System.getProperty("java.vm.version"),
                    System.getProperty("os.arch")));
        } catch (IOException | URISyntaxException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private static String commit() {
        String commit = ours().getValue("Lapwright-Commit");
        return commit == null || commit.equals("unknown") ? "commit unknown" : "commit " + commit;
    }

    private static Attributes ours() {
        try {
            Enumeration<URL> manifests = VersionText.class.getClassLoader().getResources("META-INF/MANIFEST.MF");
            while (manifests.hasMoreElements()) {
                try (InputStream in = manifests.nextElement().openStream()) {
                    Attributes attributes = new Manifest(in).getMainAttributes();
                    if ("Lapwright".equals(attributes.getValue(TITLE))) {
                        return attributes;
                    }
                }
            }
        } catch (IOException e) {
            // A version that cannot be read is no reason to fail.
        }
        return new Attributes();
    }
}
