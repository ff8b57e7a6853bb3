package dev.lapwright.study.balance;

import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.slip.SlipState;
import java.util.List;
import java.util.Optional;

/**
 * Steer, sideslip and stability through the corners of a lap by the fuller model.
 *
 * @param lap by that model
 * @param corners in driving order
 * @param steering understeer gradients over speed, on a level road
 */
public record SlipBalanceResult(Lap lap, List<Corner> corners, List<Steering> steering) {
    public SlipBalanceResult {
        corners = List.copyOf(corners);
        steering = List.copyOf(steering);
    }

    /**
     * Steering at one speed: growth of the steer beyond what the radius alone asks for with lateral acceleration, as ISO 4138 has it for a test at
     * constant speed. Positive is understeer.
     *
     * @param aero downforce and heights at this speed
     * @param most greatest lateral acceleration that is held at it, m/s²
     * @param gradient near none of it, rad per m/s²
     * @param half at half of it, rad per m/s²
     */
    public record Steering(AeroBalance aero, double most, double gradient, double half) {}

    /**
     * One corner.
     *
     * @param corner of the road or line
     * @param phases those that the lap has and an equilibrium was found for
     * @param first what limits the highest speed that is held in the middle, power aside; empty if unknown
     * @param gradient growth of steer with lateral acceleration near the highest speed in the middle, rad per m/s²; negative where the car turns
     *     further in by itself; NaN if unknown
     * @param slowest station where the lap is slowest in it
     * @param there the state that the lap drives there; empty if unknown
     */
    public record Corner(
            dev.lapwright.track.Corner corner,
            List<Phase> phases,
            Optional<Limit> first,
            double gradient,
            int slowest,
            Optional<SlipState> there) {
        public Corner {
            phases = List.copyOf(phases);
        }

        /** The state in a phase; empty where there is none. */
        public Optional<SlipState> in(BalancePhase phase) {
            return phases.stream()
                    .filter(one -> one.phase() == phase)
                    .map(Phase::state)
                    .findFirst();
        }
    }

    /**
     * One phase of a corner.
     *
     * @param phase of the corner
     * @param distance along what is driven, m
     * @param state of the car and its wheels
     */
    public record Phase(BalancePhase phase, double distance, SlipState state) {}
}
