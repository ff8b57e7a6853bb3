package dev.lapwright.study.balance;

import dev.lapwright.lap.TurnState.Pedals;

/** Phases of a corner, in driving order. */
public enum BalancePhase {
    /** Braking while turning. */
    ENTRY("entry", Pedals.BRAKING),
    /** Off the throttle at the speed of turning in, brakes released. */
    LIFT_OFF("lift-off", Pedals.COASTING),
    /** At the greatest lateral use of the tyres, the speed held. */
    MIDDLE("middle", Pedals.HOLDING),
    /** Under power while unwinding. */
    EXIT("exit", Pedals.DRIVING);

    private final String label;
    private final Pedals pedals;

    BalancePhase(String label, Pedals pedals) {
        this.label = label;
        this.pedals = pedals;
    }

    /** For tables. */
    public String label() {
        return label;
    }

    /** What the driver does in it. */
    public Pedals pedals() {
        return pedals;
    }
}
