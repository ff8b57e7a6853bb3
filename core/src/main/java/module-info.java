/**
 * The physics of a lap and the studies made with it: everything but files and charts.
 *
 * <p>A lap takes three lines: a car, a track, and the solver ({@link dev.lapwright.lap.LapSolver}).
 *
 * <pre>{@code
 * Car car = Documents.car("gt-talvex");
 * Track track = Documents.circuit("castelvane");
 * Lap lap = LapSolver.lap(car, track, Conditions.STANDARD);
 * }</pre>
 *
 * <p>{@code Documents} is in the module {@code dev.lapwright.shared}, which reads and writes JSON; a car can as well be
 * composed in code ({@link dev.lapwright.car.Car#of}), and a track of segments ({@link dev.lapwright.track.Segment}).
 *
 * <p>A sweep takes ten ({@link dev.lapwright.study.sweep.Sweep}):
 *
 * <pre>{@code
 * Car car = Documents.car("gt-talvex");
 * Track track = Documents.circuit("castelvane");
 * SweepResult wing = Sweep.of(car, track, Conditions.STANDARD)
 *         .over(SweepAxis.stepped("rear-wing", 0, 12, 1))
 *         .run();
 * for (SweepResult.Point point : wing.points()) {
 *     System.out.println(point.settings() + ": " + point.figures());
 * }
 * }</pre>
 *
 * <p>Where to look further: {@link dev.lapwright.lap} for a lap and its columns, {@link dev.lapwright.study} for the
 * questions that take many laps, {@link dev.lapwright.evidence} for lap times that were driven, {@link
 * dev.lapwright.fit} for what logged laps tell of the car, {@link dev.lapwright.ride} for kerbs and dampers, {@link
 * dev.lapwright.line} for the line, {@link dev.lapwright.track.survey} for circuits from surveyed points.
 *
 * <p>Values are SI unless a name says otherwise; axes follow ISO 8855 (a left turn is positive). What cannot be right is
 * refused with a {@link dev.lapwright.fault.LapwrightException} that says where, what, and what to do. Everything handed out
 * is immutable and may be shared between threads.
 */
// Commons Math 3 has no descriptor of its own; its name comes from its file. shared is not there yet when core is
// compiled.
@SuppressWarnings({"requires-automatic", "module"})
module dev.lapwright.core {
    requires commons.math3;

    exports dev.lapwright.aero;
    exports dev.lapwright.air;
    exports dev.lapwright.brief;
    exports dev.lapwright.car;
    exports dev.lapwright.chassis;
    exports dev.lapwright.doubt;
    exports dev.lapwright.draft;
    exports dev.lapwright.evidence;
    exports dev.lapwright.fault;
    exports dev.lapwright.fit;
    exports dev.lapwright.lap;
    exports dev.lapwright.line;
    exports dev.lapwright.powertrain;
    exports dev.lapwright.ride;
    exports dev.lapwright.sense;
    exports dev.lapwright.slip;
    exports dev.lapwright.study;
    exports dev.lapwright.study.advice;
    exports dev.lapwright.study.balance;
    exports dev.lapwright.study.landscape;
    exports dev.lapwright.study.compare;
    exports dev.lapwright.study.gearing;
    exports dev.lapwright.study.lines;
    exports dev.lapwright.study.opinion;
    exports dev.lapwright.study.optimise;
    exports dev.lapwright.study.plan;
    exports dev.lapwright.study.pressures;
    exports dev.lapwright.study.ride;
    exports dev.lapwright.study.robust;
    exports dev.lapwright.study.sensitivity;
    exports dev.lapwright.study.stint;
    exports dev.lapwright.study.sweep;
    exports dev.lapwright.study.weight;
    exports dev.lapwright.track;
    exports dev.lapwright.track.survey;
    exports dev.lapwright.tyre;

    // Stored lines are interpolated as lines are.
    exports dev.lapwright.numerics to
            dev.lapwright.shared;
}
