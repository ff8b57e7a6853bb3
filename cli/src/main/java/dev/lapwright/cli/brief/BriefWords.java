package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.car.Adjustment;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.study.compare.Comparison;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Wording of numbers and differences in a brief, for readers new to the tool. */
public final class BriefWords {
    private static final int DECIMALS = 3;

    private BriefWords() {}

    /** What people call an adjustment, for pages and terminals: as it is written. */
    public static String name(Adjustment adjustment) {
        return Report.verbatim(adjustment.label().isBlank() ? adjustment.name() : adjustment.label());
    }

    /** The same within a sentence. */
    public static String inSentence(Adjustment adjustment) {
        String name = name(adjustment);
        boolean acronym = name.length() > 1 && Character.isUpperCase(name.charAt(1));
        return acronym || name.isEmpty() ? name : Character.toLowerCase(name.charAt(0)) + name.substring(1);
    }

    /** A setting with its unit. */
    public static String setting(Adjustment adjustment, double value) {
        // Never broken between the number and its unit.
        return Numbers.with(value, adjustment.unit()).replace(' ', '\u00A0');
    }

    /** A change as in "rear wing from 6 to 8 deg". */
    public static String change(BriefResult.SettingChange change) {
        return inSentence(change.adjustment()) + " from " + Numbers.plain(change.from()) + " to "
                + setting(change.adjustment(), change.to());
    }

    /** A change for a table, with its clicks or steps: "3 → 5 (2 steps up)". */
    public static String fromTo(BriefResult.SettingChange change) {
        return Numbers.plain(change.from()) + "\u00A0→\u00A0" + setting(change.adjustment(), change.to())
                + clicks(change);
    }

    private static String clicks(BriefResult.SettingChange change) {
        Adjustment adjustment = change.adjustment();
        double click = adjustment.clickSize();
        double size = click > 0 ? click : adjustment.choices().isEmpty() ? adjustment.step() : 0;
        if (!(size > 0)) {
            return "";
        }
        double moved = Math.abs(change.to() - change.from()) / size;
        double count = Math.rint(moved);
        if (!(Math.abs(moved - count) < 1e-6)) {
            return "";
        }
        return " (" + Numbers.plain(count) + (click > 0 ? " click" : " step") + (count == 1 ? "" : "s")
                + (change.to() > change.from() ? " up)" : " down)");
    }

    /** Changes as a heading names them. */
    public static String changes(List<BriefResult.SettingChange> changes) {
        String said = listed(changes.stream().map(BriefWords::change).toList());
        return Character.toUpperCase(said.charAt(0)) + said.substring(1);
    }

    /** A difference (s), for a table: minus is faster. */
    public static String signed(double seconds) {
        return LapTimeDifference.isNone(seconds) ? Numbers.fixed(0, DECIMALS) : Numbers.signed(seconds, DECIMALS);
    }

    /** Where a change acts, and by what: "most in sector 2; of all places, at T6 Spina; where rear grip is the limit". */
    public static String where(BriefResult.ChangeEffect effect) {
        if (LapTimeDifference.isNone(effect.difference())) {
            return "no difference to the lap time";
        }
        List<Comparison.Part> places = effect.places();
        boolean faster = effect.difference() < 0;
        Comparison.Part main = places.get(faster ? 0 : places.size() - 1);
        String sector =
                effect.bySector().size() > 1 ? "most in sector " + effect.mainSector() + "; of all places " : "";
        return sector
                + (main.isCorner() ? "most at " : "most from ")
                + Report.verbatim(main.label())
                + cause(effect, faster);
    }

    private static String cause(BriefResult.ChangeEffect effect, boolean faster) {
        Limit main = null;
        double most = 0;
        for (Map.Entry<Limit, Double> entry : effect.byCause().entrySet()) {
            double size = faster ? -entry.getValue() : entry.getValue();
            if (size > most) {
                most = size;
                main = entry.getKey();
            }
        }
        return main == null ? "" : "; mainly where " + limited(main);
    }

    /** What it is like to be limited so. */
    public static String limited(Limit limit) {
        return switch (limit) {
            case FRONT_GRIP -> "front grip is the limit";
            case REAR_GRIP -> "rear grip is the limit";
            case POWER -> "power is the limit";
            case REV_LIMIT -> "the rev limit holds it";
            case BRAKES -> "it brakes";
            case ROLL_OVER -> "it would roll over";
            case PITCH_OVER -> "it would pitch over";
            case SPEED_RULE -> "a speed rule holds it";
        };
    }

    /** Words with commas, and "and" before the last. */
    public static String listed(List<String> words) {
        int n = words.size();
        return n < 2 ? String.join("", words) : String.join(", ", words.subList(0, n - 1)) + " and " + words.get(n - 1);
    }

    /** A number of laps; a word where no number would do. */
    public static String laps(int count) {
        return count == Integer.MAX_VALUE ? "never" : count > 1000 ? "> 1000" : Integer.toString(count);
    }

    /** The names of adjustments in a sentence as people call them. */
    public static String named(String sentence, List<Adjustment> adjustments) {
        String said = sentence;
        for (Adjustment adjustment : adjustments) {
            said = said.replaceAll(
                    "(?<![\\w-])" + Pattern.quote(adjustment.name()) + "(?![\\w-])",
                    Matcher.quoteReplacement(inSentence(adjustment)));
        }
        return sentence(said);
    }

    /** A sentence: a capital first, a full stop last. */
    public static String sentence(String text) {
        if (text.isEmpty()) {
            return text;
        }
        String begun = Character.toUpperCase(text.charAt(0)) + text.substring(1);
        return begun.endsWith(".") ? begun : begun + ".";
    }
}
