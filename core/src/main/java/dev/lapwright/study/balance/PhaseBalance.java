package dev.lapwright.study.balance;

import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.TurnState;

/**
 * The balance of a car in one phase of one corner.
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
