package dev.lapwright.study.balance;

import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.lap.Lap;
import java.util.List;

/**
 * How a car feels on a lap, as far as a quasi-steady model knows.
 *
 * @param lap the lap from which the states are taken
 * @param corners at least one
 * @param gradient understeer gradient at rest, from cornering stiffness alone
 * @param frontToe what front toe adds to it, rad per m/s²
 * @param rearToe what rear toe adds to it, rad per m/s²
 * @param yawInertia kg m²
 * @param aero downforce at some air speeds from the lap's lowest to its highest speed, rising
 */
public record BalanceResult(
        Lap lap,
        List<CornerBalance> corners,
        UndersteerGradient gradient,
        double frontToe,
        double rearToe,
        double yawInertia,
        List<AeroBalance> aero) {
    public BalanceResult {
        corners = List.copyOf(corners);
        aero = List.copyOf(aero);
    }

    /** Gradient at rest with toe. */
    public UndersteerGradient gradientWithToe() {
        return gradient.plus(frontToe + rearToe);
    }

    /** Mean over the corners of rear less front limit, m/s², positive is understeer; NaN if no corner has the phase. */
    public double understeer(BalancePhase phase) {
        return corners.stream()
                .flatMap(corner -> corner.in(phase).stream())
                .mapToDouble(balance -> balance.margins().understeer())
                .average()
                .orElse(Double.NaN);
    }

    /** Mean over the corners of the lower limit, m/s²; NaN if no corner has the phase. */
    public double limit(BalancePhase phase) {
        return corners.stream()
                .flatMap(corner -> corner.in(phase).stream())
                .mapToDouble(balance -> balance.margins().limit())
                .average()
                .orElse(Double.NaN);
    }

    /** Number of corners that have a phase. */
    public int count(BalancePhase phase) {
        return (int)
                corners.stream().filter(corner -> corner.in(phase).isPresent()).count();
    }
}
