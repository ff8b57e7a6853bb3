package dev.lapwright.cli;

import dev.lapwright.cli.bench.BenchCommand;
import dev.lapwright.cli.brief.BriefCommand;
import dev.lapwright.cli.document.CarCommand;
import dev.lapwright.cli.document.CarNewCommand;
import dev.lapwright.cli.document.CheckCommand;
import dev.lapwright.cli.document.CircuitCommand;
import dev.lapwright.cli.document.CircuitEditCommand;
import dev.lapwright.cli.document.CircuitImportCommand;
import dev.lapwright.cli.document.CircuitShowCommand;
import dev.lapwright.cli.document.DemoCommand;
import dev.lapwright.cli.document.ShowCommand;
import dev.lapwright.cli.event.EventCommand;
import dev.lapwright.cli.event.EventNewCommand;
import dev.lapwright.cli.event.EventPackCommand;
import dev.lapwright.cli.event.EventRunCommand;
import dev.lapwright.cli.event.EventShowCommand;
import dev.lapwright.cli.event.EventUnpackCommand;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.study.BalanceCommand;
import dev.lapwright.cli.study.CompareCommand;
import dev.lapwright.cli.study.EvidenceCommand;
import dev.lapwright.cli.study.FitCommand;
import dev.lapwright.cli.study.GearingCommand;
import dev.lapwright.cli.study.LapCommand;
import dev.lapwright.cli.study.LineCommand;
import dev.lapwright.cli.study.OptimiseCommand;
import dev.lapwright.cli.study.PlanCommand;
import dev.lapwright.cli.study.PressuresCommand;
import dev.lapwright.cli.study.RideCommand;
import dev.lapwright.cli.study.SensitivityCommand;
import dev.lapwright.cli.study.StintCommand;
import dev.lapwright.cli.study.StudyCommand;
import dev.lapwright.cli.study.SweepCommand;
import dev.lapwright.cli.study.WeightCommand;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.LapwrightException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Command line of Lapwright as a function: arguments in, exit code out. */
public final class Lapwright {
    private static final int HELP_WIDTH = 100;
    /** Picocli takes no less. */
    private static final int LEAST_HELP_WIDTH = 60;

    private static final Map<String, Function<Console, Object>> COMMANDS = commands();

    /** Commands that need to know all others. */
    private static final Set<String> OVERSEERS = Set.of("help", "completion");

    private Lapwright() {}

    private static Map<String, Function<Console, Object>> commands() {
        Map<String, Function<Console, Object>> commands = new LinkedHashMap<>();
        commands.put("brief", BriefCommand::new);
        commands.put("bench", BenchCommand::new);
        commands.put("lap", LapCommand::new);
        commands.put("sweep", SweepCommand::new);
        commands.put("plan", PlanCommand::new);
        commands.put("sensitivity", SensitivityCommand::new);
        commands.put("weight", WeightCommand::new);
        commands.put("optimise", OptimiseCommand::new);
        commands.put("compare", CompareCommand::new);
        commands.put("gearing", GearingCommand::new);
        commands.put("balance", BalanceCommand::new);
        commands.put("line", LineCommand::new);
        commands.put("ride", RideCommand::new);
        commands.put("pressures", PressuresCommand::new);
        commands.put("stint", StintCommand::new);
        commands.put("evidence", EvidenceCommand::new);
        commands.put("fit", FitCommand::new);
        commands.put("check", CheckCommand::new);
        commands.put("show", ShowCommand::new);
        commands.put(
                "car", console -> new CommandLine(new CarCommand(console)).addSubcommand(new CarNewCommand(console)));
        commands.put(
                "circuit",
                console -> new CommandLine(new CircuitCommand(console))
                        .addSubcommand(new CircuitImportCommand(console))
                        .addSubcommand(new CircuitShowCommand(console))
                        .addSubcommand(new CircuitEditCommand(console)));
        commands.put(
                "event",
                console -> new CommandLine(new EventCommand(console))
                        .addSubcommand(new EventNewCommand(console))
                        .addSubcommand(new EventRunCommand(console))
                        .addSubcommand(new EventShowCommand(console))
                        .addSubcommand(new EventPackCommand(console))
                        .addSubcommand(new EventUnpackCommand(console)));
        commands.put("demo", DemoCommand::new);
        commands.put("completion", CompletionCommand::new);
        commands.put("help", HelpCommand::new);
        return commands;
    }

    /** Runs one command; never throws. */
    static int run(Console console, String... arguments) {
        int code;
        try {
            LapwrightCommand root = new LapwrightCommand(console);
            CommandLine line = commandLine(root, console, arguments);
            ErrorReport report = new ErrorReport(console, root);
            line.setParameterExceptionHandler(report);
            line.setExecutionExceptionHandler(report);
            code = line.execute(EventArguments.completed(
                    line, () -> commandLine(new LapwrightCommand(console), console, arguments), console, arguments));
        } catch (LapwrightException fault) {
            ErrorReport.known(console, fault);
            code = ExitCode.BAD_INPUT;
        } catch (Throwable fault) {
            // Errors of the virtual machine pass by picocli's handlers.
            boolean trace = List.of(arguments).contains("--debug");
            code = ErrorReport.unexpected(console, fault, trace);
        }
        return endOf(console, code);
    }

    /** The command with those of its parts that the arguments need: only one where they begin with its name. */
    static CommandLine commandLine(LapwrightCommand root, Console console, String... arguments) {
        CommandLine line = new CommandLine(root);
        String first = arguments.length == 0 ? "" : arguments[0];
        boolean one = COMMANDS.containsKey(first) && !OVERSEERS.contains(first);
        COMMANDS.forEach((name, command) -> {
            if (!one || name.equals(first)) {
                line.addSubcommand(completed(command.apply(console)));
            }
        });
        ITypeConverter<Double> number = text -> DecimalText.number(text)
                .orElseThrow(() -> new TypeConversionException("'" + text + "' is not a number"));
        line.registerConverter(Double.class, number);
        line.registerConverter(double.class, number);
        line.setOut(console.writer());
        line.setUsageHelpWidth(Math.min(HELP_WIDTH, Math.max(LEAST_HELP_WIDTH, console.width())));
        line.setExpandAtFiles(false);
        line.setPosixClusteredShortOptionsAllowed(false);
        line.setColorScheme(CommandLine.Help.defaultColorScheme(console.isStyled() ? Ansi.ON : Ansi.OFF));
        return line;
    }

    private static CommandLine completed(Object command) {
        CommandLine line = command instanceof CommandLine made ? made : new CommandLine(command);
        if (line.getCommand() instanceof StudyCommand<?> study) {
            study.addTo(line.getCommandSpec());
        }
        line.getSubcommands().values().forEach(Lapwright::completed);
        return line;
    }

    private static int endOf(Console console, int code) {
        Optional<String> failure = console.flush();
        // Whoever reads our output may stop reading, as "head" does: that is no fault.
        if (failure.isEmpty() || failure.get().toLowerCase(Locale.ROOT).contains("broken pipe")) {
            return code;
        }
        console.remark("lapwright: standard output: it cannot be written: " + failure.get()
                + "; check where it leads, or name a file with --out");
        return ExitCode.BAD_INPUT;
    }
}
