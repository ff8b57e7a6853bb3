package dev.lapwright.study.advice;

import dev.lapwright.study.balance.BalanceComplaint;
import dev.lapwright.study.balance.BalancePhase;
import java.util.ArrayList;
import java.util.List;

/**
 * Common practice against a complaint, no source: what race engineers turn first, by what is handed on in the trade.
 *
 * @param words for people
 * @param quantity path of what it moves
 * @param more whether it makes them greater
 */
record Practice(String words, String quantity, boolean more) {
    private static final String FRONT_BAR = "suspension.front.antiRollBarNmPerDeg";
    private static final String REAR_BAR = "suspension.rear.antiRollBarNmPerDeg";
    private static final String FRONT_SPRING = "suspension.front.springNPerMm";
    private static final String REAR_SPRING = "suspension.rear.springNPerMm";
    private static final String FRONT_HEIGHT = "suspension.front.rideHeightMm";
    private static final String REAR_HEIGHT = "suspension.rear.rideHeightMm";
    private static final String REAR_COAST = "drive.rear.coastLockPercent";
    private static final String FRONT_COAST = "drive.front.coastLockPercent";
    private static final String REAR_WING = "aero.wings.rear.angleDeg";
    private static final Practice SOFTER_FRONT_BAR = new Practice("softer front anti-roll bar", FRONT_BAR, false);
    private static final Practice STIFFER_FRONT_BAR = new Practice("stiffer front anti-roll bar", FRONT_BAR, true);
    private static final Practice SOFTER_REAR_BAR = new Practice("softer rear anti-roll bar", REAR_BAR, false);
    private static final Practice STIFFER_REAR_BAR = new Practice("stiffer rear anti-roll bar", REAR_BAR, true);
    private static final Practice SOFTER_FRONT_SPRING = new Practice("softer front springs", FRONT_SPRING, false);
    private static final Practice SOFTER_REAR_SPRING = new Practice("softer rear springs", REAR_SPRING, false);
    private static final Practice MORE_WING = new Practice("more rear wing", REAR_WING, true);
    private static final Practice LESS_WING = new Practice("less rear wing", REAR_WING, false);
    private static final Practice LESS_RAKE = new Practice("less rake", REAR_HEIGHT, false);
    private static final Practice MORE_RAKE = new Practice("more rake", REAR_HEIGHT, true);
    private static final Practice REAR_BRAKE =
            new Practice("a little brake balance to the rear", "brakes.frontSharePercent", false);
    private static final Practice FRONT_BRAKE =
            new Practice("a little brake balance to the front", "brakes.frontSharePercent", true);
    private static final Practice MORE_COAST_LOCK = new Practice("more lock on the overrun", REAR_COAST, true);
    private static final Practice LESS_COAST_LOCK = new Practice("less lock on the overrun", REAR_COAST, false);
    private static final Practice LESS_POWER_LOCK =
            new Practice("less lock under drive", "drive.rear.powerLockPercent", false);

    /** Driven wheels that steer: the outer one pulls the nose in. */
    private static final Practice MORE_FRONT_POWER_LOCK =
            new Practice("more lock under drive", "drive.front.powerLockPercent", true);

    /** Of no use where the car is slow. */
    private static final List<Practice> OF_SPEED = List.of(MORE_WING, LESS_WING, LESS_RAKE, MORE_RAKE);

    /** Against the kerb, at each end. */
    static final List<Practice> KERB = List.of(
            new Practice("softer front fast bump", "suspension.front.fastBumpNsPerM", false),
            new Practice("softer rear fast bump", "suspension.rear.fastBumpNsPerM", false),
            new Practice("more ride height", FRONT_HEIGHT, true),
            SOFTER_FRONT_BAR,
            SOFTER_REAR_BAR);

    /** Whether an adjustment that moves these makes this move: rake is turned by what leaves the front where it is. */
    boolean isMadeBy(List<String> paths) {
        boolean rake = quantity.equals(REAR_HEIGHT);
        return paths.stream().anyMatch(this::moves) && !(rake && paths.contains(FRONT_HEIGHT));
    }

    /** Whether a quantity is the one that it moves; a rear wing is one whose name says rear, and a lock on the overrun that of the driven axle. */
    boolean moves(String path) {
        return path.equals(quantity)
                || (quantity.equals(REAR_COAST) && path.equals(FRONT_COAST))
                || (quantity.equals(REAR_WING) && path.matches("aero\\.wings\\.[^.]*rear[^.]*\\.angleDeg"));
    }

    /**
     * What is turned first.
     *
     * @param slow whether all corners complained of are slow
     * @param frontDriven whether the front axle is driven, and it alone
     */
    static List<Practice> against(BalanceComplaint complaint, boolean slow, boolean frontDriven) {
        List<Practice> all = new ArrayList<>(
                complaint.understeer() ? understeer(complaint.phase(), frontDriven) : oversteer(complaint.phase()));
        if (slow) {
            all.removeAll(OF_SPEED);
        }
        return all;
    }

    private static List<Practice> understeer(BalancePhase phase, boolean frontDriven) {
        return switch (phase) {
            case ENTRY -> List.of(SOFTER_FRONT_BAR, REAR_BRAKE, LESS_COAST_LOCK, SOFTER_FRONT_SPRING);
            case LIFT_OFF -> List.of(SOFTER_FRONT_BAR, LESS_COAST_LOCK, MORE_RAKE);
            case MIDDLE -> List.of(SOFTER_FRONT_BAR, STIFFER_REAR_BAR, SOFTER_FRONT_SPRING, MORE_RAKE, LESS_WING);
            case EXIT ->
                List.of(STIFFER_REAR_BAR, SOFTER_FRONT_BAR, frontDriven ? MORE_FRONT_POWER_LOCK : LESS_POWER_LOCK);
        };
    }

    private static List<Practice> oversteer(BalancePhase phase) {
        return switch (phase) {
            case ENTRY -> List.of(SOFTER_REAR_BAR, FRONT_BRAKE, MORE_COAST_LOCK, MORE_WING);
            case LIFT_OFF -> List.of(MORE_COAST_LOCK, SOFTER_REAR_BAR, LESS_RAKE);
            case MIDDLE -> List.of(SOFTER_REAR_BAR, STIFFER_FRONT_BAR, SOFTER_REAR_SPRING, MORE_WING, LESS_RAKE);
            case EXIT -> List.of(SOFTER_REAR_BAR, SOFTER_REAR_SPRING, MORE_WING);
        };
    }
}
