package dev.lapwright.brief;

import dev.lapwright.car.Adjustment;
import java.util.List;
import java.util.Optional;

/**
 * What an adjustment that moves wings or areas trades: drag against downforce, straights against corners.
 *
 * @param adjustment with at least one effect on the aerodynamics
 * @param setting where it stands
 * @param choices over its range, rising, its ends and where it stands among them
 */
public record WingTrade(Adjustment adjustment, double setting, List<WingChoice> choices) {
    public WingTrade {
        choices = List.copyOf(choices);
    }

    /** The fastest choice, the first of equals; empty if none has a lap. */
    public Optional<WingChoice> fastest() {
        return choices.stream()
                .filter(choice -> choice.figures().isPresent())
                .reduce((best, other) -> lapTime(other) < lapTime(best) ? other : best);
    }

    private static double lapTime(WingChoice choice) {
        return choice.figures().orElseThrow().lapTime();
    }
}
