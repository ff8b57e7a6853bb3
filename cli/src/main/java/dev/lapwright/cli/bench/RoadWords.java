package dev.lapwright.cli.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/** Words of the import as the page of a circuit says them: what a command is told by an option has a field there, or is the command's alone. */
final class RoadWords {
    private static final Map<Pattern, String> FIELDS = fields();

    private RoadWords() {}

    private static Map<Pattern, String> fields() {
        Map<Pattern, String> fields = new LinkedHashMap<>();
        fields.put(Pattern.compile("say --figure-of-eight"), "tick 'meant to cross itself'");
        fields.put(Pattern.compile("with --open"), "with 'closed' not ticked");
        fields.put(Pattern.compile("--accuracy-m ([0-9.]+)"), "$1 in 'points err by'");
        fields.put(Pattern.compile("--smoothing ([0-9.]+)"), "$1 in 'smooth waves of'");
        fields.put(Pattern.compile("\\(--width-m\\)"), "(the field 'width')");
        // What has no field here.
        fields.put(
                Pattern.compile("(--[a-z][a-z-]*(?: [A-Za-z0-9_.]+(?:=[A-Z]+)?(?::[a-z/]+)?)?)(?! of 'lapwright)"),
                "$1 of 'lapwright circuit import'");
        return fields;
    }

    /** A text with the fields of the page in the place of options. */
    static String on(String text) {
        String told = text;
        for (Map.Entry<Pattern, String> field : FIELDS.entrySet()) {
            told = field.getKey().matcher(told).replaceAll(field.getValue());
        }
        return told;
    }

    /** Blocks of a report likewise. */
    static List<Map<String, Object>> on(List<Map<String, Object>> blocks) {
        List<Map<String, Object>> told = new ArrayList<>();
        for (Map<String, Object> block : blocks) {
            Map<String, Object> other = new LinkedHashMap<>(block);
            other.computeIfPresent("text", (key, text) -> on(text.toString()));
            told.add(other);
        }
        return told;
    }
}
