package dev.lapwright.cli.document;

import dev.lapwright.car.Unit;
import dev.lapwright.cli.option.DemoNames;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.Report;
import dev.lapwright.results.circuit.RoadEditReport;
import dev.lapwright.track.Corner;
import dev.lapwright.track.RoadEdit;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code circuit edit}: a circuit corrected by hand. */
@Command(
        name = "edit",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Corrects a circuit by hand: a corner's smallest radius, width or bank, the length of the straight",
            "before it. The rest is refitted: every heading stays, straights change as little as closes the",
            "circuit again. Or says which corners are one, and which are two: the road stays as it is then.",
            "'lapwright circuit show' numbers the corners."
        },
        customSynopsis = "lapwright circuit edit CIRCUIT --out FILE [OPTIONS]",
        parameterListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright circuit edit castelvane --radius T3=45 --bank T3=4 --out mine.json",
            "      The third corner gets 45 m at its apex, and 4 degrees of bank that help it.",
            "  lapwright circuit edit skarnfell --straight 2=160 --width 2=7.5",
            "      Only reports what a straight of 160 m before the second corner does to the rest. --merge T3 tells the",
            "      third corner and the fourth as one, --split T5=1690 the fifth as two that meet at 1690 m."
        })
public final class CircuitEditCommand extends StudyCommand<RoadEditReport> {
    @Parameters(
            index = "0",
            paramLabel = "CIRCUIT",
            completionCandidates = DemoNames.Circuits.class,
            description = "The circuit: a file, or the name of a demo.")
    private String circuit;

    @ArgGroup(validate = false, heading = "%nCorrections, each for a corner by its number or name; may be repeated:%n")
    private final Corrections corrections = new Corrections();

    public static final class Corrections {
        @Option(names = "--radius", paramLabel = "CORNER=METRES", description = "Smallest radius, at its apex.")
        List<String> radii = new ArrayList<>();

        @Option(names = "--width", paramLabel = "CORNER=METRES", description = "Width of the whole road in it.")
        List<String> widths = new ArrayList<>();

        @Option(
                names = "--bank",
                paramLabel = "CORNER=DEGREES",
                description = "Bank at its apex, positive where it helps the corner.")
        List<String> banks = new ArrayList<>();

        @Option(
                names = "--straight",
                paramLabel = "CORNER=METRES",
                description = "Length of the straight before it, from where the corner before ends.")
        List<String> straights = new ArrayList<>();

        @Option(
                names = "--merge",
                paramLabel = "CORNER",
                description =
                        "Tells this corner and the one behind it as one, which bends to the same side. What was split is put"
                                + " together again.")
        List<String> merged = new ArrayList<>();

        @Option(
                names = "--split",
                paramLabel = "CORNER=METRES",
                description = "Tells this corner as two that meet at this distance along the circuit.")
        List<String> split = new ArrayList<>();
    }

    public CircuitEditCommand(Console console) {
        super(
                console,
                new StudyFiles<>(RoadEditReport::report)
                        .text(
                                "circuit.json",
                                told -> DocumentWriter.text(told.edited().track()))
                        .onlyByOption()
                        .option(
                                "--out",
                                "Writes the circuit document to a .json file, by stations; only reports if left out.")
                        .forPeopleAlone());
    }

    private interface Correction {
        RoadEdit make(RoadEdit edit, Corner corner, double value);
    }

    @Override
    public RoadEditReport study() {
        Track track = Documents.circuit(circuit);
        List<Corner> corners = track.stations(StationSpacing.DEFAULT).corners();
        RoadEdit edit = RoadEdit.of(track);
        edit = with(edit, corners, "--straight", corrections.straights, RoadEdit::straightBefore);
        edit = with(edit, corners, "--radius", corrections.radii, RoadEdit::radius);
        edit = with(edit, corners, "--width", corrections.widths, RoadEdit::width);
        edit = with(
                edit,
                corners,
                "--bank",
                corrections.banks,
                (e, corner, bank) -> e.bank(corner, Unit.DEGREE.convert(bank, Unit.RADIAN)));
        edit = with(edit, corners, "--split", corrections.split, RoadEdit::split);
        for (String name : corrections.merged) {
            edit = edit.merged(corner(corners, "--merge", name));
        }
        if (corrections.split.isEmpty()
                && corrections.merged.isEmpty()
                && corrections.radii.isEmpty()
                && corrections.widths.isEmpty()
                && corrections.banks.isEmpty()
                && corrections.straights.isEmpty()) {
            throw new InvalidValueException(
                    "circuit edit", "nothing is to be corrected", "say what, as in --radius T3=45");
        }
        return new RoadEditReport(track, edit.edited());
    }

    @Override
    public Report report(RoadEditReport told) {
        return told.report();
    }

    private static RoadEdit with(
            RoadEdit edit, List<Corner> corners, String option, List<String> texts, Correction correction) {
        RoadEdit made = edit;
        for (String text : texts) {
            int equals = text.lastIndexOf('=');
            String name = equals < 1 ? "" : text.substring(0, equals).strip();
            if (name.isEmpty()) {
                throw new InvalidValueException(
                        option,
                        corners.stream().anyMatch(c -> c.label().equals(text.strip()))
                                ? "'" + text + "' says no value"
                                : "'" + text + "' names no corner",
                        "write it like " + example(option));
            }
            Corner corner = corner(corners, option, name);
            double value = DecimalText.number(text.substring(equals + 1))
                    .orElseThrow(() -> new InvalidValueException(
                            option,
                            "'" + text.substring(equals + 1) + "' is not a number",
                            "write it like " + example(option)));
            try {
                made = correction.make(made, corner, value);
            } catch (InvalidValueException e) {
                // What was wrong is told beside the option that said it, with a value that can be tried.
                throw new InvalidValueException(
                        option + " " + text,
                        e.place() + ": " + e.problem(),
                        option.equals("--split")
                                ? e.remedy()
                                : e.remedy() + ", as in " + option + " " + example(option));
            }
        }
        return made;
    }

    /** A value to try: where a corner is split it is a distance. */
    private static String example(String option) {
        return switch (option) {
            case "--split" -> "T5=1690, the distance at which they meet, m";
            case "--width" -> "T3=12";
            case "--bank" -> "T3=4";
            case "--straight" -> "T3=250";
            default -> "T3=45";
        };
    }

    private static Corner corner(List<Corner> corners, String option, String name) {
        return Corner.find(corners, name)
                .orElseThrow(() -> new InvalidValueException(
                        option,
                        "there is no corner '" + name + "'",
                        corners.isEmpty() ? "this one has none" : "there are T1 to T" + corners.size()));
    }
}
