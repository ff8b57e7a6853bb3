package dev.lapwright.fit;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Track;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Fits a car to logged laps by least squares on the full lap model.
 *
 * <pre>{@code
 * FitResult result = Fit.of(car, track, conditions).laps(laps).run();
 * result.estimates().forEach(e -> System.out.println(e.parameter().title() + " " + e.value()));
 * }</pre>
 */
public final class Fit {
    private final Car car;
    private final Track track;
    private final Conditions conditions;
    private List<DrivenLap> laps = List.of();
    private Set<FitParameter> parameters = EnumSet.allOf(FitParameter.class);
    private double confidence = 0.95;

    private Fit(Car car, Track track, Conditions conditions) {
        this.car = car;
        this.track = track;
        this.conditions = conditions;
    }

    /** A car as set up on the day, on the track that was driven. */
    public static Fit of(Car car, Track track, Conditions conditions) {
        return new Fit(car, track, conditions);
    }

    /** The laps, at least one. */
    public Fit laps(List<DrivenLap> driven) {
        laps = List.copyOf(driven);
        return this;
    }

    /** What to fit, at least one; all by default. */
    public Fit fitting(Set<FitParameter> wanted) {
        if (wanted.isEmpty()) {
            throw new InvalidValueException("parameters", "there is none to fit", "name one at least");
        }
        parameters = EnumSet.copyOf(wanted);
        return this;
    }

    /** Confidence of the intervals, 0.5 to 0.999; 0.95 by default. */
    public Fit confidence(double wanted) {
        confidence = Check.inRange("confidence", wanted, 0.5, 0.999);
        return this;
    }

    /**
     * Fits.
     *
     * @throws InvalidValueException if a lap is none of this track, or the car has no lap of it
     */
    public FitResult run() {
        return new FitRun(car, track, conditions, parameters).of(laps, confidence);
    }
}
