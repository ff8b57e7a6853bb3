package dev.lapwright.aero;

import dev.lapwright.fault.Check;

/**
 * The ride-height map: what the three areas add when the car stands off its reference heights.
 *
 * @param referenceFrontMm front height at which the base areas hold, mm
 * @param referenceRearMm rear height at which the base areas hold, mm
 * @param drag for CdA
 * @param liftFront for ClA front
 * @param liftRear for ClA rear
 */
public record RideHeightMap(
        double referenceFrontMm,
        double referenceRearMm,
        ResponseSurface drag,
        ResponseSurface liftFront,
        ResponseSurface liftRear)
        implements AeroMap {
    public RideHeightMap {
        Check.finite("reference front ride height (mm)", referenceFrontMm);
        Check.finite("reference rear ride height (mm)", referenceRearMm);
    }

    /** What is added to the base areas at dynamic heights in mm; a floor that touches the road is taken as at 0 mm. */
    @Override
    public Areas at(double frontMm, double rearMm) {
        double f = Math.max(frontMm, 0) - referenceFrontMm;
        double r = Math.max(rearMm, 0) - referenceRearMm;
        return new Areas(drag.value(f, r), liftFront.value(f, r), liftRear.value(f, r));
    }
}
