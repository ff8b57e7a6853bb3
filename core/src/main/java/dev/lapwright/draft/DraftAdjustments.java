package dev.lapwright.draft;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Adjustment.Range;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * Adjustments of a drafted car: what can usually be turned on such cars, over the ranges that such cars usually have. Common practice, no
 * source; the real car's own take their place.
 */
final class DraftAdjustments {
    private static final double[] BAR_STEPS = {0.5, 0.7, 1, 1.4, 2};
    private static final int BAR_STANDARD = 3;
    private static final double LITRE_KG = 0.745;

    private final Car car;
    private final CarAnswers answers;
    private final List<Adjustment> all = new ArrayList<>();

    private DraftAdjustments(Car car, CarAnswers answers) {
        this.car = car;
        this.answers = answers;
    }

    /**
     * Those of a car.
     *
     * @param rates by which the tyres' vertical rate grows with pressure, N/mm per bar, front and rear
     */
    static List<Adjustment> of(Car car, CarAnswers answers, double[] rates) {
        DraftAdjustments made = new DraftAdjustments(car, answers);
        made.wings();
        made.spring("front", Quantity.SPRING_FRONT);
        made.spring("rear", Quantity.SPRING_REAR);
        made.bar("front", Quantity.BAR_FRONT);
        made.bar("rear", Quantity.BAR_REAR);
        made.finalDrive();
        made.pressure("front", Quantity.HOT_PRESSURE_FRONT, Quantity.VERTICAL_RATE_FRONT, rates[0]);
        made.pressure("rear", Quantity.HOT_PRESSURE_REAR, Quantity.VERTICAL_RATE_REAR, rates[1]);
        made.stepped("brake-balance", "Front share of brake force", Unit.PERCENT, Quantity.BRAKE_FRONT_SHARE, 6, 0.5);
        made.lock();
        made.stepped("front-camber", "Front camber, both wheels", Unit.DEGREE, Quantity.CAMBER_FRONT, 1, 0.25);
        made.stepped("rear-camber", "Rear camber, both wheels", Unit.DEGREE, Quantity.CAMBER_REAR, 1, 0.25);
        made.fuelAndBallast();
        return made.all;
    }

    private void add(String name, String label, Unit unit, Range range, Effect... effects) {
        all.add(new Adjustment(name, label, unit, range, List.of(effects)));
    }

    private static Effect direct(Quantity quantity) {
        return new Effect.Absolute(quantity.path(), 0, 1);
    }

    private void stepped(String name, String label, Unit unit, Quantity quantity, double reach, double step) {
        double at = car.value(quantity);
        double min = Math.max(quantity.min(), at - reach);
        double max = Math.min(quantity.max(), at + reach);
        add(name, label, unit, Range.stepped(min, max, step, at), direct(quantity));
    }

    private void wings() {
        car.wings().forEach(wing -> {
            String path = "aero.wings." + wing.name() + ".angleDeg";
            add(
                    wing.name() + "-wing",
                    (wing.name().equals("front") ? "Front" : "Rear") + " wing",
                    Unit.DEGREE,
                    Range.stepped(wing.minAngleDeg(), wing.maxAngleDeg(), 1, car.value(path)),
                    new Effect.Absolute(path, 0, 1));
        });
    }

    private void spring(String end, Quantity quantity) {
        double at = car.value(quantity);
        double step = at > 100 ? 10 : at > 25 ? 5 : 1;
        int down = (int) Math.floor(0.3 * at / step);
        int up = (int) Math.ceil(0.4 * at / step);
        add(
                end + "-spring",
                (end.equals("front") ? "Front" : "Rear") + " springs, rate at the wheel",
                Unit.NEWTON_PER_MM,
                Range.stepped(at - down * step, at + up * step, step, at),
                direct(quantity));
    }

    private void bar(String end, Quantity quantity) {
        double[] settings = new double[BAR_STEPS.length];
        double[] values = new double[BAR_STEPS.length];
        for (int i = 0; i < settings.length; i++) {
            settings[i] = i + 1;
            values[i] = Digits.rounded(BAR_STEPS[i] * car.value(quantity), i + 1 == BAR_STANDARD ? 15 : 3);
        }
        add(
                end + "-bar",
                (end.equals("front") ? "Front" : "Rear") + " anti-roll bar (position)",
                Unit.NONE,
                Range.stepped(1, settings.length, 1, BAR_STANDARD),
                new Effect.Tabulated(quantity.path(), settings, values));
    }

    private void finalDrive() {
        double at = car.value(Quantity.FINAL_DRIVE);
        List<Double> choices = new ArrayList<>();
        for (double factor : new double[] {0.9, 0.95, 1, 1.05, 1.1}) {
            choices.add(factor == 1 ? at : Digits.rounded(factor * at, 4));
        }
        add("final-drive", "Final drive", Unit.NONE, Range.among(at, choices), direct(Quantity.FINAL_DRIVE));
    }

    private void pressure(String end, Quantity pressure, Quantity rate, double perBar) {
        double at = car.value(pressure) / 100;
        double reach = at > 1.2 ? 0.4 : 0.2;
        double min = Digits.toStep(at - reach, 0.05);
        double max = Digits.toStep(at + reach, 0.05);
        add(
                end + "-pressure",
                (end.equals("front") ? "Front" : "Rear") + " hot pressure",
                Unit.BAR,
                Range.stepped(min, max, 0.05, at),
                new Effect.Absolute(pressure.path(), 0, 100),
                new Effect.Relative(rate.path(), Digits.rounded(perBar, 2)));
    }

    private void lock() {
        Quantity lock = answers.driven() == DrivenWheels.FRONT ? Quantity.POWER_LOCK_FRONT : Quantity.POWER_LOCK_REAR;
        if (car.value(lock) > 0) {
            stepped("lock-under-drive", "Differential lock under drive", Unit.PERCENT, lock, 20, 5);
        }
    }

    private void fuelAndBallast() {
        double fuel = car.value(Quantity.FUEL_MASS);
        if (fuel > 0) {
            double litres = fuel / LITRE_KG;
            add(
                    "fuel-litres",
                    "Fuel (litres)",
                    Unit.NONE,
                    Range.stepped(1, Math.rint(3 * litres), 1, Math.rint(litres)),
                    new Effect.Absolute(Quantity.FUEL_MASS.path(), 0, LITRE_KG));
        }
        add(
                "ballast",
                "Ballast",
                Unit.KILOGRAM,
                Range.stepped(0, Math.max(10, 5 * Math.rint(0.01 * answers.massKg())), 5, 0),
                new Effect.Relative(Quantity.MASS.path(), 1));
    }
}
