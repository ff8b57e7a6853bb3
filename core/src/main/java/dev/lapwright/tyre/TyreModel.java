package dev.lapwright.tyre;

/**
 * Grip and stiffness of one tyre over the load that it carries: the seam for a model of one's own
 * ({@link dev.lapwright.car.Car#with(TyreModel, TyreModel)}). {@link LoadSensitiveTyre}, which documents hold, is one.
 *
 * <p>What a lap takes for granted:
 *
 * <ul>
 *   <li>loads are in N; friction is the greatest force in a direction over the load, cornering stiffness the first slope of force over slip
 *       angle over the load, in 1/rad; all at the surface's reference grip, ideal pressure and temperature, and best lean: what a day, a
 *       compound and the other quantities of the car do to grip is multiplied on;
 *   <li>from no load, where the limit counts, to any load the values are finite and above 0, and the same whenever they are asked for,
 *       from any thread;
 *   <li>they are continuous; kinks are allowed, jumps are not. Up to four times the car's weight on a wheel they are read by cubics
 *       between 800 even steps, and stay beyond it;
 *   <li>force grows with load: friction falls more slowly than load rises;
 *   <li>between first slope and peak the curve of force over slip is that of {@code sin(1.5 atan(√3 ρ))} with its peak at 1, and
 *       forces across and along share an ellipse with the car's exponent (docs/theory.md, 5.3 and 6.2b);
 *   <li>they are asked some thousand times when a car is set up, and never while a lap is driven.
 * </ul>
 */
public interface TyreModel {
    /** Greatest force along the car over the load, at a load in N. */
    double frictionX(double load);

    /** Greatest force across the car over the load, at a load in N. */
    double frictionY(double load);

    /** Cornering stiffness over the load, 1/rad, at a load in N. */
    double stiffness(double load);
}
