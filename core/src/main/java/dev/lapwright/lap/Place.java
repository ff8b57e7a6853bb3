package dev.lapwright.lap;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.air.Wind;
import dev.lapwright.fault.Check;
import dev.lapwright.track.Stations;

/**
 * Place on a road as a car feels it: how the path bends in the road's plane, gravity in the three directions of the path, grip and wind.
 *
 * @param lateralCurvature of the path in the road's plane, κ cos φ, 1/m, positive to the left
 * @param lateralGravity gravity across the road, g sin φ cos θ, m/s²
 * @param normalGravity gravity into the road, m/s²
 * @param normalCurvature acceleration into the road per v², κ sin φ + κv, 1/m
 * @param climb gravity against the direction of travel, g sin θ, m/s²
 * @param grip of the surface, 1 is the reference
 * @param headWind m/s, negative from behind
 */
public record Place(
        double lateralCurvature,
        double lateralGravity,
        double normalGravity,
        double normalCurvature,
        double climb,
        double grip,
        double headWind) {
    public Place {
        Check.finite("curvature (1/m)", lateralCurvature);
        Check.finite("gravity across the road (m/s²)", lateralGravity);
        Check.finite("gravity into the road (m/s²)", normalGravity);
        Check.finite("vertical curvature (1/m)", normalCurvature);
        Check.finite("climb (m/s²)", climb);
        Check.positive("grip", grip);
        Check.finite("head wind (m/s)", headWind);
    }

    /** On a level road without wind, on a path that bends this much, 1/m, positive to the left. */
    public static Place level(double curvature) {
        return new Place(curvature, 0, StandardAtmosphere.GRAVITY, 0, 0, 1, 0);
    }

    /** Of a road of even slope and bank, as {@link Stations} have them; angles in rad, curvatures in 1/m. */
    public static Place on(double curvature, double slope, double bank, double verticalCurvature, double grip) {
        Check.inRange("slope (rad)", slope, -1.5, 1.5);
        Check.inRange("bank (rad)", bank, -1.5, 1.5);
        double g = StandardAtmosphere.GRAVITY;
        return new Place(
                curvature * Math.cos(bank),
                g * Math.sin(bank) * Math.cos(slope),
                g * Math.cos(slope) * Math.cos(bank),
                curvature * Math.sin(bank) + verticalCurvature,
                g * Math.sin(slope),
                grip,
                0);
    }

    /** At a station, counted from 0. */
    public static Place at(Stations stations, int station, Wind wind) {
        Place calm = on(
                stations.curvature()[station],
                stations.slope()[station],
                stations.bank()[station],
                stations.verticalCurvature()[station],
                stations.grip()[station]);
        return new Place(
                calm.lateralCurvature,
                calm.lateralGravity,
                calm.normalGravity,
                calm.normalCurvature,
                calm.climb,
                calm.grip,
                wind.headWind(stations.heading()[station]));
    }

    /** The same place on the other side of the mirror. */
    public Place mirrored() {
        return new Place(-lateralCurvature, -lateralGravity, normalGravity, normalCurvature, climb, grip, headWind);
    }
}
