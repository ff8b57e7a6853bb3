package dev.lapwright.lap;

/** The columns of a lap, each a value at every station. Wheels are named front left, front right, rear left, rear right. */
public enum Channel {
    /** Distance along the path. */
    DISTANCE("distance", "m"),
    /** Time since the start. */
    TIME("time", "s"),
    /** Road speed. */
    SPEED("speed", "m/s"),
    /** Change of speed: dv/dt. */
    ACCELERATION("acceleration", "m/s²"),
    /** What an accelerometer reads along the path: dv/dt + g sin θ. */
    LONGITUDINAL_ACCELERATION("longitudinal acceleration", "m/s²"),
    /** What the tyres supply across the path, positive to the left. */
    LATERAL_ACCELERATION("lateral acceleration", "m/s²"),
    /** What the road presses up with, without downforce. */
    NORMAL_ACCELERATION("normal acceleration", "m/s²"),
    /** Gear, from 1. */
    GEAR("gear", ""),
    /** Engine speed. */
    ENGINE_SPEED("engine speed", "rpm"),
    /** Drive force at the wheels. */
    DRIVE_FORCE("drive force", "N"),
    /** Brake force at the wheels. */
    BRAKE_FORCE("brake force", "N"),
    /** Aerodynamic drag. */
    DRAG("drag", "N"),
    /** Drag of cornering: side forces of tyres that run at slip angles. */
    CORNERING_DRAG("cornering drag", "N"),
    /** Downforce on the front axle. */
    DOWNFORCE_FRONT("front downforce", "N"),
    /** Downforce on the rear axle. */
    DOWNFORCE_REAR("rear downforce", "N"),
    /** Front ride height, platform settled. */
    RIDE_HEIGHT_FRONT("front ride height", "mm"),
    /** Rear ride height, platform settled. */
    RIDE_HEIGHT_REAR("rear ride height", "mm"),
    /** Load on the front left wheel. */
    LOAD_FRONT_LEFT("load front left", "N"),
    /** Load on the front right wheel. */
    LOAD_FRONT_RIGHT("load front right", "N"),
    /** Load on the rear left wheel. */
    LOAD_REAR_LEFT("load rear left", "N"),
    /** Load on the rear right wheel. */
    LOAD_REAR_RIGHT("load rear right", "N"),
    /** Share of the front axle's lateral grip that is taken, 1 at the limit. */
    LATERAL_UTILISATION_FRONT("front lateral use", ""),
    /** Share of the rear axle's lateral grip that is taken, 1 at the limit. */
    LATERAL_UTILISATION_REAR("rear lateral use", ""),
    /** Share of the front axle's grip that is taken in all, 1 at the limit. */
    UTILISATION_FRONT("front use", ""),
    /** Share of the rear axle's grip that is taken in all, 1 at the limit. */
    UTILISATION_REAR("rear use", ""),
    /** Highest steady speed at the place. */
    SPEED_LIMIT("highest steady speed", "m/s");

    private final String label;
    private final String unit;

    Channel(String label, String unit) {
        this.label = label;
        this.unit = unit;
    }

    /** For headers and axes, without the unit. */
    public String label() {
        return label;
    }

    /** Unit, empty for a pure number. */
    public String unit() {
        return unit;
    }
}
