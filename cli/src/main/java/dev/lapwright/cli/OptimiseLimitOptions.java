package dev.lapwright.cli;

import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.study.optimise.OptimisationLimits;
import java.util.OptionalDouble;
import picocli.CommandLine.Option;

/** What a setup must keep. */
final class OptimiseLimitOptions {
    @Option(names = "--min-top-speed-kmh", paramLabel = "V", description = "Top speed at least, km/h.")
    Double minTopSpeedKmh;

    @Option(
            names = "--balance-percent",
            paramLabel = "FROM:TO",
            description =
                    "Limit balance within a band, percent: share of grip that the front axle takes less that of"
                            + " the rear axle, where corners are driven at the limit. Above 0 the front axle is first at its limit.")
    String balancePercent;

    @Option(
            names = "--min-ride-height-mm",
            paramLabel = "H",
            description = "Ride height of either axle at the top speed at least, mm, platform settled.")
    Double minRideHeightMm;

    @Option(
            names = "--no-upshift-in-corner",
            description = "No upshift at more than half of a corner's lateral acceleration.")
    boolean noUpshiftInCorner;

    /** The limits they describe. */
    OptimisationLimits limits() {
        OptionalDouble least = OptionalDouble.empty();
        OptionalDouble most = OptionalDouble.empty();
        if (balancePercent != null) {
            String[] ends = balancePercent.split(":", -1);
            if (ends.length != 2) {
                throw bad();
            }
            least = end(ends[0]);
            most = end(ends[1]);
        }
        return new OptimisationLimits(of(minTopSpeedKmh), least, most, of(minRideHeightMm), noUpshiftInCorner);
    }

    private static OptionalDouble of(Double value) {
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    private OptionalDouble end(String text) {
        OptionalDouble number = DecimalText.number(text);
        if (number.isEmpty()) {
            throw bad();
        }
        return number;
    }

    private InvalidValueException bad() {
        return new InvalidValueException(
                "--balance-percent " + balancePercent, "that is not a band", "write from:to, as in -1:2");
    }
}
