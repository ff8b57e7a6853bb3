package dev.lapwright.draft;

import dev.lapwright.car.Conditions;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.powertrain.TorqueCurve;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Engine, gears and rolling radius that do the answered top speed: what of them is not answered is chosen such that it is. Steps between
 * guessed ratios narrow towards the top by one factor (progressive stepping: Naunheimer, Automotive Transmissions; from memory).
 */
final class DraftGearing {
    /** Radius that a loaded tyre rolls on, of its unloaded one: common practice, no source. */
    private static final double ROLLS_ON = 0.97;

    private static final double PROGRESSION = 1.04;
    private static final double EFFICIENCY = 0.92;
    private static final double EFFICIENCY_ALL = 0.88;
    private static final double LIGHT_CAR_KG = 450;
    private static final double RADIUS_LIGHT = 0.25;
    private static final double RADIUS_USUAL = 0.31;
    /** Rolling radii that cars have, m. */
    private static final Range RADII = new Range(0.18, 0.42);
    /** Rev limit over the engine speed at top speed where the air stops the car there, at least. */
    private static final double ABOVE_TOP = 1.03;

    /** A rev limit that a top speed gives is rounded. */
    private static final double ROUNDED = 1.0002;

    private static final double RADIANS_PER_RPM = Math.PI / 30;

    final double radius;
    /** Whether the radius follows from a size that was answered. */
    final boolean sizeKnown;

    final double[] ratios;
    final double finalDrive;
    final double revLimit;
    final double efficiency;
    final TorqueCurve curve;
    private final CarAnswers answers;
    private final double airFactor;

    DraftGearing(CarAnswers answers) {
        this.answers = answers;
        CarAnswers.Power power = answers.power();
        efficiency = answers.driven() == DrivenWheels.ALL ? EFFICIENCY_ALL : EFFICIENCY;
        airFactor = power.kind().correction().powerFactor(Conditions.STANDARD.air());
        double top = answers.topSpeed().metresPerSecond();
        double engineAtTop = power.rpm()
                * (answers.topSpeed().atLimiter()
                        ? power.kind().usualRevLimit()
                        : power.kind() == EngineKind.ELECTRIC
                                ? power.kind().revLimit().middle()
                                : 1);
        CarAnswers.Gears gears = answers.gears();
        OptionalDouble size = diameter();
        sizeKnown = size.isPresent();
        boolean ratiosKnown = !gears.ratios().isEmpty();
        if (sizeKnown) {
            radius = Digits.rounded(0.5e-3 * ROLLS_ON * size.getAsDouble(), 3);
        } else if (ratiosKnown && gears.finalDrive().isPresent()) {
            radius = radiusByGearing(gears, engineAtTop, top);
        } else {
            radius = answers.massKg() < LIGHT_CAR_KG ? RADIUS_LIGHT : RADIUS_USUAL;
        }
        double overallTop = engineAtTop * RADIANS_PER_RPM * radius / top;
        int n = gears.count();
        if (ratiosKnown) {
            ratios = gears.ratios().stream().mapToDouble(r -> r).toArray();
            finalDrive = gears.finalDrive().orElse(Digits.rounded(overallTop / ratios[n - 1], 4));
        } else {
            finalDrive = gears.finalDrive().orElse(Digits.rounded(overallTop, 4));
            ratios = stepped(n, overallTop / finalDrive, spread());
        }
        revLimit = limit(engineSpeed(n - 1, top));
        curve = power.kind().curve(power.watts(), power.rpm(), revLimit);
    }

    /** Outer diameter of the driven tyres, mm, where their size says it. */
    private OptionalDouble diameter() {
        OptionalDouble front = answers.tyres().front().diameterMm();
        OptionalDouble rear = answers.tyres().rear().diameterMm();
        return switch (answers.driven()) {
            case FRONT -> front;
            case REAR -> rear;
            case ALL ->
                front.isPresent() && rear.isPresent()
                        ? OptionalDouble.of(0.5 * (front.getAsDouble() + rear.getAsDouble()))
                        : front.isPresent() ? front : rear;
        };
    }

    private static double radiusByGearing(CarAnswers.Gears gears, double engineAtTop, double top) {
        double overall =
                gears.ratios().get(gears.count() - 1) * gears.finalDrive().getAsDouble();
        double found = top * overall / (engineAtTop * RADIANS_PER_RPM);
        if (!RADII.holds(found)) {
            throw new InvalidValueException(
                    "gears and top speed",
                    kmh(top) + " in top gear at " + Check.text(Math.rint(engineAtTop))
                            + " rpm, about the speed of its power, want tyres that roll on a radius of "
                            + metres(found) + " m; cars have " + metres(RADII.low()) + " to " + metres(RADII.high())
                            + " m",
                    "see to the final drive, "
                            + Check.text(Digits.rounded(
                                    overall
                                            * RADII.middle()
                                            / found
                                            / gears.ratios().get(gears.count() - 1),
                                    3))
                            + " would fit, or say a top speed near "
                            + kmh(top * RADII.middle() / found)
                            + "; with the tyre's whole size (like 205/50R15) it need not be guessed");
        }
        return Digits.rounded(found, 4);
    }

