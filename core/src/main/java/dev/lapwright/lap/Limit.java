package dev.lapwright.lap;

/** Limit of a lap at a station: what keeps the car from going faster there. */
public enum Limit {
    /** The front axle has no grip left: limit understeer, or front wheels at the end of their traction. */
    FRONT_GRIP("front grip"),
    /** The rear axle has no grip left: limit oversteer, or rear wheels at the end of their traction. */
    REAR_GRIP("rear grip"),
    /** The engine gives no more. */
    POWER("power"),
    /** The engine turns as fast as it may, in top gear or in the last gear that can still gain speed. */
    REV_LIMIT("rev limit"),
    /** Slowing for what comes, as hard as tyres and brakes allow. */
    BRAKES("brakes"),
    /** Both inner wheels are about to leave the road. */
    ROLL_OVER("roll-over"),
    /** An axle is about to leave the road under drive or braking. */
    PITCH_OVER("pitch-over"),
    /** A rule of the track. */
    SPEED_RULE("speed rule");

    private final String label;

    Limit(String label) {
        this.label = label;
    }

    /** For tables and charts. */
    public String label() {
        return label;
    }
}
