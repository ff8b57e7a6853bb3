package dev.lapwright.cli.page;

import dev.lapwright.report.Table;
import dev.lapwright.report.UnitSystem;
import java.util.List;
import java.util.Objects;

/**
 * Page for people: what stands on it, as texts ready to print.
 *
 * @param title the heading, and the document's title
 * @param sheets what is read first, and printed: a sheet of paper each
 * @param sections what is behind it, folded, in the order to read them; printed where unfolded
 * @param footer where it comes from
 */
public record Page(String title, List<Sheet> sheets, List<Section> sections, String footer) {
    public Page {
        Objects.requireNonNull(title, "title");
        sheets = List.copyOf(sheets);
        sections = List.copyOf(sections);
        Objects.requireNonNull(footer, "footer");
    }

    /** The same with its tables in other units; running text is put into them where it is written. */
    Page in(UnitSystem units) {
        return new Page(
                title,
                sheets.stream()
                        .map(sheet -> new Sheet(
                                sheet.id(),
                                sheet.heading(),
                                sheet.facts(),
                                sheet.bands().stream()
                                        .map(band -> new Band(in(units, band.blocks()), in(units, band.beside())))
                                        .toList()))
                        .toList(),
                sections.stream()
                        .map(section -> new Section(
                                section.id(), section.heading(), section.reading(), in(units, section.blocks())))
                        .toList(),
                footer);
    }

    private static List<Block> in(UnitSystem units, List<Block> blocks) {
        return blocks.stream()
                .map(block -> block.table() == null
                        ? block
                        : Block.table(block.table().in(units)))
                .toList();
    }

    /**
     * Sheet of paper.
     *
     * @param id for links: lower-case letters and hyphens
     * @param heading what it is called
     * @param facts what it is about, in a few words each
     * @param bands one under the other
     */
    public record Sheet(String id, String heading, List<Fact> facts, List<Band> bands) {
        public Sheet {
            facts = List.copyOf(facts);
            bands = List.copyOf(bands);
        }
    }

    /**
     * Band of a sheet: blocks over its whole width, or in two columns where there is room.
     *
     * @param blocks to the left
     * @param beside to the right; empty where the others take the whole width
     */
    public record Band(List<Block> blocks, List<Block> beside) {
        public Band {
            blocks = List.copyOf(blocks);
            beside = List.copyOf(beside);
        }

        /** One over the whole width. */
        public static Band of(Block... blocks) {
            return new Band(List.of(blocks), List.of());
        }

        /** Whether it has two columns. */
        public boolean parted() {
            return !beside.isEmpty();
        }
    }

    /**
     * Fact at the head of a page: a name and what is said under it.
     *
     * @param name as in {@code Conditions}
     * @param text what it is
     */
    public record Fact(String name, String text) {}

    /**
     * Section of a page under its own heading.
     *
     * @param id for links: lower-case letters and hyphens
     * @param heading what it is called
     * @param reading one sentence on what it is and how to read it
     * @param blocks what it holds
     */
    public record Section(String id, String heading, String reading, List<Block> blocks) {
        public Section {
            blocks = List.copyOf(blocks);
        }
    }

    /**
     * Block of a section, such as a table or a drawing; all components but one are null.
     *
     * @param paragraph running text
     * @param subheading the heading of what follows
     * @param list points
     * @param table a table
     * @param figure a drawing
     * @param missing what could not be found
     * @param terms words and what they mean
     * @param gauges shares of a whole, drawn as bars
     * @param cautions what to mind before acting on it
     */
    public record Block(
            String paragraph,
            String subheading,
            List<String> list,
            LaidTable table,
            Figure figure,
            Missing missing,
            List<Fact> terms,
            List<Share> gauges,
            List<String> cautions) {

        /** Running text. */
        public static Block paragraph(String text) {
            return new Block(text, null, null, null, null, null, null, null, null);
        }

        /** The heading of what follows. */
        public static Block subheading(String text) {
            return new Block(null, text, null, null, null, null, null, null, null);
        }

        /** Points, at least one. */
        public static Block list(List<String> points) {
            return new Block(null, null, List.copyOf(points), null, null, null, null, null, null);
        }

        /** Rows of a table. */
        public static <R> Block table(Table<R> table, Iterable<R> rows) {
            return table(LaidTable.of(table, rows));
        }

        private static Block table(LaidTable table) {
            return new Block(null, null, null, table, null, null, null, null, null);
        }

        /** A drawing. */
        public static Block figure(Figure figure) {
            return new Block(null, null, null, null, figure, null, null, null, null);
        }

        /** What could not be found, and what to do. */
        public static Block missing(String problem, String remedy) {
            return new Block(null, null, null, null, null, new Missing(problem, remedy), null, null, null);
        }

        /** Words and what they mean. */
        public static Block terms(List<Fact> terms) {
            return new Block(null, null, null, null, null, null, List.copyOf(terms), null, null);
        }

        /** What to mind before acting on it. */
        public static Block cautions(List<String> cautions) {
            return new Block(null, null, null, null, null, null, null, null, List.copyOf(cautions));
        }

        /** Shares of a whole. */
        public static Block shares(List<Share> shares) {
            return new Block(null, null, null, null, null, null, null, List.copyOf(shares), null);
        }
    }

    /**
     * Drawing.
     *
     * @param wide an SVG element for pages with room, and for paper
     * @param narrow one for small screens; null where the wide one is left out there
     * @param tall whether it needs more height than half a sheet of paper
     * @param caption what it shows and how to read it
     */
    public record Figure(String wide, String narrow, boolean tall, String caption) {}

    /**
     * Share of a whole.
     *
     * @param name of what
     * @param text the share with its unit
     * @param from where its bar begins in percent of the widest, as CSS takes it
     * @param width of its bar likewise
     */
    public record Share(String name, String text, String from, String width) {}

    /**
     * Note in the place of a result that could not be found.
     *
     * @param problem why, a sentence
     * @param remedy what to do, a sentence
     */
    public record Missing(String problem, String remedy) {}

    /**
     * Cell of a table.
     *
     * @param label of its column, for screens too narrow for columns
     * @param text what it says
     * @param style its classes; empty for none
     * @param kind what it is
     */
    public record Cell(String label, String text, String style, Kind kind) {
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
}
