package dev.lapwright.ride;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.Locale;

/**
 * Classes of road roughness after ISO 8608:2016: the displacement spectrum is Gd(n) = Gd(n0) (n/n0)^-2, n in waves per metre,
 * n0 = 0.1. Each class has four times the density of the one before it; a good race surface lies within A (common practice,
 * no source).
 */
public enum RoadClass {
    A,
    B,
    C,
    D,
    E,
    F,
    G,
    H;

    /** Wave number at which the density is given, waves per metre. */
    public static final double REFERENCE = 0.1;

    private static final double CLASS_A = 16e-6;

    /** Density Gd(n0), geometric mean of the class, m³. */
    public double density() {
        return CLASS_A * Math.pow(4, ordinal());
    }

    /** Density (m³) at a wave number, waves per metre. */
    public double density(double waveNumber) {
        double ratio = Check.positive("wave number (1/m)", waveNumber) / REFERENCE;
        return density() / (ratio * ratio);
    }

    /** The class of this letter. */
    public static RoadClass named(String letter) {
        try {
            return valueOf(letter.strip().toUpperCase(Locale.ROOT));
        } catch (IllegalArgumentException e) {
            throw new InvalidValueException(
                    "road", "'" + letter + "' is no class of ISO 8608", "take a letter, A to H");
        }
    }
}
