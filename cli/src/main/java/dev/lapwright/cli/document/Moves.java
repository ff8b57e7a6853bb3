package dev.lapwright.cli.document;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Unit;
import dev.lapwright.report.Numbers;
import java.util.ArrayList;
import java.util.List;

/** Says in words what an adjustment moves. */
public final class Moves {
    /** Relative difference below which two factors are the same: a car's document may give a dozen digits. */
    private static final double SAME = 1e-9;

    private Moves() {}

    /** A line for each quantity moved, and one for clicks and choices; at least one. */
    public static List<String> of(Adjustment adjustment, Car car) {
        List<String> lines = new ArrayList<>();
        for (Effect effect : adjustment.effects()) {
            lines.add(line(effect, adjustment, car.unitOf(effect.quantity())));
        }
        if (!adjustment.choices().isEmpty()) {
            List<String> choices = new ArrayList<>();
            adjustment.choices().forEach(subject -> choices.add(Numbers.plain(subject)));
            lines.add("choices: " + String.join(", ", choices));
        }
        if (adjustment.clickSize() > 0) {
            lines.add("1 click = " + Numbers.with(adjustment.clickSize(), adjustment.unit()));
        }
        return lines;
    }

    private static String line(Effect effect, Adjustment adjustment, Unit unit) {
        String step = switch (adjustment.unit()) {
            case NONE -> "1";
            case CLICK -> "click";
            default -> adjustment.unit().symbol();
        };
        if (effect instanceof Effect.Relative relative) {
            return effect.quantity() + " by " + Numbers.signed(relative.perUnit()) + " per " + step;
        }
        if (effect instanceof Effect.Absolute absolute && isTheSettingItself(absolute, adjustment.unit(), unit)) {
            return effect.quantity();
        }
        double standard = adjustment.standard();
        double least = effect.apply(0, adjustment.min(), standard);
        double most = effect.apply(0, adjustment.max(), standard);
        return effect.quantity() + " " + Numbers.plain(least) + ".." + Numbers.plain(most);
    }

    /** Whether the quantity is what is set, perhaps in another unit. */
    private static boolean isTheSettingItself(Effect.Absolute effect, Unit from, Unit to) {
        return effect.offset() == 0
                && from.convertsTo(to)
                && Math.abs(effect.factor() - from.convert(1, to)) <= SAME * Math.abs(effect.factor());
    }
}
