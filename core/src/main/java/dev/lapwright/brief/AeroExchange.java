package dev.lapwright.brief;

/**
 * What drag, downforce and grip are worth to each other at a circuit, for the car as it stands; each changed by a percent of
 * the whole, wings included. Gains are positive where the lap is faster.
 *
 * @param lessDrag gain for one percent less drag area, s
 * @param moreDownforce gain for one percent more downforce area on each axle, s
 * @param moreGrip gain for one percent more grip of all tyres, s
 * @param dragArea CdA of which a percent was taken, m², at the mean speed of the lap
 * @param downforceArea ClA on both axles of which a percent was added, m²
 */
public record AeroExchange(
        double lessDrag, double moreDownforce, double moreGrip, double dragArea, double downforceArea) {
    /**
     * Drag area (m²) that one m² more of downforce area may cost before the lap becomes slower: a wing that pays more is too
     * steep here. NaN where there is no downforce or less drag gains nothing.
     */
    public double dragForDownforce() {
        double perDownforce = moreDownforce / downforceArea;
        double perDrag = lessDrag / dragArea;
        return perDrag > 0 && downforceArea > 0 ? perDownforce / perDrag : Double.NaN;
    }
}
