package dev.lapwright.charts;

import dev.lapwright.fault.InvalidValueException;
import java.util.Locale;

/** The kinds of picture that can be written. */
public enum ImageFormat {
    /** Scalable vector graphics: sharp at any size, text can be searched. */
    SVG,
    /** Portable network graphics: pixels. */
    PNG;

    /** The format that a file's name asks for by its suffix, letter case aside. */
    public static ImageFormat ofFileName(String fileName) {
        String lower = fileName.toLowerCase(Locale.ROOT);
        for (ImageFormat format : values()) {
            if (lower.endsWith(format.suffix())) {
                return format;
            }
        }
        throw new InvalidValueException(
                fileName, "the name does not say which kind of picture to write", "end it with .svg or .png");
    }

    /** With its dot: {@code .svg}. */
    public String suffix() {
        return "." + name().toLowerCase(Locale.ROOT);
    }
}
