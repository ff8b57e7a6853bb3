package dev.lapwright.cli.output;

import java.io.IOException;
import java.io.InputStream;
import java.net.URL;
import java.util.Enumeration;
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
