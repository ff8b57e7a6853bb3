package dev.lapwright.study.balance;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Driver's words of the car, as the trade has them: which end slides, when, and where. Several complaints are parted by
 * commas, semicolons, "and" or "but"; what a later one leaves out is as in the one before.
 *
 * @param complaints of the balance, in the order said
 * @param kerb whether the driver says that the car does not take a kerb
 * @param assumed what was not said and is taken to be meant, for people; may be empty
 */
public record DriverWords(List<BalanceComplaint> complaints, boolean kerb, List<String> assumed) {
    /** The words that are understood, for people. */
    public static final String VOCABULARY =
            "understeer, push, tight, will not turn or no front grip; oversteer, loose, tail out, snap, spin, wheelspin or no"
                    + " rear grip; on entry, turning in or braking; on lifting; in the middle or at the apex; on exit or power; in T3 or a corner's name, slow, medium,"
                    + " fast or long corners, or all; will not take the kerb";

    private static final Map<Pattern, Boolean> TENDENCIES = new LinkedHashMap<>();
    private static final Map<Pattern, BalancePhase> PHASES = new LinkedHashMap<>();
    private static final Map<Pattern, BalanceComplaint.CornerKind> KINDS = new LinkedHashMap<>();

    static {
        TENDENCIES.put(
                words(
                        "understeer(s|ing)?|push(es|ing)?|tight|lazy|plough(s|ing)?|no( grip at the)? front( end)?( grip)?|(will not|won't|does not|doesn't) turn( in)?|"
                                + "(runs|washes|goes) wide|front (end )?(slides|washes out|goes|gives up)( first)?"),
                true);
        TENDENCIES.put(
                words(
                        "oversteer(s|ing)?|loose|snap(s|ping)?( loose)?( out(?! of))?|tail[ -]happy|tail( comes| steps| goes)?( out(?! of)| round)?|"
                                + "(rear|back)( end)? (slides|steps out|comes round|goes|gives up)( first)?|(wheel ?)?spin(s|ning)?|"
                                + "no( grip at the)? rear( end)?( grip)?|no (traction|drive)|(the )?rears? locks?( up)?|nervous|twitchy"),
                false);
        PHASES.put(
                words("lift-?off|lift(s|ing)?( off)?|off( the)? (throttle|power|gas)|coast(s|ing)?"),
                BalancePhase.LIFT_OFF);
        PHASES.put(words("entry|way in|turn(s|ing)?[ -]in|brak(e|es|ing)"), BalancePhase.ENTRY);
        PHASES.put(words("mid(dle)?(-corner)?|apex|steady"), BalancePhase.MIDDLE);
        PHASES.put(words("exit|way out|power|throttle|traction|accelerat(es|ing)"), BalancePhase.EXIT);
        // Where nothing else says when.
        PHASES.put(words("into"), BalancePhase.ENTRY);
        PHASES.put(words("out of"), BalancePhase.EXIT);
        KINDS.put(words("slow( (corners|ones))?"), BalanceComplaint.CornerKind.SLOW);
        KINDS.put(words("medium( (corners|ones))?"), BalanceComplaint.CornerKind.MEDIUM);
        KINDS.put(words("fast( (corners|ones))?|quick( (corners|ones))?"), BalanceComplaint.CornerKind.FAST);
        KINDS.put(words("long( (corners|ones))?"), BalanceComplaint.CornerKind.LONG);
        KINDS.put(words("all( corners)?|everywhere|every corner"), BalanceComplaint.CornerKind.ALL);
    }

    private static final Pattern KERB =
            words("(will not|won't|does not|doesn't) (take|like|ride)( the)? (kerbs?|bumps?)|"
                    + "(bounces|hops|jumps|skips|too stiff|harsh) over( the)? (kerbs?|bumps?)|kerbs?( upset it)?");
    private static final Pattern WHEELSPIN = words("wheel ?spin(s|ning)?|no (traction|drive)");
    private static final Pattern SPIN = words("(wheel ?)?spin(s|ning)?|no (traction|drive)");
    private static final Pattern SNAP = words("snap(s|ping)?");
    private static final Pattern NOISE = words(
            "(and|but|the|a|an|it|its|is|are|car|my|i|when|if|on|in|at|of|out|to|from|into|under"
                    + "|too|very|really|bit|gets|goes|has|with|off|me|then|while|corners?|through|turns?|for|there|there's)");
    private static final Pattern NUMBERED = Pattern.compile("(?<![\\w-])t?(\\d+)(?![\\w-])");

    public DriverWords {
        complaints = List.copyOf(complaints);
        assumed = List.copyOf(assumed);
    }

    private static Pattern words(String choice) {
        return Pattern.compile("(?<![\\w'-])(?:" + choice + ")(?![\\w'-])");
    }

    /**
     * Reads what a driver says.
     *
     * @param said one or more complaints each
     * @param corners of the circuit, by number, T and number, or name
     * @param frontDriven whether the front axle alone is driven, so that it is the one whose wheels spin
     * @throws InvalidValueException for words and corners that are not known, where no end of the car is named, and where two complaints
     *     contradict each other
     */
    public static DriverWords read(List<String> said, List<Corner> corners, boolean frontDriven) {
        Reading reading = new Reading(corners, frontDriven);
        for (String text : said) {
            reading.read(text);
        }
        reading.refuseContradictions();
        return new DriverWords(reading.complaints, reading.kerb, reading.assumed);
    }

