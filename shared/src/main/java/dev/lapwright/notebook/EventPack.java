package dev.lapwright.notebook;

import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonReader;
import dev.lapwright.text.JsonValue;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Event in one file, to hand on: every file of its folder with its SHA-256 (FIPS 180-4), the version that packed it, and the answers that this
 * version gave, so that whoever unpacks it can tell that nothing was changed and that the same answers come out.
 *
 * @param version of the program that packed it
 * @param files texts by their names
 * @param answers JSON that the event's report was
 */
public record EventPack(String version, Map<String, String> files, String answers) {
    private static final String MARK = "event-pack/1";

    public EventPack {
        files = Map.copyOf(new LinkedHashMap<>(files));
    }

    /** SHA-256 of a text as UTF-8, in hexadecimal. */
    public static String sha256(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    /** The file's text. */
    public String text() {
        List<Map<String, Object>> rows = new ArrayList<>();
        files.keySet().stream().sorted().forEach(name -> {
            Map<String, Object> row = new LinkedHashMap<>();
            row.put("name", name);
            row.put("sha256", sha256(files.get(name)));
            row.put("text", files.get(name));
            rows.add(row);
        });
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("lapwright", MARK);
        tree.put("version", version);
        tree.put("files", rows);
        tree.put("answersSha256", sha256(answers));
        tree.put("answers", answers);
        return JsonLayout.text(tree);
    }

    /**
     * The pack of a text.
     *
     * @throws DocumentException if it is none, or a file in it is not what it was when it was packed
     */
    public static EventPack read(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        JsonValue root = JsonReader.parse(source, faults);
        faults.throwIfAny();
        if (!MARK.equals(text(root, "lapwright"))) {
            throw new DocumentException(source.name(), "it is no packed event", "pack one with 'lapwright event pack'");
        }
        Map<String, String> files = new LinkedHashMap<>();
        if (member(root, "files") instanceof JsonValue.Arr rows) {
            for (JsonValue row : rows.items()) {
                String name = text(row, "name");
                if (!EventFolder.belongs(name)) {
                    throw new DocumentException(
                            source.name(),
                            "it holds a file that belongs to no event: '" + name + "'",
                            "do not unpack it");
                }
                files.put(name, checked(source, name, text(row, "text"), text(row, "sha256")));
            }
        }
        if (!files.containsKey(EventFolder.EVENT)) {
            throw new DocumentException(source.name(), "it holds no " + EventFolder.EVENT, "pack the event anew");
        }
        String answers = checked(source, "answers", text(root, "answers"), text(root, "answersSha256"));
        return new EventPack(text(root, "version"), files, answers);
    }

    private static String checked(DocumentSource source, String name, String text, String hash) {
        if (!sha256(text).equals(hash)) {
            throw new DocumentException(
                    source.name(),
                    name + " is not what it was when it was packed: its SHA-256 is another",
                    "ask for the file again");
        }
        return text;
    }

    private static JsonValue member(JsonValue of, String name) {
        return of instanceof JsonValue.Obj object && object.members().containsKey(name)
                ? object.members().get(name).value()
                : null;
    }

    private static String text(JsonValue of, String name) {
        return member(of, name) instanceof JsonValue.Text text ? text.value() : "";
    }

    /** Writes all its files into a folder that has none of them, all or none. */
    public EventFolder unpack(Path folder) {
        if (Files.exists(folder.resolve(EventFolder.EVENT))) {
            throw new DocumentException(
                    folder.toString(), "this folder is an event already", "name a folder that is not there yet");
        }
        EventFolder.write(folder, files);
        return EventFolder.of(folder);
    }
}
