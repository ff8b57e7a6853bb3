package dev.lapwright.cli.document;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.StudyFiles;
import dev.lapwright.cli.output.Terminal;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.draft.CarDraft;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.Report;
import dev.lapwright.results.car.CarDraftReport;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Command {@code car new}: a car document drafted from the answers to ten questions. */
@Command(
        name = "new",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Drafts a whole car document from the answers to ten questions. What is not answered is guessed",
            "from classes of tyres, bodies and engines, and stands with a doubt; what follows from the",
            "answers is reckoned, so that gears, power, drag and brakes agree. Answers that contradict each",
            "other are refused. On a terminal, questions without an option are asked in turn."
        },
        customSynopsis = "lapwright car new NAME [--mass KG] ... [--brakes G] --out FILE [OPTIONS]",
        parameterListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright car new \"Brindle 200\" --mass 1045 --driven front --power 147kW@7100 \\",
            "      --tyres 205/50R15,track --wheelbase 2.47 --front-weight 61 --downforce none \\",
            "      --gears 3.15,2.05,1.48,1.16,0.96,0.82:4.06 --top-speed 235 --brakes 1.0g --out mine.json",
            "      A road car on track tyres; then: lapwright lap mine.json harrowmere",
            "  lapwright car new Mine --out mine.json",
            "      Asks the ten questions."
        })
public final class CarNewCommand extends StudyCommand<CarDraftReport> {
    private final Supplier<Optional<BufferedReader>> person;

    @Parameters(index = "0", paramLabel = "NAME", description = "Name of the car.")
    private String name;

    @ArgGroup(validate = false, heading = "%nThe ten questions; ? or nothing where it may stay open:%n")
    private final Given given = new Given();

    /** The answers as texts. */
    public static final class Given {
        @Option(
                names = "--mass",
                paramLabel = "KG",
                description = "1: mass with driver, without fuel; 1045, 1045kg or 2304lb.")
        String mass;

        @Option(names = "--driven", paramLabel = "WHEELS", description = "2: front, rear or all.")
        String driven;

        @Option(
                names = "--power",
                paramLabel = "KW@RPM",
                description =
                        "3: power at the engine and the engine speed of it; 147kW@7100, 200PS@7100 or 197hp@7100, with"
                                + " ,turbo or ,electric behind.")
        String power;

        @Option(
                names = "--tyres",
                paramLabel = "SIZE,KIND",
                description =
                        "4: size as on the side wall, or the width in mm, and kind: road, track, slick or soft-slick;"
                                + " 205/50R15,track; front and rear: 300/680-18,310/710-18,slick.")
        String tyres;

        @Option(names = "--wheelbase", paramLabel = "M", description = "5: 2.47, 2470mm or 97.2in; may stay open.")
        String wheelbase;

        @Option(
                names = "--front-weight",
                paramLabel = "PERCENT",
                description = "6: share of the weight on the front axle; may stay open.")
        String frontWeight;

        @Option(
                names = "--downforce",
                paramLabel = "CLASS",
                description =
                        "7: none (a road car's body), open (an open car without wings), small (a touring car's), large"
                                + " (splitter, floor and a large wing) or wings (open wheels with wings and floor).")
        String downforce;

        @Option(
                names = "--gears",
                paramLabel = "RATIOS:FINAL",
                description =
                        "8: gear ratios and final drive, 3.15,2.05,1.48,1.16:4.06; or how many gears, 6 or 6:4.06.")
        String gears;

        @Option(
                names = "--top-speed",
                paramLabel = "KMH",
                description =
                        "9: 235 or 146mph, on the flat without a tow; with ,limiter behind where the rev limiter stops"
                                + " the car.")
        String topSpeed;

        @Option(
                names = "--brakes",
                paramLabel = "G",
                description = "10: the hardest stop from 100 km/h; 1.05g, or 37m for its length; may stay open.")
        String brakes;

