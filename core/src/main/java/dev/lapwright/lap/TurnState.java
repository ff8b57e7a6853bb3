package dev.lapwright.lap;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Stations;

/**
 * State in which a car turns, all but the curvature of the turn: the place, the speed, and what the driver's pedals do. It is a state of no car
 * in particular, so that two cars can be held against each other in it.
 *
 * @param pedals what the driver does
 * @param speed m/s
 * @param acceleration dv/dt, m/s²; of no account when coasting or holding the speed
 * @param gear from 1
 * @param left whether the turn is to the left
 * @param lateralGravity gravity across the road, g sin φ cos θ, m/s²
 * @param normal what the road presses up with, downforce aside, m/s²
 * @param climb gravity against the direction of travel, g sin θ, m/s²
 * @param grip of the surface, 1 is the reference
 * @param headWind m/s, negative from behind
 */
public record TurnState(
        Pedals pedals,
        double speed,
        double acceleration,
        int gear,
        boolean left,
        double lateralGravity,
        double normal,
        double climb,
        double grip,
        double headWind) {
    /** What the driver's pedals do. */
    public enum Pedals {
        /** Slow the car at {@link TurnState#acceleration}, by the brakes' share. */
        BRAKING,
        /** Rest: engine drag and resistances slow the car. */
        COASTING,
        /** Hold the speed. */
        HOLDING,
        /** Drive the car at {@link TurnState#acceleration}. */
        DRIVING
    }

    public TurnState {
        Check.positive("speed (m/s)", speed);
        Check.finite("acceleration (m/s²)", acceleration);
        Check.finite("gravity across the road (m/s²)", lateralGravity);
        Check.finite("normal acceleration (m/s²)", normal);
        Check.finite("climb (m/s²)", climb);
        Check.positive("grip", grip);
        Check.finite("head wind (m/s)", headWind);
        if (gear < 1) {
            throw new InvalidValueException("gear", gear + " is below 1", "give 1 or more");
        }
    }

    /** On a flat, straight-running road without wind, in a left turn. */
    public static TurnState level(Pedals pedals, double speed, double acceleration, int gear) {
        return new TurnState(pedals, speed, acceleration, gear, true, 0, StandardAtmosphere.GRAVITY, 0, 1, 0);
    }

    /** As a lap is at a station, with pedals of one's choice. */
    public static TurnState of(Lap lap, int station, boolean left, Pedals pedals) {
        Stations stations = lap.stations();
        double acceleration = lap.value(Channel.ACCELERATION, station);
        return new TurnState(
                pedals,
                lap.value(Channel.SPEED, station),
                acceleration,
                (int) lap.value(Channel.GEAR, station),
                left,
                StandardAtmosphere.GRAVITY * Math.sin(stations.bank()[station]) * Math.cos(stations.slope()[station]),
                lap.value(Channel.NORMAL_ACCELERATION, station),
                lap.value(Channel.LONGITUDINAL_ACCELERATION, station) - acceleration,
                stations.grip()[station],
                lap.vehicle().wind.headWind(stations.heading()[station]));
    }
}
