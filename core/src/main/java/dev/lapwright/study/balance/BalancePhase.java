package dev.lapwright.study.balance;

import dev.lapwright.lap.TurnState.Feet;

/** Where in a corner, in driving order. */
public enum BalancePhase {
    /** Braking while turning. */
    ENTRY("entry", Feet.BRAKING),
    /** Off the throttle at the speed of turning in, brakes released. */
    LIFT_OFF("lift-off", Feet.COASTING),
    /** At the greatest lateral use of the tyres, the speed held. */
    MIDDLE("middle", Feet.HOLDING),
    /** Under power while unwinding. */
    EXIT("exit", Feet.DRIVING);

    private final String label;
    private final Feet feet;

    BalancePhase(String label, Feet feet) {
        this.label = label;
        this.feet = feet;
    }

    /** For tables. */
    public String label() {
        return label;
    }

    /** What the driver does in it. */
    public Feet feet() {
        return feet;
    }
}
