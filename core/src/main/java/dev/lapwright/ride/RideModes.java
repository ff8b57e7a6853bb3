package dev.lapwright.ride;

/**
 * The two ways in which a quarter car swings freely without damping, body and wheel together.
 *
 * <p>The squares of the angular frequencies solve ms mu w² - (ms (ks + kt) + mu ks) w + ks kt = 0 (Barton and Fieldhouse,
 * Automotive Chassis Engineering, 2018, chapter 4).
 *
 * @param bodyFrequency of the slow mode, in which mostly the body moves, Hz
 * @param wheelFrequency of the quick mode, in which mostly the wheel moves, Hz
 * @param bodyShape travel of the wheel over that of the body in the slow mode
 * @param wheelShape travel of the body over that of the wheel in the quick mode; negative: against each other
 */
public record RideModes(double bodyFrequency, double wheelFrequency, double bodyShape, double wheelShape) {
    static RideModes of(QuarterCar car) {
        double ms = car.sprungMass();
        double mu = car.unsprungMass();
        double ks = car.wheelRate();
        double kt = car.tyreRate();
        double a = ms * mu;
        double b = ms * (ks + kt) + mu * ks;
        double root = Math.sqrt(b * b - 4 * a * ks * kt);
        double quick = (b + root) / (2 * a);
        // The product of the roots is ks kt/a: no difference of near equals.
        double slow = ks * kt / (a * quick);
        return new RideModes(
                Math.sqrt(slow) / (2 * Math.PI),
                Math.sqrt(quick) / (2 * Math.PI),
                (ks - ms * slow) / ks,
                ks / (ks - ms * quick));
    }
}
