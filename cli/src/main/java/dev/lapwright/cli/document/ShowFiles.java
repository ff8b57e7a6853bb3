package dev.lapwright.cli.document;

import dev.lapwright.cli.output.Outputs;
import dev.lapwright.cli.output.ResultFiles;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.report.JsonLayout;

/** Which files a document's content is written to. */
public final class ShowFiles {
    private ShowFiles() {}

    /**
     * Plans and checks them.
     *
     * @param name of the document as the user wrote it
     * @param kind of the document: only of a circuit there are pictures
     */
    public static ResultFiles<Sheet> plan(ShowCommand.Output options, String name, DocumentKind kind) {
        ResultFiles<Sheet> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            checkMeant("--chart", DocumentKind.CIRCUIT, name, kind);
            chart(files, Outputs.checkEnding("--chart", options.chart, ".svg", ".png"));
        }
        if (options.out != null) {
            out(files, options.out, name, kind);
        }
        return files;
    }

    private static void out(ResultFiles<Sheet> files, String out, String name, DocumentKind kind) {
        if (Outputs.isNamed(out, ".json")) {
            files.text(out, sheet -> JsonLayout.text(sheet.tree()));
        } else if (Outputs.isNamed(out, ".svg") || Outputs.isNamed(out, ".png")) {
            checkMeant("--out " + out, DocumentKind.CIRCUIT, name, kind);
            chart(files, out);
        } else {
            Outputs.checkFolder("--out", out, ".json", ".svg", ".png");
            files.textIn(out, "show.json", sheet -> JsonLayout.text(sheet.tree()));
            if (kind == DocumentKind.CIRCUIT) {
                files.pictureIn(out, "map.svg", sheet -> ((CircuitSheet) sheet).map("map.svg"));
            }
        }
    }

    private static void chart(ResultFiles<Sheet> files, String name) {
        files.picture(name, sheet -> ((CircuitSheet) sheet).map(name));
    }

    /** Refuses an option that is for another kind of document. */
    public static void checkMeant(String option, DocumentKind meant, String name, DocumentKind kind) {
        if (kind != meant) {
            throw new InvalidValueException(
                    option,
                    "it is for a " + meant.word() + ", but " + name + " is a " + kind.word() + " document",
                    "leave it out");
        }
    }
}
