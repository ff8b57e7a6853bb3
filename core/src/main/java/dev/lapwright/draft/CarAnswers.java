package dev.lapwright.draft;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/**
 * Answers to the ten questions that draft a car. What may be left open is an {@link OptionalDouble}.
 *
 * @param name of the car
 * @param massKg 1: with driver, without fuel
 * @param driven 2: wheels
 * @param power 3: and its engine speed
 * @param tyres 4: widths and kind
 * @param wheelbaseM 5
 * @param frontWeightPercent 6: share of the weight on the front axle
 * @param downforce 7: class of the body
 * @param gears 8: with the final drive
 * @param topSpeed 9
 * @param brakingG 10: hardest stop from 100 km/h on the flat, in g; empty where the brakes can lock all wheels and nobody measured
 */
public record CarAnswers(
        String name,
        double massKg,
        DrivenWheels driven,
        Power power,
        Tyres tyres,
        OptionalDouble wheelbaseM,
        OptionalDouble frontWeightPercent,
        DownforceClass downforce,
        Gears gears,
        TopSpeed topSpeed,
        OptionalDouble brakingG) {
    /** Speed from which the hardest stop is told, m/s: 100 km/h. */
    public static final double STOP_FROM = 100 / 3.6;

    public CarAnswers {
        Check.inRange("mass (kg)", massKg, 60, 20_000);
        Objects.requireNonNull(driven, "driven wheels");
        Objects.requireNonNull(downforce, "downforce class");
        if (wheelbaseM.isPresent()) {
            Check.inRange("wheelbase (m)", wheelbaseM.getAsDouble(), 0.8, 6);
        }
        if (frontWeightPercent.isPresent()) {
            Check.inRange("front weight (%)", frontWeightPercent.getAsDouble(), 25, 75);
        }
        if (brakingG.isPresent()) {
            Check.inRange("hardest stop of the brakes (g)", brakingG.getAsDouble(), 0.2, 4);
        }
    }

    /**
     * Peak power at the engine, as a sheet or a dynamometer corrected for its air says it.
     *
     * @param watts W
     * @param rpm engine speed of it, 1/min; of a motor the speed at which it first has it
     * @param kind of engine
     */
    public record Power(double watts, double rpm, EngineKind kind) {
        public Power {
            Check.inRange("power (W)", watts, 2e3, 3e6);
            Check.inRange("speed of peak power (rpm)", rpm, 500, 30_000);
            Objects.requireNonNull(kind, "kind of engine");
        }
    }

    /**
     * Tyres.
     *
     * @param front size
     * @param rear size
     * @param kind of both
     */
    public record Tyres(TyreSize front, TyreSize rear, TyreKind kind) {
        public Tyres {
            Objects.requireNonNull(front, "front tyre");
            Objects.requireNonNull(rear, "rear tyre");
            Objects.requireNonNull(kind, "kind of tyre");
        }
    }

    /**
     * Gears.
     *
     * @param ratios first gear first, falling; empty where only their number is known
     * @param count of them
     * @param finalDrive ratio; empty where it is not known, or is in the ratios
     */
    public record Gears(List<Double> ratios, int count, OptionalDouble finalDrive) {
        private static final int MOST = 10;

        public Gears {
            ratios = List.copyOf(ratios);
            if (count < 1 || count > MOST || (!ratios.isEmpty() && ratios.size() != count)) {
                throw new InvalidValueException(
                        "gears", count + " with " + ratios.size() + " ratios", "give 1 to 10, or a ratio for each");
            }
            for (int i = 0; i < ratios.size(); i++) {
                Check.inRange("ratio of gear " + (i + 1), ratios.get(i), 0.2, 20);
                if (i > 0 && !(ratios.get(i) < ratios.get(i - 1))) {
                    throw new InvalidValueException(
                            "ratio of gear " + (i + 1),
                            Check.text(ratios.get(i)) + " is not below that of the gear before it",
                            "list the ratios from first gear up");
                }
            }
            if (finalDrive.isPresent()) {
                Check.inRange("final drive", finalDrive.getAsDouble(), 0.5, 15);
            }
        }

        /** Of which only the number is known. */
        public static Gears counted(int count) {
            return new Gears(List.of(), count, OptionalDouble.empty());
        }

        /** Known throughout. */
        public static Gears of(List<Double> ratios, double finalDrive) {
            return new Gears(ratios, ratios.size(), OptionalDouble.of(finalDrive));
        }
    }

    /**
     * Highest speed on the flat, without wind, on a standard day.
     *
     * @param metresPerSecond m/s
     * @param atLimiter whether the rev limiter stops it there in its last gear, and not the air
     */
    public record TopSpeed(double metresPerSecond, boolean atLimiter) {
        public TopSpeed {
            Check.inRange("top speed (m/s)", metresPerSecond, 10, 130);
        }
    }
}
