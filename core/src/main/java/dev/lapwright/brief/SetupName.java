package dev.lapwright.brief;

import dev.lapwright.car.Car;
import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Settings that the name of a setup in a log tells: {@code rear-wing=3}, or several such with commas, semicolons or blanks
 * between, in the units of the car's adjustments; {@link Proof#BASE}, in whatever
 * letters, is the car as it stands.
 */
final class SetupName {
    private static final Pattern BETWEEN = Pattern.compile("[,;\\s]+");
    private static final Pattern SETTING = Pattern.compile("([^=]+)=([+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+))");

    private SetupName() {}

    /** Whether a name says what was set, and a car can be so set. */
    static boolean isTold(Car car, String name) {
        try {
            set(car, name);
            return true;
        } catch (InvalidValueException untold) {
            return false;
        }
    }

    /**
     * Refuses a name that says what was set where the car cannot be so set; one that says nothing of the kind is a label like any other.
     *
     * @throws InvalidValueException with what the car can be set to
     */
    static void check(Car car, String name) {
        Car set = car;
        for (String word : BETWEEN.split(name.strip(), -1)) {
            Matcher setting = SETTING.matcher(word);
            if (!setting.matches()) {
                return;
            }
            try {
                set = set.with(setting.group(1), Double.parseDouble(setting.group(2)));
            } catch (InvalidValueException noSuchCar) {
                throw new InvalidValueException(
                        "setup '" + name + "' of the log",
                        (noSuchCar.place().isEmpty() ? "" : noSuchCar.place() + ": ") + noSuchCar.problem(),
                        noSuchCar.remedy());
            }
        }
    }

    /**
     * The car so set.
     *
     * @throws InvalidValueException if the name says nothing of the kind, or what it says cannot be set
     */
    static Car set(Car car, String name) {
        if (name.strip().equalsIgnoreCase(Proof.BASE)) {
            return car;
        }
        Car set = car;
        List<String> known = car.settableNames();
        for (String word : BETWEEN.split(name.strip(), -1)) {
            Matcher setting = SETTING.matcher(word);
            if (!setting.matches() || !known.contains(setting.group(1))) {
                String example = car.adjustments().isEmpty()
                        ? ""
                        : ", as in " + car.adjustments().get(0).name() + "=VALUE";
                throw new InvalidValueException(
                        "setup '" + name + "' of the log",
                        "its name does not say what was set, so the model cannot say what it expects",
                        "name setups by what was set" + example);
            }
            set = set.with(setting.group(1), Double.parseDouble(setting.group(2)));
        }
        return set;
    }
}
