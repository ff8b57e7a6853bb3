package dev.lapwright.cli;

import dev.lapwright.cli.output.Console;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.SafeFile;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import picocli.CommandLine;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParameterException;

/**
 * Arguments that an event stands for: where a command wants CAR and CIRCUIT and has neither, inside an event's folder or told of one by
 * --event, those of the event are put in, with its day and the setup of its last run, as if they had been typed.
 */
final class EventArguments {
    private static final String OPTION = "--event";
    /** Option of a command that looks back on the runs of an event. */
    private static final String RUNS = "--runs-of";

    private static final List<String> CAR_AND_CIRCUIT = List.of("CAR", "CIRCUIT");

    private EventArguments() {}

    /**
     * The arguments, completed if need be.
     *
     * @param fresh a command line of its own for each time that arguments are tried: groups of options add up where one parses twice
     * @throws dev.lapwright.fault.LapwrightException if --event names no event, or one that cannot be read
     */
    static String[] completed(CommandLine line, Supplier<CommandLine> fresh, Console console, String... arguments) {
        CommandLine command =
                arguments.length == 0 ? null : line.getSubcommands().get(arguments[0]);
        // A state of the bench names its car and circuit itself.
        boolean isNamed = isGiven(Arrays.asList(arguments), "--state");
        if (command == null || isNamed || !wantsCarAndCircuit(command) || isHelp(arguments)) {
            return arguments;
        }
        List<String> words = new ArrayList<>(Arrays.asList(arguments));
        Optional<String> named = taken(words);
        Optional<EventFolder> folder = named.isPresent()
                ? Optional.of(EventFolder.of(SafeFile.path(named.get())))
                : EventFolder.about(Path.of(""));
        if (folder.isEmpty() || (named.isEmpty() && !lacksThem(fresh.get(), arguments))) {
            return arguments;
        }
        Event event = folder.get().read();
        List<String> completed = completed(command, words, event);
        if (named.isEmpty() && !isParsed(fresh.get(), completed.toArray(String[]::new))) {
            return arguments;
        }
        console.remark("Event " + event.name() + ": " + event.car().name() + " at "
                + event.track().name()
                + (event.runs().isEmpty()
                        ? ", no run yet"
                        : ", as in run "
                                + event.runs().get(event.runs().size() - 1).number()));
        return completed.toArray(String[]::new);
    }

    private static boolean wantsCarAndCircuit(CommandLine command) {
        List<String> labels = command.getCommandSpec().positionalParameters().stream()
                .map(PositionalParamSpec::paramLabel)
                .map(label -> label.replaceAll("[\\[\\]]", ""))
                .toList();
        return labels.size() >= CAR_AND_CIRCUIT.size()
                && labels.subList(0, CAR_AND_CIRCUIT.size()).equals(CAR_AND_CIRCUIT);
    }

    private static boolean isHelp(String... arguments) {
        return Arrays.stream(arguments).anyMatch(word -> word.equals("--help") || word.equals("-h"));
    }

    /** The folder that --event names, taken out of the words. */
    private static Optional<String> taken(List<String> words) {
        for (int i = 1; i < words.size(); i++) {
            if (words.get(i).equals(OPTION)) {
                if (i + 1 == words.size()) {
                    throw new InvalidValueException(OPTION, "its value is missing", "write --event FOLDER");
                }
                String folder = words.remove(i + 1);
                words.remove(i);
                return Optional.of(folder);
            }
            if (words.get(i).startsWith(OPTION + "=")) {
                return Optional.of(words.remove(i).substring(OPTION.length() + 1));
            }
        }
        return Optional.empty();
    }

    /** Whether the command has no car and no circuit. */
    private static boolean lacksThem(CommandLine line, String... arguments) {
        try {
            CommandLine.ParseResult parsed = line.parseArgs(arguments);
            return parsed.hasSubcommand()
                    && parsed.subcommand().matchedPositionals().isEmpty();
        } catch (CommandLine.MissingParameterException missing) {
            return missing.getMissing().stream().anyMatch(PositionalParamSpec.class::isInstance);
        } catch (ParameterException other) {
            return false;
        }
    }

    private static boolean isParsed(CommandLine line, String... arguments) {
        try {
            line.parseArgs(arguments);
            return true;
        } catch (ParameterException fault) {
            return false;
        }
    }

    private static List<String> completed(CommandLine command, List<String> words, Event event) {
        List<String> completed = new ArrayList<>();
        completed.add(words.get(0));
        completed.add(event.folder().resolve(event.papers().car()).toString());
        completed.add(event.folder().resolve(event.papers().circuit()).toString());
        if (takes(command, "--conditions") && !isGiven(words, "--conditions")) {
            event.papers()
                    .conditions()
                    .ifPresent(day -> completed.addAll(
                            List.of("--conditions", event.folder().resolve(day).toString())));
        }
        if (takes(command, "--set") && !isGiven(words, "--setup")) {
            event.settingsNow()
                    .forEach((name, value) -> completed.addAll(List.of("-s", name + "=" + Check.text(value))));
        }
        boolean isDriven =
                event.runs().stream().anyMatch(run -> !run.run().laps().isEmpty());
        if (takes(command, RUNS) && isDriven && !isGiven(words, RUNS) && !isGiven(words, "--after")) {
            completed.addAll(List.of(RUNS, event.folder().toString()));
        }
        completed.addAll(words.subList(1, words.size()));
        return completed;
    }

    private static boolean takes(CommandLine command, String option) {
        return command.getCommandSpec().findOption(option) != null;
    }

    private static boolean isGiven(List<String> words, String option) {
        return words.stream().anyMatch(word -> word.equals(option) || word.startsWith(option + "="));
    }
}
