package dev.lapwright.cli.page;

/**
 * A cell of a table.
 *
 * @param label of its column, for screens too narrow for columns
 * @param text what it says
 * @param number whether it is a number, set to the right
 * @param head whether it names its row
 * @param blank whether it is left empty to be written in by hand
 * @param box whether it is a box to tick
 */
public record PageCell(String label, String text, boolean number, boolean head, boolean blank, boolean box) {
    /** Whether it says something: neither blank nor a box. */
    public boolean told() {
        return !blank && !box;
    }
}
