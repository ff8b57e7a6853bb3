package dev.lapwright.cli;

import dev.lapwright.car.Nearest;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Explanation, in the words of this command, of what is wrong with the arguments of a command. */
final class ArgumentFault {
    private ArgumentFault() {}

    static LapwrightException of(ParameterException fault) {
        CommandLine line = fault.getCommandLine();
        List<String> unmatched = line.getUnmatchedArguments();
        if (fault.getCause() instanceof LapwrightException known) {
            return known;
        }
        if (fault instanceof UnmatchedArgumentException e) {
            return unmatched(line, e.getUnmatched().get(0));
        }
        if (fault instanceof MissingParameterException e) {
            // A mistyped option leaves its value, or itself, where nothing is expected: that is the root of the matter.
            boolean mistyped = !unmatched.isEmpty() && unmatched.get(0).startsWith("-");
            return mistyped ? unmatched(line, unmatched.get(0)) : missing(line, e);
        }
        if (fault instanceof OverwrittenOptionException e && e.getOverwritten() != null) {
            return new InvalidValueException(name(e.getOverwritten()), "it is given twice", "give it once");
        }
        ArgSpec argument = fault.getArgSpec();
        if (argument != null && fault.getValue() != null) {
            return new InvalidValueException(
                    name(argument), "'" + fault.getValue() + "' is not " + kind(argument), help(line));
        }
        String text = fault.getMessage() == null ? "the arguments make no sense" : fault.getMessage();
        return new InvalidValueException(command(line), text, help(line));
    }

    private static LapwrightException unmatched(CommandLine line, String argument) {
        if (argument.startsWith("-")) {
            String option = argument.contains("=") ? argument.substring(0, argument.indexOf('=')) : argument;
            List<String> known = new ArrayList<>();
            for (OptionSpec spec : line.getCommandSpec().options()) {
                if (!spec.hidden()) {
                    known.addAll(List.of(spec.names()));
                }
            }
            return new InvalidValueException(option, command(line) + " has no such option", near(line, option, known));
        }
        if (!line.getSubcommands().isEmpty()) {
            List<String> known = new ArrayList<>(line.getSubcommands().keySet());
            return new InvalidValueException(argument, "there is no such command", near(line, argument, known));
        }
        return new InvalidValueException(argument, "this is one argument too many for " + command(line), help(line));
    }

    private static String near(CommandLine line, String wanted, List<String> known) {
        String remedy = Nearest.remedy(wanted, known);
        return remedy.startsWith("perhaps") ? remedy : help(line);
    }

    private static LapwrightException missing(CommandLine line, MissingParameterException fault) {
        List<String> names = new ArrayList<>();
        for (ArgSpec argument : fault.getMissing()) {
            boolean valueOfOption = argument instanceof OptionSpec
                    && line.getParseResult() != null
                    && fault.getMessage().startsWith("Missing required parameter for option");
            if (valueOfOption || fault.getMessage().startsWith("Expected parameter")) {
                return new InvalidValueException(
                        name(argument),
                        "its value is missing",
                        "write " + name(argument) + " " + argument.paramLabel());
            }
            names.add(argument instanceof OptionSpec ? name(argument) : argument.paramLabel());
        }
        if (names.isEmpty()) {
            return new InvalidValueException(command(line), fault.getMessage(), help(line));
        }
        String is = names.size() == 1 ? " is missing" : " are missing";
        return new InvalidValueException(
                command(line),
                String.join(" and ", names) + is,
                "write " + String.join(" ", synopsis(line)) + ", or " + help(line));
    }

    /** The command with all that it must have. */
    private static List<String> synopsis(CommandLine line) {
        List<String> words = new ArrayList<>();
        words.add(line.getCommandSpec().qualifiedName());
        line.getCommandSpec().positionalParameters().stream()
                .filter(ArgSpec::required)
                .forEach(argument -> words.add(argument.paramLabel()));
        line.getCommandSpec().options().stream()
                .filter(ArgSpec::required)
                .forEach(option -> words.add(option.longestName() + " " + option.paramLabel()));
        return words;
    }

    private static String name(ArgSpec argument) {
        return argument instanceof OptionSpec option ? option.longestName() : argument.paramLabel();
    }

    private static String kind(ArgSpec argument) {
        Class<?> type = argument.type();
        if (type == int.class || type == Integer.class) {
            return "a whole number";
        }
        if (type == double.class || type == Double.class) {
            return "a number";
        }
        if (type.isEnum()) {
            List<String> words = new ArrayList<>();
            argument.completionCandidates().forEach(words::add);
            return "one of " + String.join(", ", words);
        }
        return "possible here";
    }

    private static String command(CommandLine line) {
        return line.getCommandSpec().name();
    }

    private static String help(CommandLine line) {
        return "see '" + line.getCommandSpec().qualifiedName() + " --help'";
    }
}
