package dev.lapwright.aero;

import dev.lapwright.fault.Check;

/**
 * Answer of one aerodynamic area to ride height: a full quadratic in the changes of front and rear height from the
 * reference (a second-order response surface; Box and Wilson, J. R. Stat. Soc. B 13 (1951) 1), the usual way to condense a
 * ride-height map.
 *
 * @param front m² per mm of front height
 * @param rear m² per mm of rear height
 * @param frontSquare m² per mm²
 * @param rearSquare m² per mm²
 * @param cross m² per mm² of the product
 */
public record ResponseSurface(double front, double rear, double frontSquare, double rearSquare, double cross) {
    public ResponseSurface {
        Check.finite("ride-height map, front (m²/mm)", front);
        Check.finite("ride-height map, rear (m²/mm)", rear);
        Check.finite("ride-height map, front squared (m²/mm²)", frontSquare);
        Check.finite("ride-height map, rear squared (m²/mm²)", rearSquare);
        Check.finite("ride-height map, product (m²/mm²)", cross);
    }

    /** An area that does not care about ride height. */
    public static final ResponseSurface FLAT = new ResponseSurface(0, 0, 0, 0, 0);

    /** Change of the area, m², for changes of height in mm. */
    public double value(double frontMm, double rearMm) {
        return frontMm * (front + frontSquare * frontMm + cross * rearMm) + rearMm * (rear + rearSquare * rearMm);
    }
}
