package dev.lapwright.cli;

import dev.lapwright.charts.Drawing;
import dev.lapwright.report.Report;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
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
final class StudyFiles<R> {
    /** Whether a file is written to a folder, by itself where its ending asks for it, or both. */
    private enum Use {
        ANY,
        IN_FOLDER,
        ALONE
    }

    /** One file: its name in a folder, and its content as text or picture. */
    private record Entry<R>(
            String file, Function<R, String> text, Function<R, Drawing> drawing, BooleanSupplier wanted, Use use) {
        Entry<R> with(BooleanSupplier condition) {
            return new Entry<>(file, text, drawing, condition, use);
        }

        Entry<R> with(Use other) {
            return new Entry<>(file, text, drawing, wanted, other);
        }

        boolean isNamed(String ending) {
            return Outputs.isNamed(file, ending);
        }
    }

    /** An option of its own for one file: the entries it may take, by the ending of the name given. */
    private record Own<R>(OptionSpec option, List<Entry<R>> entries) {}

    private final Function<R, Report> report;
    private final List<Entry<R>> entries = new ArrayList<>();
    private final List<Own<R>> own = new ArrayList<>();
    private final List<OptionSpec> options = new ArrayList<>();
    private OptionSpec out;
    private OptionSpec json;
    private OptionSpec force;

    /** @param report what is said of a result */
    StudyFiles(Function<R, Report> report) {
        this.report = report;
    }

    /** Declares the result as JSON. */
    StudyFiles<R> json(String file) {
        return text(file, result -> report.apply(result).json());
    }

