package dev.lapwright.draft;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.lap.AxleLimits;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.TurnState;
import dev.lapwright.lap.Vehicle;

/**
 * Balance of a drafted car: anti-roll bars with which both its axles give up together in a steady bend, as whoever races it has set them, as
 * far as bars reach; and brakes that share out by the load under hard braking. By the forces of the lap ({@link AxleLimits}).
 */
final class DraftBalance {
    /** Speed of the bend in which the axles are balanced, m/s: a medium corner. */
    private static final double SPEED = 30;
    /** Bars are made stiffer by so much, so many times, where none of their shares balances the car. */
    private static final double STIFFER = 1.5;

    private static final int TIMES = 3;
    private static final double CLOSE = 0.002;
    /** Share of a bar's stiffness that either end has at least, of both. */
    private static final double LEAST_SHARE = 0.05;

    private static final int TRIES = 40;
    /** Brake share is set for so much of the hardest stop, and a little to the front of it. */
    private static final double OF_HARDEST = 0.9;

    private static final double TO_THE_FRONT = 2;

    private DraftBalance() {}

    /**
     * The car with bars of a stiffness, shared out so that it is balanced, or as near as they get.
     *
     * @param stiffness of both bars, Nm/deg
     */
    static Car withBars(Car car, double stiffness) {
        Car balanced = balanced(car, stiffness);
        double stiff = stiffness;
        for (int i = 0; i < TIMES && Math.abs(understeer(balanced)) > CLOSE; i++) {
            stiff *= STIFFER;
            Car stiffer = balanced(car, stiff);
            if (!(Math.abs(understeer(stiffer)) < Math.abs(understeer(balanced)))) {
                break;
            }
            balanced = stiffer;
        }
        return balanced;
    }

    private static Car balanced(Car car, double stiffness) {
        double low = LEAST_SHARE;
        double high = 1 - LEAST_SHARE;
        // More at the front: more load transfer there, more understeer.
        for (int i = 0; i < TRIES; i++) {
            double middle = 0.5 * (low + high);
            if (understeer(shared(car, stiffness, middle)) < 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return shared(car, stiffness, 0.5 * (low + high));
    }

    private static Car shared(Car car, double stiffness, double front) {
        return car.with(Quantity.BAR_FRONT, Digits.rounded(stiffness * front, 3))
                .with(Quantity.BAR_REAR, Digits.rounded(stiffness * (1 - front), 3));
    }

    /** What the rear axle has left when the front one gives up, of the limit; negative where the rear gives up first. */
    static double understeer(Car car) {
        AxleMargins margins = margins(car, TurnState.Pedals.HOLDING, SPEED, 0);
        return margins.understeer() / margins.limit();
    }

    private static AxleMargins margins(Car car, TurnState.Pedals pedals, double speed, double acceleration) {
        return AxleLimits.of(Vehicle.of(car, Conditions.STANDARD))
                .in(TurnState.level(pedals, speed, acceleration, car.gearRatios().length));
    }

    /** Share of the brakes at the front, percent, by the load on it at 0.9 times a deceleration in g. */
    static double brakeShare(double frontWeightPercent, double cgHeight, double wheelbase, double deceleration) {
        double ideal = frontWeightPercent + 100 * OF_HARDEST * deceleration * cgHeight / wheelbase;
        return Math.min(95, Digits.toStep(ideal + TO_THE_FRONT, 0.5));
    }

    /** Hardest stop from a speed that the tyres give, in g. */
    static double hardestStop(Car car, double speed) {
        double low = 0;
        double high = 6;
        for (int i = 0; i < TRIES; i++) {
            double middle = 0.5 * (low + high);
            AxleMargins margins = margins(car, TurnState.Pedals.BRAKING, speed, -middle * StandardAtmosphere.GRAVITY);
            if (margins.limit() > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return 0.5 * (low + high);
    }
}
