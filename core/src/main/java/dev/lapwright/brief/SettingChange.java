package dev.lapwright.brief;

import dev.lapwright.car.Adjustment;
import dev.lapwright.study.RemedyCaution;
import java.util.Set;

/**
 * One adjustment turned.
 *
 * @param adjustment which
 * @param from setting before
 * @param to setting after
 */
public record SettingChange(Adjustment adjustment, double from, double to) {
    /** Cautions that this adjustment calls for. */
    public Set<RemedyCaution> cautions() {
        return RemedyCaution.of(adjustment);
    }
}
