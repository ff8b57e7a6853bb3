package dev.lapwright.cli.brief;

import dev.lapwright.cli.output.Console;
import dev.lapwright.cli.output.Outputs;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.SafeFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;

/** Files of a brief, the page and the JSON beside it: what cannot be written does not stop the other. */
public final class BriefFiles {
    private static final String PAGE = ".html";
    private static final String JSON = ".json";

    private final Outputs outputs;
    private final Map<Path, Function<BriefOutcome, String>> planned = new LinkedHashMap<>();
    private final List<LapwrightException> faults = new ArrayList<>();

    private BriefFiles(boolean force) {
        outputs = new Outputs(force);
    }

    /**
     * Plans and checks both.
     *
     * @param car as named on the command line
     * @param circuit as named on the command line
     * @throws LapwrightException if one is there already and may not be replaced, or if neither can be written
     */
    public static BriefFiles plan(BriefOutputOptions options, String car, String circuit) {
        BriefFiles files = new BriefFiles(options.force);
        String name = "brief-" + word(car) + "-" + word(circuit);
        String folder = null;
        if (options.out != null) {
            if (Outputs.isNamed(options.out, PAGE)) {
                name = options.out.substring(0, options.out.length() - PAGE.length());
            } else {
                Outputs.checkFolder("--out", options.out, PAGE);
                folder = options.out;
            }
        }
        files.refuseExisting(folder, name + PAGE, options.force);
        files.refuseExisting(folder, name + JSON, options.force);
        files.plan(folder, name + PAGE, BriefPage::html);
        files.plan(folder, name + JSON, BriefJson::text);
        if (files.planned.isEmpty()) {
            throw files.faults.get(0);
        }
        return files;
    }

    private void refuseExisting(String folder, String name, boolean force) {
        Path file = folder == null ? SafeFile.path(name) : SafeFile.path(folder).resolve(name);
        if (!force && Files.isRegularFile(file)) {
            throw new InvalidValueException(
                    file.toString(),
                    "the file exists already",
                    "add --force to overwrite it, or name another with --out");
        }
    }

    private void plan(String folder, String name, Function<BriefOutcome, String> form) {
        try {
            planned.put(folder == null ? outputs.file(name) : outputs.fileIn(folder, name), form);
        } catch (LapwrightException fault) {
            faults.add(fault);
        }
    }

    /** The name of a document without its folder and ending, fit for the name of a file. */
    public static String word(String document) {
        Path name = SafeFile.path(document).getFileName();
        String text = name == null ? document : name.toString();
        String bare =
                text.toLowerCase(Locale.ROOT).endsWith(JSON) ? text.substring(0, text.length() - JSON.length()) : text;
        String word = bare.replaceAll("[^\\p{L}\\p{N}._-]+", "-");
        return word.isEmpty() ? "document" : word;
    }

    /** Makes and writes each; one that fails is remembered. */
    public void write(BriefOutcome outcome) {
        planned.forEach((file, form) -> {
            try {
                outputs.write(file, form.apply(outcome));
                outputs.commit();
            } catch (LapwrightException fault) {
                faults.add(fault);
            }
        });
    }

    /**
     * Says what was written, and what was not.
     *
     * @return whether all was
     */
    public boolean report(Console console, boolean resultIsForMachines) {
        outputs.report(console, resultIsForMachines);
        faults.forEach(fault -> console.remark("lapwright: " + fault.getMessage()));
        return faults.isEmpty();
    }
}
