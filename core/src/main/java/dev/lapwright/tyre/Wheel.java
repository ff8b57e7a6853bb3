package dev.lapwright.tyre;

import dev.lapwright.fault.InvalidValueException;
import java.util.List;
import java.util.Locale;

/** The four places of a wheel on a car. */
public enum Wheel {
    /** Front left. */
    FRONT_LEFT("FL", "front left", true, true),
    /** Front right. */
    FRONT_RIGHT("FR", "front right", true, false),
    /** Rear left. */
    REAR_LEFT("RL", "rear left", false, true),
    /** Rear right. */
    REAR_RIGHT("RR", "rear right", false, false);

    private final String code;
    private final String label;
    private final boolean front;
    private final boolean left;

    Wheel(String code, String label, boolean front, boolean left) {
        this.code = code;
        this.label = label;
        this.front = front;
        this.left = left;
    }

    /** Two letters: FL, FR, RL, RR. */
    public String code() {
        return code;
    }

    /** For people. */
    public String label() {
        return label;
    }

    public boolean isFront() {
        return front;
    }

    public boolean isLeft() {
        return left;
    }

    /**
     * The wheels that a word stands for: FL, FR, RL, RR, front, rear, left, right or all, letter case aside.
     *
     * @throws InvalidValueException if it is none of them
     */
    public static List<Wheel> named(String word) {
        String wanted = word.trim().toLowerCase(Locale.ROOT).replaceAll("[-_ ]", "");
        List<Wheel> wheels = List.of(values()).stream()
                .filter(wheel -> wanted.equals("all")
                        || wanted.equals(wheel.code.toLowerCase(Locale.ROOT))
                        || wanted.equals(wheel.label.replace(" ", ""))
                        || wanted.equals(wheel.front ? "front" : "rear")
                        || wanted.equals(wheel.left ? "left" : "right"))
                .toList();
        if (wheels.isEmpty()) {
            throw new InvalidValueException(
                    "tyre '" + word.trim() + "'",
                    "no wheel has that name",
                    "use one of: FL, FR, RL, RR, front, rear, left, right, all");
        }
        return wheels;
    }
}
