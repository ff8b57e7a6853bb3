package dev.lapwright.charts;

import dev.lapwright.fault.LapwrightException;

/** A chart that this machine cannot draw, as when it has no fonts. */
public final class ChartException extends LapwrightException {
    private static final long serialVersionUID = 1L;

    /** @see LapwrightException#LapwrightException(String, String, String, Throwable) */
    public ChartException(String place, String problem, String remedy, Throwable cause) {
        super(place, problem, remedy, cause);
    }

    /**
     * What to tell a user whose Java cannot draw text. Without a font file, without fontconfig or without FreeType the font
     * classes of the JDK fail with errors (not exceptions) that name none of these remedies.
     */
    static ChartException ofFonts(Throwable broken) {
        Throwable root = broken;
        while (root.getCause() != null && root.getCause() != root) {
            root = root.getCause();
        }
        String said = root.getMessage() == null ? root.getClass().getSimpleName() : root.getMessage();
        return new ChartException(
                "fonts",
                "this machine's Java cannot draw the text of a chart (" + said + ")",
                "install fontconfig, FreeType and one font, on Debian the packages fontconfig, libfreetype6 and"
                        + " fonts-dejavu-core; tables and data files need no fonts",
                broken);
    }
}
