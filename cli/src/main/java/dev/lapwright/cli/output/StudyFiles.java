package dev.lapwright.cli.output;

import dev.lapwright.charts.ChartException;
import dev.lapwright.charts.Drawing;
import dev.lapwright.charts.ImageSize;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.report.Report;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import picocli.CommandLine.Model.ArgGroupSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * Files that a study's command can write, declared once: from that follow its options for output with their help, what is
 * planned and checked before the work, and what is written after it. All of them go to a folder; one alone to a file, by its
 * ending.
 *
 * @param <R> what the study found, which can say what it is
 */
public final class StudyFiles<R> {
    /** Whether a file is written to a folder, by itself where its ending asks for it, both, or only by an option of its own. */
    private enum Use {
        ANY,
        IN_FOLDER,
        ALONE,
        BY_OPTION
    }

    /**
     * Text that is written bit by bit, so that it need not stand in memory.
     *
     * @param <R> what it is of
     */
    @FunctionalInterface
    private interface Text<R> {
        void write(R result, Appendable out) throws IOException;
    }

    /** One file: its name in a folder, and its content as text or picture. */
    private record Entry<R>(String file, Text<R> text, Function<R, Drawing> drawing, BooleanSupplier wanted, Use use) {
        Entry<R> with(BooleanSupplier condition) {
            return new Entry<>(file, text, drawing, condition, use);
        }

        Entry<R> with(Use other) {
            return new Entry<>(file, text, drawing, wanted, other);
        }

        boolean isAlone() {
            return use == Use.ANY || use == Use.ALONE;
        }

        boolean isInFolder() {
            return use == Use.ANY || use == Use.IN_FOLDER;
        }

        String ending() {
            return file.substring(file.lastIndexOf('.'));
        }

        boolean isNamed(String ending) {
            return Outputs.isNamed(file, ending);
        }
    }

    /** An option of its own for one file: the entries it may take, by the ending of the name given. */
    private record Own<R>(OptionSpec option, List<Entry<R>> entries) {}

    private static final String PICTURE_WIDTH = "--picture-width";

    private final Function<R, Report> report;
    private final List<Entry<R>> entries = new ArrayList<>();
    private final List<Own<R>> own = new ArrayList<>();
    private final List<OptionSpec> options = new ArrayList<>();
    private OptionSpec out;
    private OptionSpec width;
    private Supplier<String> commonName;
    private OptionSpec json = switchOf("--json", "Prints the result for machines, as JSON.");
    private final OptionSpec force = switchOf("--force", "Lets existing files be overwritten.");

    /** @param report what is said of a result */
    public StudyFiles(Function<R, Report> report) {
        this.report = report;
    }

    /** Declares the result as JSON. */
    public StudyFiles<R> json(String file) {
        return add(file, (result, out) -> report.apply(result).json(out));
    }

    /** Declares a table that the report has under this name. */
    public StudyFiles<R> csv(String file) {
        return add(file, (result, out) -> report.apply(result).csv(file, out));
    }

    /** Declares a text that is no part of the report, as a document. */
    public StudyFiles<R> text(String file, Function<R, String> text) {
        return add(file, (result, out) -> out.append(text.apply(result)));
    }

    private StudyFiles<R> add(String file, Text<R> text) {
        entries.add(new Entry<>(file, text, null, () -> true, Use.ANY));
        return this;
    }

    /** Declares a chart; where there is nothing to draw the drawing is null. */
    public StudyFiles<R> chart(String file, Function<R, Drawing> drawing) {
        entries.add(new Entry<>(file, null, drawing, () -> true, Use.ANY));
        return this;
    }

    /** Writes the file declared last to a folder only under a condition, known before the work. */
    public StudyFiles<R> onlyIf(BooleanSupplier condition) {
        return changeLast(entry -> entry.with(condition));
    }

    /** Writes the file declared last to a folder only, never alone. */
    public StudyFiles<R> onlyInFolder() {
        return changeLast(entry -> entry.with(Use.IN_FOLDER));
    }

    /** Writes the file declared last only where it alone is asked for, by its ending or an option, and to no folder. */
    public StudyFiles<R> onlyAlone() {
        return changeLast(entry -> entry.with(Use.ALONE));
    }

    /** Writes the file declared last only where an option of its own asks for it. */
    public StudyFiles<R> onlyByOption() {
        return changeLast(entry -> entry.with(Use.BY_OPTION));
    }

    private StudyFiles<R> changeLast(UnaryOperator<Entry<R>> change) {
        int last = entries.size() - 1;
        entries.set(last, change.apply(entries.get(last)));
        return this;
    }

    /** Gives the chart declared last an option of its own. */
    public StudyFiles<R> option(String name, String description) {
        return option(name, List.of(entries.get(entries.size() - 1)), description);
    }

