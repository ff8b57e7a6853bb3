package dev.lapwright.files;

/**
 * Fault of a document: where, what is wrong, what to do.
 *
 * @param kind what sort of fault it is
 * @param path of the field as in {@code segments[3].radiusM}, counted from 0 (RFC 9535 without the leading {@code
 *     $.}); empty for the document as a whole
 * @param line from 1; 0 if there is none
 * @param column from 1; 0 if there is none
 * @param problem what is wrong, with the value, its unit and the allowed range
 * @param remedy what to do; may be empty
 */
public record DocumentFault(Kind kind, String path, int line, int column, String problem, String remedy) {

    /** Sorts of fault. */
    public enum Kind {
        /** The text is not JSON. */
        SYNTAX,
        /** A field is unknown, missing, of the wrong type or out of range: what the JSON Schema also says. */
        FORM,
        /** Fields do not make sense together, as a circuit that does not close: beyond a schema. */
        MEANING
    }

    /** Line and field, as far as they are known. */
    public String place() {
        StringBuilder place = new StringBuilder();
        if (line > 0) {
            place.append("line ").append(line);
            if (kind == Kind.SYNTAX) {
                place.append(", column ").append(column);
            }
        }
        if (!path.isEmpty()) {
            place.append(place.length() > 0 ? ", " : "").append(path);
        }
        return place.toString();
    }

    /** Problem and remedy in one line. */
    String text() {
        return remedy.isEmpty() ? problem : problem + "; " + remedy;
    }
}
