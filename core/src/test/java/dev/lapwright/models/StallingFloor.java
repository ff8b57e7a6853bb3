package dev.lapwright.models;

import dev.lapwright.aero.AeroMap;
import dev.lapwright.aero.Areas;

/**
 * A floor that works best at one height and loses its downforce both below and above: a Gaussian hill over the mean of the two
 * heights, a share of it in front. Ours, as an example of a map that no quadratic can be.
 *
 * @param gain downforce area at the best height, m²
 * @param bestMm best mean height, mm
 * @param widthMm how far from it 39 % of the gain is lost, mm
 * @param frontShare share in front, 0 to 1
 */
public record StallingFloor(double gain, double bestMm, double widthMm, double frontShare) implements AeroMap {
    @Override
    public Areas at(double frontMm, double rearMm) {
        double mean = 0.5 * (Math.max(0, frontMm) + Math.max(0, rearMm));
        double x = (mean - bestMm) / widthMm;
        double lift = gain * Math.exp(-0.5 * x * x);
        return new Areas(0.1 * lift, frontShare * lift, (1 - frontShare) * lift);
    }
}
