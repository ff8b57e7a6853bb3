package dev.lapwright.documents;

import dev.lapwright.fault.Check;
import java.util.List;
import java.util.Map;

/** A JSON value that knows where it stands in its text. */
sealed interface Node {
    /** Where the value begins. */
    Place place();

    /** What it is, for a message: {@code the text 'abc'}. */
    String describe();

    /** Line and column, both from 1. */
    record Place(int line, int column) {
        /** No place. */
        static final Place NONE = new Place(0, 0);
    }

    /** A field of an object; {@code place} is that of its name. */
    record Member(Place place, Node value) {}

    /** An object, its fields in the order of the text. */
    record Obj(Place place, Map<String, Member> members) implements Node {
        @Override
        public String describe() {
            return "an object { … }";
        }
    }

    /** A list. */
    record Arr(Place place, List<Node> items) implements Node {
        @Override
        public String describe() {
            return "a list [ … ]";
        }
    }

    /** A number; NaN if it was too large, which has been reported. */
    record Num(Place place, double value) implements Node {
        @Override
        public String describe() {
            return "the number " + Check.text(value);
        }
    }

    /** A text. */
    record Text(Place place, String value) implements Node {
        private static final int SHOWN = 40;

        @Override
        public String describe() {
            return "the text '" + shown(value) + "'";
        }

        /** A text cut to a length that fits a message, control characters made visible. */
        static String shown(String text) {
            String line = text.replaceAll("\\p{Cntrl}", "?");
            return line.length() <= SHOWN ? line : line.substring(0, SHOWN) + "…";
        }
    }

    /** True or false. */
    record Bool(Place place, boolean value) implements Node {
        @Override
        public String describe() {
            return String.valueOf(value);
        }
    }

    /** Null. */
    record Null(Place place) implements Node {
        @Override
        public String describe() {
            return "null";
        }
    }
}