    /** Declares a table that the report has under this name. */
    StudyFiles<R> csv(String file) {
        return text(file, result -> {
            StringBuilder text = new StringBuilder();
            try {
                report.apply(result).csv(file, text);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            return text.toString();
        });
    }

    /** Declares a text that is no part of the report, as a document. */
    StudyFiles<R> text(String file, Function<R, String> text) {
        entries.add(new Entry<>(file, text, null, () -> true, Use.ANY));
        return this;
    }

    /** Declares a chart; where there is nothing to draw the drawing is null. */
    StudyFiles<R> chart(String file, Function<R, Drawing> drawing) {
        entries.add(new Entry<>(file, null, drawing, () -> true, Use.ANY));
        return this;
    }

    /** Writes the file declared last to a folder only under a condition, known before the work. */
    StudyFiles<R> onlyIf(BooleanSupplier condition) {
        return changeLast(entry -> entry.with(condition));
    }

    /** Writes the file declared last to a folder only, never alone. */
    StudyFiles<R> onlyInFolder() {
        return changeLast(entry -> entry.with(Use.IN_FOLDER));
    }

    /** Writes the file declared last only where it alone is asked for, by its ending or an option, and to no folder. */
    StudyFiles<R> onlyAlone() {
        return changeLast(entry -> entry.with(Use.ALONE));
    }

    private StudyFiles<R> changeLast(UnaryOperator<Entry<R>> change) {
        int last = entries.size() - 1;
        entries.set(last, change.apply(entries.get(last)));
        return this;
    }

    /** Gives the chart declared last an option of its own. */
    StudyFiles<R> option(String name, String description) {
        return option(name, List.of(entries.get(entries.size() - 1)), description);
    }

    /** Gives the table declared last an option of its own, which can also take it as JSON. */
    StudyFiles<R> option(String name, Function<R, String> json, String description) {
        Entry<R> last = entries.get(entries.size() - 1);
        return option(name, List.of(last, new Entry<>(".json", json, null, () -> true, Use.ANY)), description);
    }

    private StudyFiles<R> option(String name, List<Entry<R>> which, String description) {
        OptionSpec option = OptionSpec.builder(name)
                .paramLabel("FILE")
                .type(String.class)
                .description(description)
                .build();
        options.add(option);
        own.add(new Own<>(option, which));
        return this;
    }

    /** Adds the options that every study has: a folder or file for everything, JSON to the screen, overwriting. */
    StudyFiles<R> out(String description) {
        out = OptionSpec.builder("--out")
                .paramLabel("FOLDER|FILE")
                .type(String.class)
                .description(description)
                .build();
        options.add(out);
        return this;
    }

    /** Adds the options to the command, under a heading. */
    void addTo(CommandSpec command) {
        json = flag("--json", "Prints the result for machines, as JSON.");
        force = flag("--force", "Lets existing files be overwritten.");
        ArgGroupSpec.Builder group =
                ArgGroupSpec.builder().heading("%nOutput:%n").validate(false);
        options.forEach(group::addArg);
        command.addArgGroup(group.addArg(json).addArg(force).build());
    }

    private static OptionSpec flag(String name, String description) {
        return OptionSpec.builder(name)
                .type(boolean.class)
                .arity("0")
                .description(description)
                .build();
    }

    /** Whether the result goes to the screen as JSON. */
    boolean isJson() {
        return Boolean.TRUE.equals(json.getValue());
    }

    /** What an option was given; null if nothing. */
    String given(String name) {
        return options.stream()
                .filter(option -> option.longestName().equals(name))
                .findFirst()
                .orElseThrow()
                .getValue();
    }

    /** Where the table or document declared under this name goes; empty if nowhere. */
    String placeOf(String file) {
        String name = out.getValue();
        if (name == null) {
            return "";
        }
        Entry<R> asked = entries.stream()
                .filter(entry -> entry.file().equals(file))
                .findFirst()
                .orElseThrow();
        Entry<R> alone = alone(name);
        return alone == null ? Path.of(name).resolve(file).toString() : alone == asked ? name : "";
    }

    /** The one file that the name asks for by its ending; null if it is a folder's. */
    private Entry<R> alone(String name) {
        for (Entry<R> entry : entries) {
            String ending = entry.file().substring(entry.file().lastIndexOf('.'));
            boolean picture = entry.drawing() != null && Outputs.isNamed(name, ".png");
            boolean fits = entry.use() != Use.IN_FOLDER && entry.wanted().getAsBoolean();
            if (fits && (Outputs.isNamed(name, ending) || picture)) {
                return entry;
            }
        }
        return null;
    }

    /** Plans and checks all files that were asked for. */
    Plan plan() {
        Plan plan = new Plan(Boolean.TRUE.equals(force.getValue()));
        for (Own<R> one : own) {
            String name = one.option().getValue();
            if (name != null) {
                plan.alone(one, name);
            }
        }
        String name = out == null ? null : out.getValue();
        if (name != null) {
            plan.out(name);
        }
        return plan;
    }

    private String[] endings() {
        List<String> endings = new ArrayList<>();
        for (String ending : List.of(".json", ".csv", ".svg")) {
            if (entries.stream().anyMatch(entry -> entry.use() != Use.IN_FOLDER && entry.isNamed(ending))) {
                endings.add(ending);
            }
        }
        if (endings.contains(".svg")) {
            endings.add(".png");
        }
        return endings.toArray(String[]::new);
    }

    /** Files that will be written. */
    final class Plan {
        private final Outputs outputs;
        private final Map<Path, Function<R, String>> texts = new LinkedHashMap<>();
        private final Map<Path, Function<R, Drawing>> drawings = new LinkedHashMap<>();

        private Plan(boolean overwrite) {
            outputs = new Outputs(overwrite);
        }

        private void alone(Own<R> one, String name) {
            boolean picture = one.entries().get(0).drawing() != null;
            String[] endings = picture ? new String[] {".svg", ".png"} : new String[] {".csv", ".json"};
            Outputs.checkEnding(one.option().longestName(), name, endings);
            Entry<R> entry = picture || Outputs.isNamed(name, ".csv")
                    ? one.entries().get(0)
                    : one.entries().get(1);
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
                if (entry.use() != Use.ALONE && entry.wanted().getAsBoolean()) {
                    add(outputs.fileIn(name, entry.file()), entry);
                }
            }
        }

        private void add(Path file, Entry<R> entry) {
            if (entry.text() != null) {
                texts.put(file, entry.text());
            } else {
                drawings.put(file, entry.drawing());
            }
        }

        /** Makes everything first and writes it then, so that a fault in one leaves none behind. */
        void write(R result) {
            Map<Path, String> madeTexts = new LinkedHashMap<>();
            texts.forEach((file, form) -> madeTexts.put(file, form.apply(result)));
            Map<Path, byte[]> madePictures = new LinkedHashMap<>();
            drawings.forEach((file, form) -> {
                Drawing drawing = form.apply(result);
                if (drawing != null) {
                    madePictures.put(file, drawing.forFile(file.getFileName().toString()));
                }
            });
            madeTexts.forEach(outputs::write);
            madePictures.forEach(outputs::write);
        }

        /** Says what was written. */
        void report(Console console) {
            outputs.report(console, isJson());
        }
    }
}