    /** Gives the table declared last an option of its own, which can also take it as JSON. */
    public StudyFiles<R> option(String name, Function<R, String> json, String description) {
        Entry<R> last = entries.get(entries.size() - 1);
        Text<R> text = (result, out) -> out.append(json.apply(result));
        return option(name, List.of(last, new Entry<>(".json", text, null, () -> true, Use.ANY)), description);
    }

    private StudyFiles<R> option(String name, List<Entry<R>> which, String description) {
        value(name, "FILE", description);
        own.add(new Own<>(options.get(options.size() - 1), which));
        return this;
    }

    /** Adds an option with a text that tells how something is written. */
    public StudyFiles<R> value(String name, String label, String description) {
        options.add(OptionSpec.builder(name)
                .paramLabel(label)
                .type(String.class)
                .description(description)
                .build());
        return this;
    }

    /** Adds a switch that tells how something is written. */
    public StudyFiles<R> flag(String name, String description) {
        options.add(switchOf(name, description));
        return this;
    }

    /** Adds the options that every study has: a folder or file for everything, JSON to the screen, overwriting. */
    public StudyFiles<R> out(String description) {
        out = OptionSpec.builder("--out")
                .paramLabel("FOLDER|FILE")
                .type(String.class)
                .description(description)
                .build();
        options.add(out);
        return this;
    }

    /**
     * Writes all files beside each other under one name, each with the ending under which it was declared: asked or not, and
     * each by itself, so that one that cannot be written leaves the others standing.
     *
     * @param name without ending, where none is given
     */
    public StudyFiles<R> together(Supplier<String> name, String description) {
        commonName = name;
        value("--out", "FILE|FOLDER", description);
        out = options.get(options.size() - 1);
        return this;
    }

    /** Says otherwise what JSON on the screen holds. */
    public StudyFiles<R> onScreen(String description) {
        json = switchOf("--json", description);
        return this;
    }

    /** Leaves out JSON on the screen: what is said is for people alone. */
    public StudyFiles<R> forPeopleAlone() {
        json = null;
        return this;
    }

    /** Adds the options to the command, under a heading. */
    public void addTo(CommandSpec command) {
        ArgGroupSpec.Builder group =
                ArgGroupSpec.builder().heading("%nOutput:%n").validate(false);
        options.forEach(group::addArg);
        if (entries.stream().anyMatch(entry -> entry.drawing() != null)) {
            width = OptionSpec.builder(PICTURE_WIDTH)
                    .paramLabel("PX")
                    .type(Integer.class)
                    .description("Lays pictures out for a page so wide, with letters of the same size: 360 for a phone;"
                            + " 320 to 10000. Most are 1200 px wide.")
                    .build();
            group.addArg(width);
        }
        if (json != null) {
            group.addArg(json);
        }
        command.addArgGroup(group.addArg(force).build());
    }

    private static OptionSpec switchOf(String name, String description) {
        return OptionSpec.builder(name)
                .type(boolean.class)
                .arity("0")
                .description(description)
                .build();
    }

    /** Whether the result goes to the screen as JSON. */
    public boolean isJson() {
        return json != null && Boolean.TRUE.equals(json.getValue());
    }

    /** Whether anything is asked for but text on the screen. */
    public boolean isAnyAsked() {
        return isJson() || options.stream().anyMatch(option -> option.getValue() instanceof String);
    }

    /** What an option was given; null if nothing. */
    public String given(String name) {
        return option(name).getValue();
    }

    /** Whether a switch was given. */
    public boolean isGiven(String name) {
        return Boolean.TRUE.equals(option(name).getValue());
    }

    private OptionSpec option(String name) {
        return options.stream()
                .filter(option -> option.longestName().equals(name))
                .findFirst()
                .orElseThrow();
    }

    /** What is said of a result. */
    public Report report(R result) {
        return report.apply(result);
    }

    /** Where the table or document declared under this name goes; empty if nowhere. */
    public String placeOf(String file) {
        String name = out.getValue();
        if (name == null) {
            return "";
        }
        Entry<R> asked = entries.stream()
                .filter(entry -> entry.file().equals(file))
                .findFirst()
                .orElseThrow();
        Entry<R> alone = alone(name);
        return alone == null ? Path.of(name).resolve(file).toString() : alone.equals(asked) ? name : "";
    }

    /** The one file that the name asks for by its ending; null if it is a folder's. */
    private Entry<R> alone(String name) {
        for (Entry<R> entry : entries) {
            boolean picture = entry.drawing() != null && Outputs.isNamed(name, ".png");
            boolean fits = entry.isAlone() && entry.wanted().getAsBoolean();
            if (fits && (Outputs.isNamed(name, entry.ending()) || picture)) {
                return entry;
            }
        }
        return null;
    }

    /** The width that pictures are laid out for, px; null if their own. */
    private Integer pictureWidth() {
        Integer px = width == null ? null : width.getValue();
        if (px != null) {
            ImageSize.checkWidth(PICTURE_WIDTH, px);
        }
        return px;
    }

