package dev.lapwright.cli.bench;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonReader;
import dev.lapwright.text.JsonValue;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Fields of a JSON object that was sent, each looked at before it is believed. */
final class Fields {
    private static final int LONGEST_TEXT = 200;
    private static final int LONGEST_ENTRY = 4000;

    private final String place;
    private final Map<String, JsonValue.Member> members;

    private Fields(String place, JsonValue value) {
        this.place = place;
        if (!(value instanceof JsonValue.Obj object)) {
            throw new InvalidValueException(place, value.describe() + " is not an object", "write { … }");
        }
        members = object.members();
    }

    /**
     * The object of a text.
     *
     * @param name what it is, for messages
     * @throws dev.lapwright.fault.LapwrightException if it is not JSON, or no object
     */
    static Fields of(String name, String text) {
        FaultList faults = new FaultList(name);
        JsonValue value = JsonReader.parse(new DocumentSource(name, text), faults);
        faults.throwIfAny();
        return new Fields(name, value);
    }

    private String at(String name) {
        return place + "." + name;
    }

    private JsonValue value(String name) {
        JsonValue.Member member = members.get(name);
        return member == null || member.value() instanceof JsonValue.Null ? null : member.value();
    }

    /** Refuses what nobody reads: a name mistyped would be passed over in silence. */
    Fields only(Set<String> names) {
        for (String name : members.keySet()) {
            if (!names.contains(name)) {
                throw new InvalidValueException(at(name), "nothing of that name is known here", "leave it out");
            }
        }
        return this;
    }

    boolean has(String name) {
        return value(name) != null;
    }

    /** A text; the standard one if it is missing. */
    String text(String name, String standard) {
        return text(name, standard, LONGEST_TEXT);
    }

    /** What somebody has written into a field of a form; empty if it is missing. */
    String entry(String name) {
        return text(name, "", LONGEST_ENTRY).strip();
    }

    /** The text of a file. */
    String document(String name) {
        return text(name, "", Guard.MOST_LOG_BYTES);
    }

    private String text(String name, String standard, int longest) {
        JsonValue value = value(name);
        if (value == null) {
            return standard;
        }
        if (!(value instanceof JsonValue.Text text)) {
            throw new InvalidValueException(at(name), value.describe() + " is not a text", "write it in quotes");
        }
        if (text.value().length() > longest) {
            throw new InvalidValueException(
                    at(name), text.value().length() + " characters are too many", "use at most " + longest);
        }
        return text.value();
    }

    /** A number within a range; the standard one if it is missing. */
    double number(String name, double standard, double least, double most) {
        JsonValue value = value(name);
        return value == null ? standard : Check.inRange(at(name), number(at(name), value), least, most);
    }

    private static double number(String at, JsonValue value) {
        if (!(value instanceof JsonValue.Num number)) {
            throw new InvalidValueException(at, value.describe() + " is not a number", "write a number");
        }
        return Check.finite(at, number.value());
    }

    /** Numbers by name; empty if there are none. */
    Map<String, Double> numbers(String name, int most) {
        Map<String, Double> numbers = new LinkedHashMap<>();
        if (has(name)) {
            Fields inner = object(name);
            if (inner.members.size() > most) {
                throw new InvalidValueException(
                        at(name), inner.members.size() + " are too many", "name at most " + most);
            }
            inner.members.forEach((key, member) -> numbers.put(key, number(inner.at(key), member.value())));
        }
        return numbers;
    }

    /** Texts by name, as they were written into the fields of a form. */
    Map<String, String> entries(int most) {
        if (members.size() > most) {
            throw new InvalidValueException(place, members.size() + " are too many", "name at most " + most);
        }
        Map<String, String> texts = new LinkedHashMap<>();
        members.keySet().forEach(name -> texts.put(name, entry(name)));
        return texts;
    }

    /** An object within; an empty one if it is missing. */
    Fields object(String name) {
        JsonValue value = value(name);
        return value == null ? of(at(name), "{}") : new Fields(at(name), value);
    }

    /** Objects of a list; none if it is missing. */
    List<Fields> objects(String name, int most) {
        JsonValue value = value(name);
        if (value == null) {
            return List.of();
        }
        if (!(value instanceof JsonValue.Arr list)) {
            throw new InvalidValueException(at(name), value.describe() + " is not a list", "write [ … ]");
        }
        if (list.items().size() > most) {
            throw new InvalidValueException(at(name), list.items().size() + " are too many", "keep at most " + most);
        }
        List<Fields> objects = new ArrayList<>();
        for (int i = 0; i < list.items().size(); i++) {
            objects.add(new Fields(at(name) + "[" + i + "]", list.items().get(i)));
        }
        return objects;
    }

    /** Texts of a list; none if it is missing. */
    List<String> texts(String name, int most) {
        JsonValue value = value(name);
        if (value == null) {
            return List.of();
        }
        if (!(value instanceof JsonValue.Arr list)) {
            throw new InvalidValueException(at(name), value.describe() + " is not a list", "write [ … ]");
        }
        if (list.items().size() > most) {
            throw new InvalidValueException(at(name), list.items().size() + " are too many", "keep at most " + most);
        }
        List<String> texts = new ArrayList<>();
        for (JsonValue item : list.items()) {
            if (!(item instanceof JsonValue.Text text) || text.value().length() > LONGEST_TEXT) {
                throw new InvalidValueException(at(name), item.describe() + " is no short text", "write it in quotes");
            }
            texts.add(text.value());
        }
        return texts;
    }
}
