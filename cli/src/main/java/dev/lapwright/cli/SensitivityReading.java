package dev.lapwright.cli;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Caution;
import dev.lapwright.report.Numbers;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Says in plain words what a study of sensitivities found. */
final class SensitivityReading {
    private SensitivityReading() {}

    static List<String> of(SensitivityOutcome outcome) {
        SensitivityResult result = outcome.result();
        List<SensitivityResult.Gain> felt = outcome.felt();
        if (felt.isEmpty()) {
            List<String> said = new ArrayList<>();
            said.add("No adjustment of this car makes a difference to the lap time here.");
            fixed(result).ifPresent(said::add);
            return said;
        }
        String laps = result.laps() + " laps";
        List<String> said = new ArrayList<>();
        String visible = joined(felt, gain -> gain.isGain() && result.canBeSeen(gain));
        said.add(
                visible.isEmpty()
                        ? "In " + laps + " no gain is large enough to show on the timing screen in four tries of five."
                        : "Faster, and can be seen in " + laps + ": " + visible + ".");
        add(
                said,
                "Faster by the model, but cannot be seen in " + laps + "; choose it by the model or leave it alone",
                joined(felt, gain -> gain.isGain() && !result.canBeSeen(gain)));
        add(
                said,
                "At their fastest already, of the settings tried; what the slowest costs can be seen",
                joined(felt, gain -> !gain.isGain() && result.canBeSeen(gain)));
        add(
                said,
                "At their fastest already; what the slowest costs cannot be seen",
                joined(felt, gain -> !gain.isGain() && !result.canBeSeen(gain)));
        add(
                said,
                "No difference to the lap time in this model",
                result.gains().stream()
                        .filter(gain -> !felt.contains(gain))
                        .map(gain -> gain.adjustment().name())
                        .collect(Collectors.joining(", ")));
        pairs(result).ifPresent(said::add);
        fixed(result).ifPresent(said::add);
        return said;
    }

    private static void add(List<String> said, String beginning, String list) {
        if (!list.isEmpty()) {
            said.add(beginning + ": " + list + ".");
        }
    }

    private static String joined(List<SensitivityResult.Gain> gains, Predicate<SensitivityResult.Gain> which) {
        return gains.stream()
                .filter(which)
                .map(gain -> gain.adjustment().name() + " at "
                        + SensitivityOutcome.setting(gain, gain.shown().setting()) + " ("
                        + Numbers.signed(gain.shown().gain(), 3) + " s)")
                .collect(Collectors.joining(", "));
    }

    private static Optional<String> fixed(SensitivityResult result) {
        if (result.fixed().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(result.fixed().stream()
                .map(Adjustment::name)
                .collect(Collectors.joining(", ", "With one setting only, and so left out: ", ".")));
    }

    private static Optional<String> pairs(SensitivityResult result) {
        if (result.interactions().isEmpty()) {
            return Optional.empty();
        }
        SensitivityResult.Interaction strongest = result.interactions().get(0);
        double beyond = Math.abs(strongest.beyond());
        if (beyond < SensitivityResult.Gain.NOTHING) {
            return Optional.of("Steps of the strongest pairs add up: each can be chosen by itself.");
        }
        double size = Math.max(Math.abs(strongest.alone()), SensitivityResult.Gain.NOTHING);
        String all = "Of the strongest pairs " + strongest.first() + " and " + strongest.second()
                + " act together most, by " + Numbers.signed(strongest.beyond(), 3)
                + " s beyond the sum of their steps";
        return Optional.of(all
                + (beyond > size / 2
                        ? ": choose them together."
                        : ": small beside that sum, so each can be chosen nearly by itself."));
    }

    /** Where turning what gains can hurt somebody. */
    static List<String> cautions(SensitivityOutcome outcome) {
        Set<Caution> cautions = EnumSet.noneOf(Caution.class);
        outcome.felt().stream()
                .filter(SensitivityResult.Gain::isGain)
                .forEach(gain -> cautions.addAll(gain.cautions()));
        return cautions.stream().map(Caution::text).toList();
    }
}
