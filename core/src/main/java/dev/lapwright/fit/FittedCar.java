package dev.lapwright.fit;

import dev.lapwright.aero.Wing;
import dev.lapwright.car.Car;
import java.util.LinkedHashMap;
import java.util.Map;

/** Makes the car that the fitted values describe. */
final class FittedCar {
    private FittedCar() {}

    /** A document's car under another name. */
    static Car named(Car document, String name, String description) {
        Map<Wing, Double> wings = new LinkedHashMap<>();
        document.wings().forEach(w -> wings.put(w, document.value("aero.wings." + w.name() + ".angleDeg")));
        return Car.of(
                name,
                description,
                document.quantities(),
                wings,
                document.gearRatios(),
                document.torqueCurve(),
                document.powerCorrection(),
                document.adjustments());
    }
}
