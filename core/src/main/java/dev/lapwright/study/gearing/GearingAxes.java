package dev.lapwright.study.gearing;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Parts of a car's gearing that can be varied. */
public final class GearingAxes {
    /** Name of the quantity. */
    public static final String FINAL_DRIVE = Quantity.FINAL_DRIVE.path();

    private static final String RATIOS = "gearbox.ratios.";
    /** Steps from one final drive to the next where the car names none; about what sets of gears have. */
    private static final double[] STEPS = {0.88, 0.92, 0.96, 1, 1.04, 1.08, 1.12};

    private GearingAxes() {}

    /**
     * All there is to try on a car: its final drives, then each ratio that an adjustment changes, over their legal settings.
     * A car without an adjustment of the final drive is tried with 12 % less to 12 % more, in steps of 4 %.
     */
    public static List<SweepAxis> of(Car car) {
        List<SweepAxis> axes = new ArrayList<>();
        axes.add(finalDrives(car));
        for (Adjustment adjustment : car.adjustments()) {
            if (isGearing(car, adjustment.name()) && !moves(adjustment, FINAL_DRIVE)) {
                axes.add(legal(adjustment));
            }
        }
        return axes;
    }

    /** The final drives to try. */
    public static SweepAxis finalDrives(Car car) {
        return finalDrive(car)
                .map(GearingAxes::legal)
                .orElseGet(() -> Gearing.about(FINAL_DRIVE, car.value(Quantity.FINAL_DRIVE), STEPS));
    }

    /** The adjustment of the final drive alone, if the car has one. */
    public static Optional<Adjustment> finalDrive(Car car) {
        return car.adjustments().stream()
                .filter(adjustment -> isGearing(car, adjustment.name()) && moves(adjustment, FINAL_DRIVE))
                .findFirst();
    }

    /** Name of the quantity that is the ratio of a gear, from 1. */
    public static String ratio(Car car, int gear) {
        int gears = car.gearRatios().length;
        if (gear < 1 || gear > gears) {
            throw new InvalidValueException(
                    "gear " + gear, "the car has no such gear", gears == 1 ? "it has 1" : "name one of 1 to " + gears);
        }
        return RATIOS + gear;
    }

    private static SweepAxis legal(Adjustment adjustment) {
        return new SweepAxis(
                adjustment.name(),
                adjustment.legalSettings().stream()
                        .mapToDouble(setting -> setting)
                        .toArray());
    }

    private static boolean moves(Adjustment adjustment, String quantity) {
        return adjustment.effects().stream()
                .anyMatch(effect -> effect.quantity().equals(quantity));
    }

    /** Whether it is a ratio of the car, or an adjustment that moves ratios and nothing else. */
    static boolean isGearing(Car car, String name) {
        for (Adjustment adjustment : car.adjustments()) {
            if (adjustment.name().equals(name)) {
                return adjustment.effects().stream().allMatch(effect -> isRatio(effect.quantity()));
            }
        }
        return isRatio(name) && car.quantityNames().contains(name);
    }

    private static boolean isRatio(String quantity) {
        return quantity.equals(FINAL_DRIVE) || quantity.startsWith(RATIOS);
    }

    /** Names of all that can be varied. */
    static List<String> names(Car car) {
        return car.settableNames().stream().filter(name -> isGearing(car, name)).toList();
    }

    /** The car so geared. */
    static Car geared(Car car, String name, double value) {
        Car changed = car.with(name, value);
        if (isRatio(name) && changed.value(name) != value) {
            throw new InvalidValueException(
                    name,
                    "the setup sets it to " + Check.text(changed.value(name)) + " by an adjustment",
                    "vary that adjustment, or leave it out of the setup");
        }
        return changed;
    }
}
