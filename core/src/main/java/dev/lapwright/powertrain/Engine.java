package dev.lapwright.powertrain;

/**
 * Full-load torque of an engine or motor over its speed: the seam for a model of one's own ({@link dev.lapwright.car.Car#with(Engine)}).
 * {@link TorqueCurve}, which documents hold, is one.
 *
 * <p>What a lap takes for granted:
 *
 * <ul>
 *   <li>units are rad/s and Nm at the crankshaft, at the reference air of the car's power correction;
 *   <li>from rest to the rev limit the value is finite and not below 0, and the same whenever it is asked for, from any thread;
 *   <li>it is continuous; kinks are allowed, jumps are not: a jump in torque is one in lap time. Between 400 even steps it is
 *       read by cubics, so that what is narrower than some 1/200 of the rev limit is not seen;
 *   <li>it is asked some 400 times when a car is set up, and never while a lap is driven: it may take its time.
 * </ul>
 */
@FunctionalInterface
public interface Engine {
    /**
     * Full-load torque.
     *
     * @param speed of the crankshaft, rad/s, from 0 to the rev limit
     * @return Nm, not below 0
     */
    double torque(double speed);
}
