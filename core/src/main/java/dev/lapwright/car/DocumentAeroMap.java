package dev.lapwright.car;

import dev.lapwright.aero.ResponseSurface;
import dev.lapwright.aero.RideHeightMap;

/** The ride-height map that the quantities of a car describe. */
final class DocumentAeroMap {
    private DocumentAeroMap() {}

    static RideHeightMap of(Car values) {
        return new RideHeightMap(
                values.value(Quantity.REFERENCE_HEIGHT_FRONT),
                values.value(Quantity.REFERENCE_HEIGHT_REAR),
                new ResponseSurface(
                        values.value(Quantity.DRAG_PER_FRONT_HEIGHT),
                        values.value(Quantity.DRAG_PER_REAR_HEIGHT),
                        values.value(Quantity.DRAG_PER_FRONT_HEIGHT_SQUARED),
                        values.value(Quantity.DRAG_PER_REAR_HEIGHT_SQUARED),
                        values.value(Quantity.DRAG_PER_BOTH_HEIGHTS)),
                new ResponseSurface(
                        values.value(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT),
                        values.value(Quantity.LIFT_FRONT_PER_REAR_HEIGHT),
                        values.value(Quantity.LIFT_FRONT_PER_FRONT_HEIGHT_SQUARED),
                        values.value(Quantity.LIFT_FRONT_PER_REAR_HEIGHT_SQUARED),
                        values.value(Quantity.LIFT_FRONT_PER_BOTH_HEIGHTS)),
                new ResponseSurface(
                        values.value(Quantity.LIFT_REAR_PER_FRONT_HEIGHT),
                        values.value(Quantity.LIFT_REAR_PER_REAR_HEIGHT),
                        values.value(Quantity.LIFT_REAR_PER_FRONT_HEIGHT_SQUARED),
                        values.value(Quantity.LIFT_REAR_PER_REAR_HEIGHT_SQUARED),
                        values.value(Quantity.LIFT_REAR_PER_BOTH_HEIGHTS)));
    }
}
