package dev.lapwright.study.balance;

import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.TurnState;
import dev.lapwright.track.Corner;
import java.util.List;
import java.util.Optional;

/**
 * Balance of a car on a lap, as far as a quasi-steady model knows it.
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

    /**
     * Balance of a car in one corner.
     *
     * @param corner which
     * @param phases those that the lap has there, in driving order: a corner taken flat has no entry
     * @param turningIn yaw acceleration into the corner
     * @param unwinding yaw acceleration out of it, negative
     */
    public record CornerBalance(Corner corner, List<PhaseBalance> phases, YawDemand turningIn, YawDemand unwinding) {
        public CornerBalance {
            phases = List.copyOf(phases);
        }

        /** The balance in a phase; empty if the lap does not have it in this corner. */
        public Optional<PhaseBalance> in(BalancePhase phase) {
            return phases.stream().filter(one -> one.phase() == phase).findFirst();
        }
    }

    /**
     * Balance of a car in one phase of one corner.
     *
     * @param phase which
     * @param station of the lap from which the state is taken
     * @param distance of that station, m
     * @param lateralAcceleration of the lap there, m/s², without sign
     * @param state the car's state
     * @param margins what each axle could hold in it
     */
    public record PhaseBalance(
            BalancePhase phase,
            int station,
            double distance,
            double lateralAcceleration,
            TurnState state,
            AxleMargins margins) {}

    /**
     * Greatest yaw acceleration that a lap asks of a car as it turns into a corner or unwinds from it.
     *
     * @param distance where, m
     * @param acceleration rad/s², positive into the corner; infinite where curvature steps, which no car can follow; 0 if none
     * @param moment yaw inertia times that, Nm
     * @param gripShare of the axle's lateral force that the moment takes, front turning in and rear unwinding, as a share of what
     *     that axle has there
     */
    public record YawDemand(double distance, double acceleration, double moment, double gripShare) {
        /** Whether curvature steps there. */
        public boolean isStep() {
            return Double.isInfinite(acceleration);
        }
    }
}
