package dev.lapwright.cli.page;

/**
 * A cell of a table.
 *
 * @param label of its column, for screens too narrow for columns
 * @param text what it says
 * @param style its classes; empty for none
 * @param kind what it is
 */
public record PageCell(String label, String text, String style, Kind kind) {
    /** What a cell is. */
    public enum Kind {
        /** Something is said. */
        TOLD,
        /** It names its row. */
        HEAD,
        /** Left empty to be written in by hand. */
        BLANK,
        /** A box to tick. */
        BOX
    }

    /** Whether it names its row. */
    public boolean head() {
        return kind == Kind.HEAD;
    }

    /** Whether it is left empty to be written in by hand. */
    public boolean blank() {
        return kind == Kind.BLANK;
    }

    /** Whether it is a box to tick. */
    public boolean box() {
        return kind == Kind.BOX;
    }

    /** Whether it says something and does not name its row. */
    public boolean told() {
        return kind == Kind.TOLD;
    }
}
