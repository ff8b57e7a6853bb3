package dev.lapwright.study.sensitivity;

/**
 * What two adjustments do together beyond what each does alone.
 *
 * @param first name
 * @param firstSetting the legal setting next to where it stood
 * @param second name
 * @param secondSetting the legal setting next to where it stood
 * @param alone sum of the gains of either step alone, s
 * @param together gain of both steps, s; NaN without a lap
 */
public record Interaction(
        String first, double firstSetting, String second, double secondSetting, double alone, double together) {
    /** What the two do beyond their sum, s, positive is faster. */
    public double beyond() {
        return together - alone;
    }
}
