package dev.lapwright.aero;

/**
 * Change of the aerodynamic areas of a car with its ride heights: the seam for a map of one's own
 * ({@link dev.lapwright.car.Car#with(AeroMap)}). {@link RideHeightMap}, which documents hold, is one.
 *
 * <p>What a lap takes for granted:
 *
 * <ul>
 *   <li>heights are in mm and may be those of a floor that touches (0 or below, to be taken as 0); areas are in m², to be added
 *       to those of body and wings, downforce positive, as changes of axle load at the ground;
 *   <li>the value is finite for any height from -100 to 500 mm, and the same whenever it is asked for, from any thread;
 *   <li>it is continuous, and so is its slope but for kinks: the platform is settled by Newton's method with differences over
 *       0.001 mm, and read over dynamic pressure by cubics;
 *   <li>downforce grows with falling height no faster than the springs push back, or the car is refused with an error;
 *   <li>it is asked some thousand times when a car is set up, and never while a lap is driven.
 * </ul>
 */
@FunctionalInterface
public interface AeroMap {
    /** What is added to the areas of body and wings at dynamic ride heights in mm. */
    Areas at(double frontMm, double rearMm);
}
