package dev.lapwright.fit;

import dev.lapwright.car.Unit;

/** Parameter of a car that can be fitted. */
public enum FitParameter {
    /** Factor on the peak friction of all tyres, both ways; 1 is the car as given. */
    GRIP("grip", Unit.NONE, "factor on the peak friction of all four tyres"),
    /** CdA at the reference ride heights, wings counted as they stand. */
    DRAG_AREA("drag area", Unit.SQUARE_METRE, "CdA at the reference ride heights, wings and all"),
    /** ClA of both axles at the reference ride heights, wings counted as they stand; the aero balance is kept. */
    DOWNFORCE_AREA("downforce area", Unit.SQUARE_METRE, "ClA at the reference ride heights, wings and all"),
    /** Factor on the torque curve; 1 is the car as given. */
    POWER("power", Unit.NONE, "factor on the torque curve"),
    /** Rolling resistance over load, the part that does not grow with speed. */
    ROLLING_RESISTANCE("rolling resistance", Unit.NONE, "rolling resistance over load");

    private final String title;
    private final Unit unit;
    private final String meaning;

    FitParameter(String title, Unit unit, String meaning) {
        this.title = title;
        this.unit = unit;
        this.meaning = meaning;
    }

    /** For tables and charts, without the unit. */
    public String title() {
        return title;
    }

    /** Unit of its values. */
    public Unit unit() {
        return unit;
    }

    /** What it is, in a few words. */
    public String meaning() {
        return meaning;
    }
}
