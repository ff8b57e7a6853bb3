package dev.lapwright.ride;

/**
 * One pass over time. Heights are upward, from where things stand on a flat road.
 *
 * @param time s
 * @param road height that the tyre feels, m
 * @param wheel height of the wheel, m
 * @param body height of the body, m
 * @param load contact load, N
 * @param bodyAcceleration m/s²
 */
public record RideTrace(
        double[] time, double[] road, double[] wheel, double[] body, double[] load, double[] bodyAcceleration) {
    public RideTrace {
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
