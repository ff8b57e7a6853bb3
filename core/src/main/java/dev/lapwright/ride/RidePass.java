package dev.lapwright.ride;

/**
 * Figures of one pass over a road.
 *
 * @param time that counts, s
 * @param contact load of the tyre on the road
 * @param peakBodyAcceleration greatest acceleration of the body, either way, m/s²
 * @param bodyAcceleration root mean square, m/s²
 * @param stroke travel of the wheel and speed of the damper
 * @param energy where it went
 */
public record RidePass(
        double time,
        Contact contact,
        double peakBodyAcceleration,
        double bodyAcceleration,
        Stroke stroke,
        Energy energy) {
    /**
     * Contact load of a pass.
     *
     * @param staticLoad on a flat road, N
     * @param loadVariation root mean square of the load about the static load, over the static load
     * @param leastLoad N
     * @param greatestLoad N
     * @param timeOffGround without contact, s
     */
    public record Contact(
            double staticLoad, double loadVariation, double leastLoad, double greatestLoad, double timeOffGround) {}

    /**
     * Greatest travel and speed of a pass, each way.
     *
     * @param bumpTravel of the wheel towards the body from rest, m
     * @param reboundTravel of the wheel away from the body from rest, m
     * @param bumpSpeed of the damper shortening, m/s
     * @param reboundSpeed of the damper lengthening, m/s
     */
    public record Stroke(double bumpTravel, double reboundTravel, double bumpSpeed, double reboundSpeed) {}

    /**
     * Energy balance of a pass, all in J. What the road gave is what damper and tyre took and what is still stored.
     *
     * @param fromRoad work that the road did by lifting the contact patch
     * @param bump turned to heat in the damper when shortening
     * @param rebound turned to heat in the damper when lengthening
     * @param tyre turned to heat in the tyre
     * @param stored in motion, spring and tyre at the end, less what was stored at the beginning
     */
    public record Energy(double fromRoad, double bump, double rebound, double tyre, double stored) {
        /** Turned to heat in the damper. */
        public double damper() {
            return bump + rebound;
        }
    }

    /**
     * Time history of a pass. Heights are upward, from where things stand on a flat road.
     *
     * @param time s
     * @param road height that the tyre feels, m
     * @param wheel height of the wheel, m
     * @param body height of the body, m
     * @param load contact load, N
     * @param bodyAcceleration m/s²
     */
    public record Trace(
            double[] time, double[] road, double[] wheel, double[] body, double[] load, double[] bodyAcceleration) {
        public Trace {
            time = time.clone();
            road = road.clone();
            wheel = wheel.clone();
            body = body.clone();
            load = load.clone();
            bodyAcceleration = bodyAcceleration.clone();
        }

        @Override
        public double[] time() {
            return time.clone();
        }

        @Override
        public double[] road() {
            return road.clone();
        }

        @Override
        public double[] wheel() {
            return wheel.clone();
        }

        @Override
        public double[] body() {
            return body.clone();
        }

        @Override
        public double[] load() {
            return load.clone();
        }

        @Override
        public double[] bodyAcceleration() {
            return bodyAcceleration.clone();
        }
    }
}
