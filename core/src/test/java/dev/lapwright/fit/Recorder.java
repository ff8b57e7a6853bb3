package dev.lapwright.fit;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import java.util.Arrays;
import java.util.Random;

/** Records a modelled lap as a logger would: even steps of time, noise on the speed. */
final class Recorder {
    private final double rate;
    private double noise;
    private double length;
    private Random random = new Random(1);
    private double gain = 1;
    private double shift;
    private double scale = 1;
    private double lag;

    private Recorder(double rate) {
        this.rate = rate;
    }

    /** Samples a second. */
    static Recorder at(double rate) {
        return new Recorder(rate);
    }

    /**
     * Noise of the speed, normal.
     *
     * @param deviation m/s
     * @param correlationLength over which the noise keeps 1/e of itself (first-order autoregression along distance), m;
     *     0 is white
     */
    Recorder noisy(double deviation, double correlationLength, Random source) {
        noise = deviation;
        length = correlationLength;
        random = source;
        return this;
    }

    /** Distance as logged: track distance times {@code factor} plus {@code metres}. */
    Recorder distance(double factor, double metres) {
        gain = factor;
        shift = metres;
        return this;
    }

    /** A speed sensor that reads {@code factor} times the speed, as it was {@code seconds} ago. */
    Recorder sensor(double factor, double seconds) {
        scale = factor;
        lag = seconds;
        return this;
    }

    DrivenLap of(String name, Lap lap) {
        double[] place = places(lap);
        int n = place.length;
        double[] speed = new double[n];
        double[] time = new double[n];
        double[] distance = new double[n];
        double[] gear = new double[n];
        double[] throttle = new double[n];
        double[] along = new double[n];
        double[] s = lap.column(Channel.DISTANCE);
        double error = noise * random.nextGaussian();
        for (int i = 0; i < n; i++) {
            if (i > 0) {
                double keep = length > 0 ? Math.exp(-(place[i] - place[i - 1]) / length) : 0;
                error = keep * error + Math.sqrt(1 - keep * keep) * noise * random.nextGaussian();
            }
            int station = SpeedCurve.station(s, place[i], lap.track().isClosed());
            time[i] = lap.timeAt(place[i]);
            speed[i] = Math.max(0, scale * lap.speedAt(seen(lap, place[i])) + error);
            distance[i] = gain * place[i] + shift;
            gear[i] = lap.value(Channel.GEAR, station);
            throttle[i] = lap.value(Channel.BRAKE_FORCE, station) > 0 ? 0 : 1;
            along[i] = lap.value(Channel.LONGITUDINAL_ACCELERATION, station);
        }
        double[] none = {};
        return new DrivenLap(name, distance, speed, time, throttle, none, gear, along, none);
    }

    /** Where a closed lap's car was when its speed was what the sensor reads at a place. */
    private double seen(Lap lap, double place) {
        if (lag == 0) {
            return place;
        }
        double[] s = lap.column(Channel.DISTANCE);
        double[] t = lap.column(Channel.TIME);
        double when = lap.timeAt(place) - lag;
        when += when < 0 ? lap.time() : 0;
        int i = SpeedCurve.station(t, when, false);
        i = Math.min(i, t.length - 2);
        return s[i] + (s[i + 1] - s[i]) * (when - t[i]) / (t[i + 1] - t[i]);
    }

    /** Where the samples lie: at even times, the last at the line. */
    private double[] places(Lap lap) {
        double[] s = lap.column(Channel.DISTANCE);
        double[] t = lap.column(Channel.TIME);
        double[] v = lap.column(Channel.SPEED);
        int n = (int) Math.floor(lap.time() * rate) + 2;
        double[] places = new double[n];
        int cell = 0;
        for (int i = 0; i < n; i++) {
            double when = Math.min(lap.time(), i / rate);
            while (cell + 2 < t.length && t[cell + 1] < when) {
                cell++;
            }
            // Square of speed is linear in distance: even acceleration within a cell.
            double ds = s[cell + 1] - s[cell];
            double before = v[cell];
            double acceleration = ds > 0 ? (v[cell + 1] * v[cell + 1] - before * before) / (2 * ds) : 0;
            double whole = 2 * ds / (before + v[cell + 1]);
            double share = t[cell + 1] > t[cell] ? (when - t[cell]) / (t[cell + 1] - t[cell]) : 0;
            double since = whole * share;
            places[i] = Math.min(s[cell + 1], s[cell] + before * since + 0.5 * acceleration * since * since);
        }
        return Arrays.stream(places).distinct().toArray();
    }
}