    private double spread() {
        // First over top gear with six of them: common practice, no source.
        double ofSix = switch (answers.tyres().kind()) {
            case ROAD -> 4.2;
            case TRACK -> 3.6;
            default -> 2.8;
        };
        return Math.pow(ofSix, (answers.gears().count() - 1) / 5.0);
    }

    private static double[] stepped(int n, double top, double spread) {
        double[] ratios = new double[n];
        double first = n < 2 ? 1 : Math.pow(spread / Math.pow(PROGRESSION, 0.5 * (n - 1) * (n - 2)), 1.0 / (n - 1));
        // So few gears that their steps would have to widen have even steps.
        double progression = first > 1.02 ? PROGRESSION : 1;
        double step = first > 1.02 ? first : Math.pow(spread, 1.0 / Math.max(1, n - 1));
        for (int i = 0; i < n; i++) {
            int down = n - 1 - i;
            double ratio = top * Math.pow(step, down) * Math.pow(progression, 0.5 * down * (down - 1));
            ratios[i] = Digits.rounded(ratio, 4);
        }
        return ratios;
    }

    /** The limit that lets the engine do the top speed, 1/min. */
    private double limit(double atTop) {
        CarAnswers.Power power = answers.power();
        Range possible = power.kind().revLimit();
        double most = possible.high() * power.rpm();
        boolean atLimiter = answers.topSpeed().atLimiter();
        double least = atLimiter ? possible.low() * power.rpm() : 0;
        int last = ratios.length - 1;
        if (atTop > most || atTop < least) {
            double top = answers.topSpeed().metresPerSecond();
            double wanted = atTop > most ? most : least;
            throw new InvalidValueException(
                    "gears and top speed",
                    "at " + kmh(top) + " in top gear the engine turns at " + Check.text(Math.rint(atTop))
                            + " rpm, and has its power at " + Check.text(power.rpm()) + " rpm: "
                            + (atTop > most ? "it cannot turn so fast" : "no limiter stops it below that"),
                    "say " + (atTop > most ? "at most " : "at least ") + kmh(top * wanted / atTop)
                            + ", a final drive of " + Check.text(Digits.rounded(finalDrive * wanted / atTop, 3))
                            + (sizeKnown
                                    ? ", or tyres "
                                            + Check.text(Math.rint(2000 * radius / ROLLS_ON * atTop / wanted))
                                            + " mm high"
                                    : ", or the tyre's whole size, like 205/50R15")
                            + (atTop < least ? ", or that no limiter stops it" : ""));
        }
        if (atLimiter) {
            return Digits.rounded(engineSpeed(last, answers.topSpeed().metresPerSecond()), 5);
        }
        return Digits.rounded(
                Math.min(most, Math.max(power.kind().usualRevLimit() * power.rpm(), ABOVE_TOP * atTop)), 4);
    }

    /** Engine speed in a gear (from 0) at a road speed in m/s, 1/min. */
    double engineSpeed(int gear, double speed) {
        return speed * ratios[gear] * finalDrive / radius / RADIANS_PER_RPM;
    }

    /** Most drive force at a road speed, m/s, in any gear the engine can turn in, on a standard day, N. */
    double force(double speed) {
        double most = 0;
        for (int g = 0; g < ratios.length; g++) {
            double rpm = engineSpeed(g, speed);
            if (rpm <= revLimit * ROUNDED) {
                double torque = curve.torque(Math.min(rpm, revLimit) * RADIANS_PER_RPM);
                most = Math.max(most, torque * airFactor * efficiency * ratios[g] * finalDrive / radius);
            }
        }
        return most;
    }

    /**
     * Mass with what turns over the mass, in the gear that pulls hardest at a speed.
     *
     * @param speed m/s
     * @param massKg kg
     * @param wheels inertia of all wheels, kg m²
     * @param engine inertia of the engine, kg m²
     */
    double massFactor(double speed, double massKg, double wheels, double engine) {
        int gear = ratios.length - 1;
        for (int g = ratios.length - 1; g >= 0 && engineSpeed(g, speed) <= revLimit; g--) {
            gear = g;
        }
        double overall = ratios[gear] * finalDrive;
        return 1 + (wheels + engine * overall * overall) / (massKg * radius * radius);
    }

    /** Peak power at the wheels on a standard day, W. */
    double wheelPower() {
        return answers.power().watts() * airFactor * efficiency;
    }

    static String kmh(double speed) {
        return String.format(Locale.ROOT, "%.0f km/h", 3.6 * speed);
    }

    private static String metres(double length) {
        return String.format(Locale.ROOT, "%.2f", length);
    }
}
