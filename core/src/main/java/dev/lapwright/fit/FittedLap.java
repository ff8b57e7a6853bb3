package dev.lapwright.fit;

/**
 * How one lap entered the fit.
 *
 * @param lap as given
 * @param loggedLength from its first sample to its last, m
 * @param scale logged distance is multiplied by this to lie along the track
 * @param offset and then this is added, m
 * @param loggedTime by its clock, stretched to the whole lap, s; NaN if it has none
 * @param speedTime by its speeds along its own distance, s
 * @param share of the lap that counts, 0 to 1: weights after the robust treatment
 * @param dropped share of the lap left out: gaps, lifts where the car could go flat out, stretches that no setting
 *     explains
 * @param lifted share of the lap where the driver was off the throttle and off the brake while the model is flat out;
 * NaN if     throttle was not logged
 * @param gearAgreement share of the lap in the gear that the fitted car is in; NaN if gears were not logged
 * @param accelerationRms root mean square of logged less fitted longitudinal acceleration, m/s²; NaN if it was not
 *     logged
 */
public record FittedLap(
        DrivenLap lap,
        double loggedLength,
        double scale,
        double offset,
        double loggedTime,
        double speedTime,
        double share,
        double dropped,
        double lifted,
        double gearAgreement,
        double accelerationRms) {}
