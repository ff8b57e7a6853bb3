package dev.lapwright.text;

import dev.lapwright.fault.Check;
import java.util.List;
import java.util.Map;

/** JSON value that knows where it stands in its text. */
public sealed interface JsonValue {
    /** Where the value begins. */
    TextPlace place();

    /** What it is, for a message: {@code the text 'abc'}. */
    String describe();

    /** A field of an object; {@code place} is that of its name. */
    record Member(TextPlace place, JsonValue value) {}

    /** An object, its fields in the order of the text. */
    record Obj(TextPlace place, Map<String, Member> members) implements JsonValue {
        @Override
        public String describe() {
            return "an object { … }";
        }
    }

    /** A list. */
    record Arr(TextPlace place, List<JsonValue> items) implements JsonValue {
        @Override
        public String describe() {
            return "a list [ … ]";
        }
    }

    /** A number; NaN if it was too large, which has been reported. */
    record Num(TextPlace place, double value) implements JsonValue {
        @Override
        public String describe() {
            return "the number " + Check.text(value);
        }
    }

    /** A text. */
    record Text(TextPlace place, String value) implements JsonValue {
        @Override
        public String describe() {
            return "the text '" + Excerpt.of(value) + "'";
        }
    }

    /** True or false. */
    record Bool(TextPlace place, boolean value) implements JsonValue {
        @Override
        public String describe() {
            return String.valueOf(value);
        }
    }

    /** Null. */
    record Null(TextPlace place) implements JsonValue {
        @Override
        public String describe() {
            return "null";
        }
    }
}
