package dev.lapwright.cli;

import dev.lapwright.cli.option.HelpOption;
import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.ExitCode;
import dev.lapwright.cli.output.Outputs;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Command {@code completion}: a script that teaches a shell to complete our commands. */
@Command(
        name = "completion",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {
            "Prints a script with which a shell completes commands, options and names of demos.",
            "To have it always, add to ~/.bashrc or ~/.zshrc:  source <(lapwright completion bash)"
        },
        customSynopsis = "lapwright completion [bash|zsh] [--out FILE]",
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright completion bash",
            "      Prints the script for bash.",
            "  lapwright completion zsh --out lapwright-completion.zsh",
            "      Writes the script for zsh into a file to be sourced."
        })
final class CompletionCommand implements Callable<Integer> {
    private final Console console;

    @Spec
    private CommandSpec spec;

    /** The shells it is made for; written as they are called. */
    enum Shell {
        bash,
        zsh
    }

    @Parameters(
            arity = "0..1",
            paramLabel = "bash|zsh",
            defaultValue = "bash",
            description = "The shell; bash if left out.")
    private Shell shell;

    @Option(names = "--out", paramLabel = "FILE", description = "Writes the script to a file instead.")
    private String out;

    @Option(names = "--force", description = "Lets an existing file be overwritten.")
    private boolean force;

    @Mixin
    HelpOption help;

    CompletionCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        if (out == null) {
            console.text(script());
            return ExitCode.DONE;
        }
        Outputs outputs = new Outputs(force);
        Path file = outputs.file(out);
        outputs.write(file, script());
        outputs.commit();
        outputs.report(console, false);
        return ExitCode.DONE;
    }

    private String script() {
        String script = AutoComplete.bash("lapwright", spec.parent().commandLine());
        // One script serves both; zsh must be told to understand it.
        return shell == Shell.zsh ? "autoload -U +X bashcompinit && bashcompinit\n" + script : script;
    }
}
