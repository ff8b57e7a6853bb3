package dev.lapwright.study.balance;

import dev.lapwright.fault.InvalidValueException;

/**
 * Complaint of a driver about the balance, as {@link DriverWords} reads it.
 *
 * @param understeer the front axle gives up first; else the rear does
 * @param phase when
 * @param corner number of the corner; 0 for all of the kind
 * @param kind which corners, where no number is given
 */
public record BalanceComplaint(boolean understeer, BalancePhase phase, int corner, CornerKind kind) {
    private static final double METRES_PER_SECOND_PER_KMH = 1 / 3.6;
    /** At their slowest speed, km/h: common practice, no source. */
    private static final double SLOW_KMH = 100;

    private static final double FAST_KMH = 160;
    /** Driven at their slowest speed, s: our choice, no source. */
    private static final double LONG_S = 3;

    /** Kinds of corners that drivers speak of. */
    public enum CornerKind {
        /** Every one. */
        ALL("all corners"),
        /** Below 100 km/h where it is slowest. */
        SLOW("slow corners (below 100 km/h)"),
        /** Between slow and fast. */
        MEDIUM("medium corners (100 to 160 km/h)"),
        /** 160 km/h or more where it is slowest. */
        FAST("fast corners (160 km/h or more)"),
        /** One that takes three seconds or more. */
        LONG("long corners (3 s or more)");

        private final String label;

        CornerKind(String label) {
            this.label = label;
        }

        /** For people. */
        public String label() {
            return label;
        }
    }

    public BalanceComplaint {
        if (corner < 0) {
            throw new InvalidValueException("complaint", "corner " + corner + " does not exist", "number them from 1");
        }
    }

    /** A complaint of one corner, or with 0 of all. */
    public BalanceComplaint(boolean understeer, BalancePhase phase, int corner) {
        this(understeer, phase, corner, CornerKind.ALL);
    }

    /** The same as people say it: oversteer on exit. */
    public String label() {
        return tendency()
                + (phase == BalancePhase.LIFT_OFF ? " at " : phase == BalancePhase.EXIT ? " on " : " in ")
                + (phase == BalancePhase.ENTRY || phase == BalancePhase.MIDDLE ? "the " : "")
                + phase.label();
    }

    /** Where, as people say it: T3, all corners, slow corners. */
    public String where() {
        return corner > 0 ? "T" + corner : kind.label();
    }

    /** Understeer or oversteer. */
    public String tendency() {
        return understeer ? "understeer" : "oversteer";
    }

    /** Whether it is of more than one corner. */
    public boolean isOfSeveral() {
        return corner == 0;
    }

    /** Whether it is of corners none of which is above 100 km/h where it is slowest, so that wings do little there. */
    public boolean isOfSlow(BalanceResult balance) {
        BalanceComplaint slow = new BalanceComplaint(understeer, phase, 0, CornerKind.SLOW);
        return balance.corners().stream().filter(this::concerns).allMatch(slow::concerns);
    }

    /** Whether it is of this corner. */
    boolean concerns(BalanceResult.CornerBalance one) {
        if (corner > 0) {
            return one.corner().number() == corner;
        }
        double speed = one.in(BalancePhase.MIDDLE)
                .map(phaseThere -> phaseThere.state().speed())
                .orElse(Double.NaN);
        double slow = SLOW_KMH * METRES_PER_SECOND_PER_KMH;
        double fast = FAST_KMH * METRES_PER_SECOND_PER_KMH;
        return switch (kind) {
            case ALL -> true;
            case SLOW -> speed < slow;
            case MEDIUM -> speed >= slow && speed < fast;
            case FAST -> speed >= fast;
            // One that spans the start line is left out, as its length is not known without the track.
            case LONG -> one.corner().exit() - one.corner().entry() >= LONG_S * speed;
        };
    }

    /** Whether another says the opposite of the same phase of the same corners. */
    public boolean contradicts(BalanceComplaint other) {
        return isOpposite(other) && corner == other.corner && kind == other.kind;
    }

    private boolean isOpposite(BalanceComplaint other) {
        return understeer != other.understeer && phase == other.phase;
    }

    /**
     * Refuses another that says the opposite of the same phase of a corner that both are of, under whatever names.
     *
     * @throws InvalidValueException if there is such a corner
     */
    public void refuseOpposite(BalanceComplaint other, BalanceResult balance) {
        if (isOpposite(other)) {
            balance.corners().stream()
                    .filter(one -> concerns(one) && other.concerns(one))
                    .findFirst()
                    .ifPresent(one -> {
                        throw contradiction(other, "T" + one.corner().number());
                    });
        }
    }

    /** The refusal of another that says the opposite somewhere. */
    InvalidValueException contradiction(BalanceComplaint other, String where) {
        return new InvalidValueException(
                "complaint",
                label() + " and " + other.label() + " in " + where
                        + " contradict each other: one end alone gives up first",
                "say which comes first, and where: a car that pushes and then snaps is often one that is given more lock until the"
                        + " rear lets go, or whose tyres go off during a run");
    }
}