    /** Plans and checks all files that were asked for. */
    public Plan plan() {
        Plan plan = new Plan(Boolean.TRUE.equals(force.getValue()));
        for (Own<R> one : own) {
            String name = one.option().getValue();
            if (name != null) {
                plan.alone(one, name);
            }
        }
        String name = out == null ? null : out.getValue();
        if (commonName != null) {
            plan.together(name);
        } else if (name != null) {
            plan.out(name);
        }
        if (pictureWidth() != null && plan.drawings.isEmpty()) {
            throw new InvalidValueException(
                    PICTURE_WIDTH, "no picture is asked for", "add --out with a folder or a name that ends in .svg");
        }
        return plan;
    }

    private String[] endings() {
        List<String> endings = new ArrayList<>();
        for (String ending : List.of(".json", ".csv", ".svg")) {
            if (entries.stream().anyMatch(entry -> entry.isAlone() && entry.isNamed(ending))) {
                endings.add(ending);
            }
        }
        if (endings.contains(".svg")) {
            endings.add(".png");
        }
        return endings.toArray(String[]::new);
    }

    /** Files that will be written. */
    public final class Plan {
        private final Outputs outputs;
        private final Map<Path, Text<R>> texts = new LinkedHashMap<>();
        private final Map<Path, Function<R, Drawing>> drawings = new LinkedHashMap<>();
        private final List<LapwrightException> faults = new ArrayList<>();

        private Plan(boolean overwrite) {
            outputs = new Outputs(overwrite);
        }

        private void alone(Own<R> one, String name) {
            List<String> endings =
                    new ArrayList<>(one.entries().stream().map(Entry::ending).toList());
            if (endings.contains(".svg")) {
                endings.add(".png");
            }
            Outputs.checkEnding(one.option().longestName(), name, endings.toArray(String[]::new));
            Entry<R> entry = one.entries().stream()
                    .filter(candidate -> Outputs.isNamed(name, candidate.ending()))
                    .findFirst()
                    .orElse(one.entries().get(0));
            add(outputs.file(name), entry);
        }

        private void out(String name) {
            Entry<R> alone = StudyFiles.this.alone(name);
            if (alone != null) {
                add(outputs.file(name), alone);
                return;
            }
            Outputs.checkFolder("--out", name, endings());
            for (Entry<R> entry : entries) {
                if (entry.isInFolder() && entry.wanted().getAsBoolean()) {
                    add(outputs.fileIn(name, entry.file()), entry);
                }
            }
        }

        private void together(String given) {
            String first = entries.get(0).ending();
            boolean file = given != null && Outputs.isNamed(given, first);
            if (given != null && !file) {
                Outputs.checkFolder("--out", given, first);
            }
            String name = file ? given.substring(0, given.length() - first.length()) : commonName.get();
            String folder = file ? null : given;
            List<Entry<R>> beside = entries.stream()
                    .filter(entry -> entry.use() != Use.BY_OPTION)
                    .toList();
            for (Entry<R> entry : beside) {
                outputs.refuseExisting(folder, name + entry.ending());
            }
            for (Entry<R> entry : beside) {
                String full = name + entry.ending();
                try {
                    add(folder == null ? outputs.file(full) : outputs.fileIn(folder, full), entry);
                } catch (LapwrightException e) {
                    faults.add(e);
                }
            }
            if (texts.isEmpty()) {
                throw faults.get(0);
            }
        }

        private void add(Path file, Entry<R> entry) {
            if (entry.text() != null) {
                texts.put(file, entry.text());
            } else {
                drawings.put(file, entry.drawing());
            }
        }

        /**
         * Writes all, or none where a text fails that does not stand by itself; a picture that cannot be drawn leaves the
         * others standing.
         */
        public void write(R result) {
            Map<Path, byte[]> pictures = new LinkedHashMap<>();
            drawings.forEach((file, form) -> {
                try {
                    Drawing drawing = form.apply(result);
                    if (drawing != null) {
                        Integer px = pictureWidth();
                        Drawing laidOut = px == null ? drawing : drawing.forWidth(px);
                        pictures.put(file, laidOut.forFile(file.getFileName().toString()));
                    }
                } catch (ChartException e) {
                    faults.add(e);
                }
            });
            texts.forEach((file, text) -> {
                try {
                    outputs.write(file, out -> text.write(result, out));
                    if (commonName != null) {
                        outputs.commit();
                    }
                } catch (LapwrightException e) {
                    if (commonName == null) {
                        throw e;
                    }
                    faults.add(e);
                }
            });
            pictures.forEach(outputs::write);
            outputs.commit();
        }

        /** Says what could not be drawn or written, after everything else. */
        public void throwIfAny() {
            if (!faults.isEmpty()) {
                throw faults.get(0);
            }
        }

        /** Says what was written, and what was not beyond the first, with which {@link #throwIfAny()} ends. */
        public void report(Console console) {
            outputs.report(console, isJson());
            faults.stream().skip(1).forEach(fault -> console.remark("lapwright: " + fault.getMessage()));
        }
    }
}
