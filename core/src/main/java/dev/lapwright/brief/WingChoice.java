package dev.lapwright.brief;

import dev.lapwright.lap.LapFigures;
import java.util.Optional;

/**
 * One setting of an adjustment that moves wings or areas.
 *
 * @param setting in the adjustment's unit
 * @param figures the lap in short; empty where there is no lap
 * @param effect against the car as it stands, so also what it gains in corners and on straights; empty where there is no lap
 * @param dragArea CdA at the mean speed of the lap as the car stands, ride heights settled, m²; NaN without a lap
 * @param frontArea ClA on the front axle there, m²
 * @param rearArea ClA on the rear axle there, m²
 * @param failure why there is no lap; empty where there is one
 */
public record WingChoice(
        double setting,
        Optional<LapFigures> figures,
        Optional<ChangeEffect> effect,
        double dragArea,
        double frontArea,
        double rearArea,
        String failure) {
    /** ClA on both axles, m². */
    public double downforceArea() {
        return frontArea + rearArea;
    }
}
