package dev.lapwright.air;

/**
 * Law by which an engine's power follows the air: the factor by which the power at a standard's reference air must be multiplied to
 * get the power in this air. It is the inverse of the correction that the standard applies to a dynamometer reading.
 */
public enum PowerCorrection {
    /** Power does not depend on the air: electric motors, and turbocharged engines that hold their boost. */
    NONE {
        @Override
        public double powerFactor(Atmosphere air) {
            return 1;
        }
    },
    /** SAE J1349 (June 1990): spark ignition, mechanical efficiency 85 %; reference 99 kPa dry, 25 °C. */
    SAE_J1349 {
        @Override
        public double powerFactor(Atmosphere air) {
            double correction =
                    1.180 * (99_000 / air.dryPressure()) * Math.sqrt(air.temperature() / WARM_REFERENCE) - 0.18;
            return 1 / correction;
        }
    },
    /** ISO 1585 (UN R85 annex 5): naturally aspirated spark ignition; reference 99 kPa dry, 298 K. */
    ISO_1585 {
        @Override
        public double powerFactor(Atmosphere air) {
            return 1 / (Math.pow(99_000 / air.dryPressure(), 1.2) * Math.pow(air.temperature() / WARM_REFERENCE, 0.6));
        }
    },
    /** DIN 70020: reference 1013.25 hPa total, 20 °C. */
    DIN_70020 {
        @Override
        public double powerFactor(Atmosphere air) {
            return air.pressure() / 101_325 / Math.sqrt(air.temperature() / 293.15);
        }
    };

    private static final double WARM_REFERENCE = 298.15;

    /** Power in this air over power in the reference air. */
    public abstract double powerFactor(Atmosphere air);
}
