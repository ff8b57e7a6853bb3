package dev.lapwright.cli.bench;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The page as one file that needs no server: what was answered lies within it, and its modules are given as addresses that hold
 * their text. It asks for nothing, and a content policy with the sums of its own scripts keeps others out.
 */
final class FrozenPage {
    private static final String PREFIX = "bench/";

    private FrozenPage() {}

    /**
     * @param files of the page
     * @param messages what the page would have been answered, in order
     */
    static String html(PageFiles files, List<? extends Map<String, ?>> messages) {
        Map<String, Object> imports = new LinkedHashMap<>();
        for (String module : PageFiles.MODULES) {
            String text = files.text(module).replace("from \"./", "from \"" + PREFIX);
            imports.put(
                    PREFIX + module,
                    "data:text/javascript;base64,"
                            + Base64.getEncoder().encodeToString(text.getBytes(StandardCharsets.UTF_8)));
        }
        String map = Wire.text(Map.of("imports", imports));
        String start = "import \"" + PREFIX + "main.js\";";
        String style = files.text(PageFiles.STYLE);
        String policy = "default-src 'none'; base-uri 'none'; form-action 'none'; img-src data:; style-src "
                + sum(style) + "; script-src data: " + sum(map) + " " + sum(start);
        String page = files.text(PageFiles.PAGE);
        String head = "<meta http-equiv=\"Content-Security-Policy\" content=\"" + policy + "\">\n<style>" + style
                + "</style>\n<script type=\"importmap\">" + map + "</script>";
        String end = "<script type=\"application/json\" id=\"frozen\">" + Wire.text(Map.of("messages", messages))
                + "</script>\n<script type=\"module\">" + start + "</script>";
        return replaced(replaced(page, "head", head), "body", end);
    }

    /** The page with what stands between two remarks exchanged. */
    private static String replaced(String page, String part, String text) {
        String begin = "<!-- served " + part + " -->";
        String end = "<!-- end -->";
        int from = page.indexOf(begin);
        int to = page.indexOf(end, from);
        return page.substring(0, from) + text + page.substring(to + end.length());
    }

    private static String sum(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return "'sha256-" + Base64.getEncoder().encodeToString(digest) + "'";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
