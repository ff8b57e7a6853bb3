package dev.lapwright.logs;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.fault.Check;
import dev.lapwright.files.DocumentException;
import dev.lapwright.samples.LapStarts;
import dev.lapwright.samples.SampleColumn;
import dev.lapwright.samples.SampleHeader;
import dev.lapwright.samples.SampleRows;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * Channels of a log in SI, one value for each sample; one that is not logged, or never moves, is an empty array.
 *
 * @param lap numbers; empty if they are not logged
 * @param units that were told by the values where no heading tells them
 */
record DrivenChannels(
        double[] distance,
        double[] time,
        double[] speed,
        double[] throttle,
        double[] brake,
        double[] gear,
        double[] longitudinalAcceleration,
        double[] lateralAcceleration,
        double[] steering,
        double[] yawRate,
        double[] lap,
        Map<SampleColumn, String> units) {
    private static final double[] NONE = new double[0];
    /** No car is faster, m/s; what is logged so is in another unit. */
    private static final double FASTEST = 130;
    /** Nobody logs laps whose greatest acceleration is less, m/s²: what is logged so is in g. */
    private static final double GENTLE = 4.5;
    /** A pedal reads a little more than its full travel, and no more. */
    private static final double FULL = 1.2;

    private static final double FULL_PERCENT = 120;
    /** Of its travel: nobody drives laps with less. */
    private static final double MOST_OF_SHARES = 0.012;

    private static final Set<String> PRESSURES = Set.of("bar", "kpa", "mpa", "psi");

    /** Reads them, and says in {@code remarks} what was done. */
    static DrivenChannels of(String source, SampleHeader header, SampleRows rows, List<String> remarks) {
        Map<SampleColumn, String> units = new EnumMap<>(SampleColumn.class);
        double[] speed = rows.numbers(SampleColumn.SPEED);
        double[] distance = header.has(SampleColumn.DISTANCE) ? rows.numbers(SampleColumn.DISTANCE) : NONE;
        double[] time = header.has(SampleColumn.TIME) ? rows.times() : NONE;
        double[] lap = header.has(SampleColumn.LAP) ? rows.held(SampleColumn.LAP) : NONE;
        double[] gear = header.has(SampleColumn.GEAR) ? rows.gears() : NONE;
        ChannelReader reader = new ChannelReader(source, header, rows, units, remarks);
        double[] throttle = reader.pedal(SampleColumn.THROTTLE);
        double[] brake = reader.pedal(SampleColumn.BRAKE);
        double[] ax = reader.acceleration(SampleColumn.LONGITUDINAL_ACCELERATION);
        double[] ay = reader.acceleration(SampleColumn.LATERAL_ACCELERATION);
        double[] steering = reader.moving(SampleColumn.STEERING);
        double[] yaw = reader.moving(SampleColumn.YAW_RATE);
        rows.checkOrder(SampleColumn.TIME, time, 0);
        rows.checkOrder(SampleColumn.DISTANCE, distance, LapStarts.JITTER);
        rows.throwIfAny();
        reader.checkSpeed(speed);
        for (int i = 0; i < speed.length; i++) {
            // A car at rest may read a little below.
            speed[i] = speed[i] < 0 && speed[i] > -1 ? 0 : speed[i];
        }
        return new DrivenChannels(distance, time, speed, throttle, brake, gear, ax, ay, steering, yaw, lap, units);
    }

    private record ChannelReader(
            String source,
            SampleHeader header,
            SampleRows rows,
            Map<SampleColumn, String> units,
            List<String> remarks) {
        double[] pedal(SampleColumn column) {
            if (!header.has(column)) {
                return NONE;
            }
            double[] values = rows.held(column);
            double most = Arrays.stream(values).max().orElse(0);
            if (!(most > 0)) {
                remarks.add("The " + column.title() + " never moves: it is left out.");
                return NONE;
            }
            SampleHeader.Place place = header.place(column);
            double full = 1;
            if (PRESSURES.contains(place.unit().toLowerCase(Locale.ROOT))) {
                full = most;
                remarks.add("The " + column.title() + " is a pressure: it is taken as a share of its greatest.");
            } else if (!place.unitSaid() && most > FULL && most <= FULL_PERCENT) {
                full = 100;
                units.put(column, "% (by its values)");
            } else if (most > FULL) {
                throw new DocumentException(
                        source,
                        "the " + column.title() + " goes up to " + Check.text(most)
                                + " times its full travel, which looks like "
                                + (place.unitSaid() ? "another unit" : "a pressure or raw counts"),
                        "put its unit in the heading: " + column.title() + " (%), or for a brake also (bar)");
            }
            if (place.unitSaid() && full == 1 && most <= MOST_OF_SHARES) {
                remarks.add(
                        "The " + column.title() + " goes up to no more than " + Check.text(100 * most)
                                + " % of its travel, which looks like a share of 1 under another unit: put no unit in the heading.");
            }
            double[] shares = new double[values.length];
            for (int i = 0; i < values.length; i++) {
                shares[i] = Math.max(0, Math.min(1, values[i] / full));
            }
            return shares;
        }

        double[] moving(SampleColumn column) {
            if (!header.has(column)) {
                return NONE;
            }
            double[] values = rows.held(column);
            double most = Arrays.stream(values).map(Math::abs).max().orElse(0);
            if (!(most > 0)) {
                remarks.add("The " + column.title().replace('_', ' ') + " is 0 throughout: it is left out.");
                return NONE;
            }
            return values;
        }

        double[] acceleration(SampleColumn column) {
            if (!header.has(column)) {
                return NONE;
            }
            double[] values = rows.held(column);
            double most = Arrays.stream(values).map(Math::abs).max().orElse(0);
            if (!(most > 0)) {
                remarks.add("The " + column.title() + " is 0 throughout: it is left out.");
                return NONE;
            }
            if (header.place(column).unitSaid() && most < GENTLE) {
                remarks.add("The " + column.title().replace('_', ' ') + " goes up to no more than " + Check.text(most)
                        + " m/s² by its unit, which looks like g: put its own in the heading.");
            } else if (most < GENTLE) {
                units.put(column, "g (by its values)");
                for (int i = 0; i < values.length; i++) {
                    values[i] *= StandardAtmosphere.GRAVITY;
                }
            }
            return values;
        }

        void checkSpeed(double[] speed) {
            double most = Arrays.stream(speed).max().orElse(0);
            if (!(most <= FASTEST)) {
                SampleHeader.Place place = header.place(SampleColumn.SPEED);
                throw new DocumentException(
                        source,
                        "its speeds go up to " + Check.text(most / place.factor()) + " " + place.unit()
                                + (place.unitSaid() ? "" : " (assumed)")
                                + (place.factor() == 1 ? ", which looks like km/h or mph" : ", which no car does"),
                        "put the unit in the heading, as in speed (km/h), or say --column speed=HEADING:km/h");
            }
        }
    }
}
