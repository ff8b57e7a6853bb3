package dev.lapwright.fit;

import dev.lapwright.car.Unit;
import java.util.Locale;

/**
 * Nuisance parameter of a fit: what nobody asks for and nobody knows exactly, and what shows in the speeds all the same. Each
 * enters with a doubt, one standard deviation of what is known of it before the laps are looked at; the values given here are
 * ours, without a source.
 */
public enum FitNuisance {
    /** Mass with driver and fuel. */
    MASS("mass", Unit.PERCENT, 1, "% of mass with driver and fuel", Side.CAR),
    /** Share of the downforce on the front axle, percentage points. */
    AERO_BALANCE("aero balance", Unit.PERCENT, 2, "points of the downforce's front share", Side.CAR),
    /** Share of the weight on the front axle, percentage points. */
    FRONT_WEIGHT("front weight", Unit.PERCENT, 0.5, "points of the weight's front share", Side.CAR),
    /** Height of the centre of gravity. */
    CG_HEIGHT("cg height", Unit.MILLIMETRE, 20, "mm higher centre of gravity", Side.CAR),
    /** Fall of friction with load, all tyres, both ways. */
    LOAD_SENSITIVITY("load sensitivity", Unit.PERCENT, 20, "% of the fall of friction with load", Side.CAR),
    /** Friction of the front tyres over that of the rear tyres. */
    GRIP_BALANCE("grip balance", Unit.PERCENT, 2, "% of front over rear friction", Side.CAR),
    /** Share of the brake force at the front axle, percentage points. */
    BRAKE_BALANCE("brake balance", Unit.PERCENT, 1, "points of the brake force's front share", Side.CAR),
    /**
     * Radius that was driven over the circuit's, in all corners alike. It is taken as lateral friction alone, which gives the
     * same corner speeds to first order.
     */
    LINE("line", Unit.PERCENT, 2, "% of the radius driven", Side.LINE),
    /** Logged speed over true speed. */
    SPEED_SCALE("speed scale", Unit.PERCENT, 1, "% of logged over true speed", Side.SENSOR),
    /** Time by which the logged speed comes late. */
    SENSOR_LAG("sensor lag", Unit.SECOND, 0.2, "s that the logged speed comes late", Side.SENSOR),
    /** Length of the way driven over the circuit's: how far the clock tells the speed's scale. */
    WAY_LENGTH("way length", Unit.PERCENT, 0.3, "% of the way over the circuit's length", Side.LINE),
    /** Grip used in a further run over that of the first: tyres, road and driver differ from run to run. */
    RUN_GRIP("run grip", Unit.PERCENT, 0.5, "% of the grip used in run %d over the first's", Side.RUN),
    /** What wings, bars and springs do from the first run to a further one, over what the document says of it. */
    SETUP_EFFECT("setup effect", Unit.PERCENT, 15, "% of what run %d's change of setup does", Side.RUN);

    /** Where a nuisance lives. */
    enum Side {
        CAR,
        LINE,
        SENSOR,
        RUN
    }

    private final String title;
    private final Unit unit;
    private final double usual;
    private final String meaning;
    private final Side side;

    FitNuisance(String title, Unit unit, double usual, String meaning, Side side) {
        this.title = title;
        this.unit = unit;
        this.usual = usual;
        this.meaning = meaning;
        this.side = side;
    }

    /** For tables, without the unit. */
    public String title() {
        return title;
    }

    /** Unit of its doubt, and of what is found of it: differences from the car, circuit and log as given. */
    public Unit unit() {
        return unit;
    }

    /** Doubt where none is stated, one standard deviation, in its unit. */
    public double usual() {
        return usual;
    }

    /** What the number counts, in a few words that begin with the unit; that of a run for this run, counted from 1. */
    public String meaning(int run) {
        return side == Side.RUN ? String.format(Locale.ROOT, meaning.replace("% ", "%% "), run) : meaning;
    }

    /** Name under which a doubt is stated: {@code cg-height}. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    Side side() {
        return side;
    }
}
