package dev.lapwright.brief;

import dev.lapwright.car.Adjustment;
import dev.lapwright.lap.LapFigures;
import java.util.List;
import java.util.Optional;

/**
 * Trade-off of an adjustment that moves wings or areas: drag against downforce, straights against corners.
 *
 * @param adjustment with at least one effect on the aerodynamics
 * @param setting where it stands
 * @param choices over its range, rising, its ends and where it stands among them
 */
public record WingTrade(Adjustment adjustment, double setting, List<Setting> choices) {
    public WingTrade {
        choices = List.copyOf(choices);
    }

    /** The fastest choice, the first of equals; empty if none has a lap. */
    public Optional<Setting> fastest() {
        return choices.stream()
                .filter(choice -> choice.figures().isPresent())
                .reduce((best, other) -> lapTime(other) < lapTime(best) ? other : best);
    }

    private static double lapTime(Setting choice) {
        return choice.figures().orElseThrow().lapTime();
    }

    /**
     * One setting of an adjustment that moves wings or areas.
     *
     * @param setting in the adjustment's unit
     * @param figures the lap in short; empty where there is no lap
     * @param effect against the car as it stands, so also its difference in corners and on straights; empty where there is no lap
     * @param dragArea CdA at the mean speed of the lap as the car stands, ride heights settled, m²; NaN without a lap
     * @param frontArea ClA on the front axle there, m²
     * @param rearArea ClA on the rear axle there, m²
     * @param failure why there is no lap; empty where there is one
     */
    public record Setting(
            double setting,
            Optional<LapFigures> figures,
            Optional<BriefResult.ChangeEffect> effect,
            double dragArea,
            double frontArea,
            double rearArea,
            String failure) {
        /** ClA on both axles, m². */
        public double downforceArea() {
            return frontArea + rearArea;
        }
    }
}