        private Map<CarQuestion, String> texts() {
            Map<CarQuestion, String> texts = new EnumMap<>(CarQuestion.class);
            texts.put(CarQuestion.MASS, mass);
            texts.put(CarQuestion.DRIVEN, driven);
            texts.put(CarQuestion.POWER, power);
            texts.put(CarQuestion.TYRES, tyres);
            texts.put(CarQuestion.WHEELBASE, wheelbase);
            texts.put(CarQuestion.FRONT_WEIGHT, frontWeight);
            texts.put(CarQuestion.DOWNFORCE, downforce);
            texts.put(CarQuestion.GEARS, gears);
            texts.put(CarQuestion.TOP_SPEED, topSpeed);
            texts.put(CarQuestion.BRAKES, brakes);
            return texts;
        }
    }

    public CarNewCommand(Console console) {
        this(
                console,
                () -> Terminal.isInput() && console.errIsTerminal()
                        ? Optional.of(new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)))
                        : Optional.empty());
    }

    /** @param person who answers what no option does; empty where nobody is there */
    CarNewCommand(Console console, Supplier<Optional<BufferedReader>> person) {
        super(
                console,
                new StudyFiles<>(CarDraftReport::report)
                        .text(
                                "car.json",
                                told -> DocumentWriter.text(told.draft().car()))
                        .onlyByOption()
                        .option("--out", "Writes the car document to a .json file; only reports if left out."));
        this.person = person;
    }

    @Override
    public CarDraftReport study() {
        String checked = Documents.checkedName("NAME", name);
        Map<CarQuestion, String> texts = given.texts();
        List<CarQuestion> open = Arrays.stream(CarQuestion.values())
                .filter(question -> texts.get(question) == null)
                .toList();
        Optional<BufferedReader> answering = open.isEmpty() ? Optional.empty() : person.get();
        if (answering.isEmpty()) {
            refuseMissing(texts);
            return new CarDraftReport(CarDraft.of(CarQuestion.answers(checked, texts::get)));
        }
        return asked(checked, texts, open, answering.get());
    }

    private static void refuseMissing(Map<CarQuestion, String> texts) {
        String missing = Arrays.stream(CarQuestion.values())
                .filter(question -> !question.mayBeOpen() && CarQuestion.isOpen(texts.get(question)))
                .map(CarQuestion::option)
                .collect(Collectors.joining(", "));
        if (!missing.isEmpty()) {
            throw new InvalidValueException(
                    "car new", "there is no answer to " + missing, "give them; 'lapwright car new --help' tells how");
        }
    }

    /** Asks for what is open, and again for what contradicts itself, until it goes together or nobody answers any more. */
    private CarDraftReport asked(
            String checked, Map<CarQuestion, String> texts, List<CarQuestion> open, BufferedReader answering) {
        List<CarQuestion> asking = open;
        while (true) {
            for (CarQuestion question : asking) {
                texts.put(question, answer(question, answering));
            }
            try {
                return new CarDraftReport(CarDraft.of(CarQuestion.answers(checked, texts::get)));
            } catch (InvalidValueException contradiction) {
                asking = Arrays.stream(CarQuestion.values())
                        .filter(question -> contradiction.place().contains(question.title()))
                        .toList();
                if (asking.isEmpty()) {
                    throw contradiction;
                }
                console.remark(contradiction.getMessage());
            }
        }
    }

    private String answer(CarQuestion question, BufferedReader answering) {
        while (true) {
            console.progress(
                    (question.ordinal() + 1) + " of " + CarQuestion.values().length + "  " + question.asking() + ": ");
            String line = line(answering);
            if (line == null) {
                throw new InvalidValueException(
                        question.option(), "nobody answers any more", "answer all ten, or give them as options");
            }
            try {
                question.check(line);
                return line;
            } catch (InvalidValueException fault) {
                console.remark(fault.getMessage());
            }
        }
    }

    private static String line(BufferedReader answering) {
        try {
            return answering.readLine();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public Report report(CarDraftReport told) {
        return told.report();
    }
}
