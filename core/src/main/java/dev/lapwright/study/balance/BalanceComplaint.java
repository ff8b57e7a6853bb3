package dev.lapwright.study.balance;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * Complaint of a driver about the balance: {@code understeer:entry}, {@code oversteer:exit:T3}.
 *
 * @param understeer the front axle gives up first; else the rear does
 * @param phase when
 * @param corner number of the corner; 0 for all
 */
public record BalanceComplaint(boolean understeer, BalancePhase phase, int corner) {
    private static final Map<String, Boolean> TENDENCIES =
            Map.of("understeer", true, "push", true, "oversteer", false, "loose", false);
    private static final Map<String, BalancePhase> PHASES = Map.of(
            "entry", BalancePhase.ENTRY,
            "lift-off", BalancePhase.LIFT_OFF,
            "middle", BalancePhase.MIDDLE,
            "mid", BalancePhase.MIDDLE,
            "exit", BalancePhase.EXIT);
    private static final String EXAMPLE =
            "write understeer or oversteer, the phase (entry, lift-off, middle or exit) and,"
                    + " for one corner, that corner: oversteer:exit:T3";

    private static final String SEVERAL = "it holds more than one complaint";
    /** What to do about several complaints, and why. */
    public static final String ONE_AT_A_TIME = "ask for one at a time: what helps against one may make another worse";

    public BalanceComplaint {
        if (corner < 0) {
            throw new InvalidValueException("complaint", "corner " + corner + " does not exist", "number them from 1");
        }
    }

    /** The same as people say it: oversteer on exit. */
    public String label() {
        return tendency()
                + (phase == BalancePhase.LIFT_OFF ? " at " : phase == BalancePhase.EXIT ? " on " : " in ")
                + (phase == BalancePhase.ENTRY || phase == BalancePhase.MIDDLE ? "the " : "")
                + phase.label();
    }

    /** Understeer or oversteer. */
    public String tendency() {
        return understeer ? "understeer" : "oversteer";
    }

    /**
     * Reads a complaint.
     *
     * @param text tendency, phase and perhaps a corner, parted by colons or spaces
     * @param corners of the circuit, by number, T and number, or name
     * @throws InvalidValueException saying which word is not known
     */
    public static BalanceComplaint parse(String text, List<Corner> corners) {
        refuseSeveral(text);
        List<String> words = new ArrayList<>(
                Arrays.asList(text.strip().toLowerCase(Locale.ROOT).split("[:\\s]+", 3)));
        Boolean tendency = TENDENCIES.get(words.get(0));
        if (tendency == null) {
            throw fault(text, "'" + words.get(0) + "' is neither understeer nor oversteer");
        }
        if (words.size() < 2) {
            throw fault(text, "it does not say in which phase of a corner");
        }
        BalancePhase phase = PHASES.get(words.get(1));
        if (phase == null) {
            throw fault(text, "'" + words.get(1) + "' is no phase of a corner");
        }
        return new BalanceComplaint(tendency, phase, words.size() < 3 ? 0 : corner(text, words.get(2), corners));
    }

    /** What helps against one may make another worse, so each is asked by itself. */
    private static void refuseSeveral(String text) {
        String[] words = text.toLowerCase(Locale.ROOT).split("[^a-z-]+");
        long tendencies = Arrays.stream(words).filter(TENDENCIES::containsKey).count();
        String phases = text.strip().replaceFirst("^[^:\\s]+[:\\s]+", "");
        boolean severalPhases = Arrays.stream(phases.split("[,;+&/]|\\band\\b"))
                        .filter(part -> PHASES.containsKey(part.strip().toLowerCase(Locale.ROOT)))
                        .count()
                > 1;
        if (tendencies > 1 || severalPhases) {
            throw new InvalidValueException("complaint '" + text + "'", SEVERAL, ONE_AT_A_TIME);
        }
    }

    private static int corner(String text, String wanted, List<Corner> corners) {
        if (wanted.equals("all")) {
            return 0;
        }
        return Corner.find(corners, wanted)
                .map(Corner::number)
                .orElseThrow(() -> new InvalidValueException(
                        "complaint '" + text + "'",
                        "the circuit has no corner '" + wanted + "'",
                        "take T1 to T" + corners.size() + ", a corner's name, or all"));
    }

    private static InvalidValueException fault(String text, String problem) {
        return new InvalidValueException("complaint '" + text + "'", problem, EXAMPLE);
    }
}