    /** What has been read so far. */
    private static final class Reading {
        private final List<Corner> corners;
        private final boolean frontDriven;
        private final List<BalanceComplaint> complaints = new ArrayList<>();
        private final List<String> assumed = new ArrayList<>();
        private boolean kerb;

        private String whole = "";
        private String clause = "";
        private String rest = "";

        Reading(List<Corner> corners, boolean frontDriven) {
            this.corners = corners;
            this.frontDriven = frontDriven;
        }

        void read(String text) {
            whole = text;
            BalanceComplaint before = null;
            for (String part : text.strip().toLowerCase(Locale.ROOT).split("[,;+&/]|\\s(?:and|but)\\s")) {
                if (part.isBlank() && !text.isBlank()) {
                    continue;
                }
                clause = part.strip();
                rest = part.replace(':', ' ').replace('\u2019', '\'');
                if (take(KERB)) {
                    kerb = true;
                    rest = NUMBERED.matcher(rest).replaceAll(" ");
                    refuseRest();
                    continue;
                }
                before = complaint(before);
                complaints.add(before);
            }
        }

        private BalanceComplaint complaint(BalanceComplaint before) {
            int corner = named();
            boolean spin = SPIN.matcher(rest).find();
            boolean snap = SNAP.matcher(rest).find();
            boolean frontSpins = frontDriven && WHEELSPIN.matcher(rest).find();
            Optional<Boolean> tendency = first(TENDENCIES).map(front -> front || frontSpins);
            Optional<BalancePhase> phase = first(PHASES);
            Optional<BalanceComplaint.CornerKind> kind = first(KINDS);
            if (corner == 0 && kind.isEmpty()) {
                corner = numbered();
            }
            refuseRest();
            if (tendency.isEmpty() && before == null) {
                throw fault(
                        "it does not say which end slides",
                        "begin with understeer or push, or with oversteer or loose");
            }
            boolean understeer = tendency.orElseGet(() -> before.understeer());
            BalancePhase when = phase.orElseGet(() -> supposed(before, spin, snap));
            boolean placed = corner > 0 || kind.isPresent() || before == null || tendency.isPresent();
            return placed
                    ? new BalanceComplaint(understeer, when, corner, kind.orElse(BalanceComplaint.CornerKind.ALL))
                    : new BalanceComplaint(understeer, when, before.corner(), before.kind());
        }

        private BalancePhase supposed(BalanceComplaint before, boolean spin, boolean snap) {
            if (spin) {
                return BalancePhase.EXIT;
            }
            if (before != null && !snap) {
                return before.phase();
            }
            BalancePhase phase = snap ? BalancePhase.LIFT_OFF : BalancePhase.MIDDLE;
            assumed.add("'" + clause + "' does not say when: taken to be "
                    + (phase == BalancePhase.MIDDLE ? "the middle of the corner" : "on lifting"));
            return phase;
        }

        /** The number of the corner that is named; 0 if none is. */
        private int named() {
            for (Corner corner : corners) {
                String name = corner.name().toLowerCase(Locale.ROOT);
                if (!name.isBlank() && take(words(Pattern.quote(name)))) {
                    rest = rest.replaceAll("(?<![\\w-])t" + corner.number() + "(?![\\w-])", " ");
                    return corner.number();
                }
            }
            return 0;
        }

        private int numbered() {
            Matcher number = NUMBERED.matcher(rest);
            if (!number.find()) {
                return 0;
            }
            String wanted = number.group();
            rest = rest.substring(0, number.start()) + " " + rest.substring(number.end());
            return Corner.find(corners, wanted)
                    .map(Corner::number)
                    .orElseThrow(() -> fault(
                            "the circuit has no corner '" + wanted + "'",
                            "take T1 to T" + corners.size() + ", a corner's name, or all"));
        }

        private boolean take(Pattern pattern) {
            Matcher matcher = pattern.matcher(rest);
            if (!matcher.find()) {
                return false;
            }
            rest = rest.substring(0, matcher.start()) + " " + rest.substring(matcher.end());
            return true;
        }

        private <T> Optional<T> first(Map<Pattern, T> dictionary) {
            for (Map.Entry<Pattern, T> entry : dictionary.entrySet()) {
                if (take(entry.getKey())) {
                    return Optional.of(entry.getValue());
                }
            }
            return Optional.empty();
        }

        private void refuseRest() {
            String left = NOISE.matcher(rest)
                    .replaceAll(" ")
                    .replaceAll("[.!?\\s]+", " ")
                    .strip();
            if (!left.isEmpty()) {
                throw fault("'" + left + "' is not understood", "say it in these words: " + VOCABULARY);
            }
        }

        void refuseContradictions() {
            for (BalanceComplaint one : complaints) {
                for (BalanceComplaint other : complaints) {
                    if (one.contradicts(other)) {
                        throw one.contradiction(other, one.where());
                    }
                }
            }
        }

        private InvalidValueException fault(String problem, String remedy) {
            return new InvalidValueException("complaint '" + whole + "'", problem, remedy);
        }
    }
}
