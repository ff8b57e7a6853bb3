package dev.lapwright.cli.output;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;

/**
 * Files in which a result will be written, each in its own form.
 *
 * @param <R> the result
 */
public final class ResultFiles<R> {
    private final Outputs outputs;
    private final Map<Path, Function<R, String>> texts = new LinkedHashMap<>();
    private final Map<Path, Function<R, byte[]>> pictures = new LinkedHashMap<>();

    /** @param overwrite whether existing files may be replaced */
    public ResultFiles(boolean overwrite) {
        outputs = new Outputs(overwrite);
    }

    /** Plans a text. */
    public void text(String file, Function<R, String> form) {
        texts.put(outputs.file(file), form);
    }

    /** Plans a text in a folder that may not exist yet. */
    public void textIn(String folder, String file, Function<R, String> form) {
        texts.put(outputs.fileIn(folder, file), form);
    }

    /** Plans a picture. */
    public void picture(String file, Function<R, byte[]> form) {
        pictures.put(outputs.file(file), form);
    }

    /** Plans a picture in a folder that may not exist yet; it is left out where its form gives null. */
    public void pictureIn(String folder, String file, Function<R, byte[]> form) {
        pictures.put(outputs.fileIn(folder, file), form);
    }

    /** Makes everything first and writes it then, so that a fault in one leaves none behind. */
    public void write(R result) {
        Map<Path, String> madeTexts = new LinkedHashMap<>();
        texts.forEach((file, form) -> madeTexts.put(file, form.apply(result)));
        Map<Path, byte[]> madePictures = new LinkedHashMap<>();
        pictures.forEach((file, form) -> {
            byte[] picture = form.apply(result);
            if (picture != null) {
                madePictures.put(file, picture);
            }
        });
        madeTexts.forEach(outputs::write);
        madePictures.forEach(outputs::write);
    }

    /** Says what was written. */
    public void report(Console console, boolean resultIsForMachines) {
        outputs.report(console, resultIsForMachines);
    }
}
