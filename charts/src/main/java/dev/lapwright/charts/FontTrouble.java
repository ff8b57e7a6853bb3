package dev.lapwright.charts;

/**
 * What to tell a user whose Java cannot draw text. Without a font file, without fontconfig or without FreeType the font
 * classes of the JDK fail with errors (not exceptions) that name none of these remedies.
 */
final class FontTrouble {
    private FontTrouble() {}

    static ChartException of(Throwable broken) {
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
