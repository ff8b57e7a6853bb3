package dev.lapwright.cli.bench;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Files of the page, which lie beside this class: a fixed list, read once. */
final class PageFiles {
    static final String PAGE = "bench.html";
    static final String STYLE = "bench.css";

    /** Modules of the page; none imports one that stands after it. */
    static final List<String> MODULES = List.of(
            "dom.js",
            "units.js",
            "state.js",
            "presence.js",
            "server.js",
            "strip.js",
            "plot.js",
            "traces.js",
            "map.js",
            "blocks.js",
            "views.js",
            "knobs.js",
            "forms.js",
            "notebook.js",
            "car.js",
            "road.js",
            "tasks.js",
            "main.js");

    private final Map<String, byte[]> files = new LinkedHashMap<>();

    PageFiles() {
        files.put(PAGE, read(PAGE));
        files.put(STYLE, read(STYLE));
        MODULES.forEach(name -> files.put(name, read(name)));
    }

    private static byte[] read(String name) {
        try (InputStream in = PageFiles.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the page's file " + name + " is not among the resources");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A file by its name; null if it is none of the page's. */
    byte[] bytes(String name) {
        return files.get(name.isEmpty() ? PAGE : name);
    }

    String text(String name) {
        return new String(bytes(name), StandardCharsets.UTF_8);
    }

    static String type(String name) {
        if (name.endsWith(".js")) {
            return "text/javascript; charset=utf-8";
        }
        return name.endsWith(".css") ? "text/css; charset=utf-8" : "text/html; charset=utf-8";
    }
}
