package dev.lapwright.lap;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.powertrain.Differential;
import dev.lapwright.tyre.LoadSensitivity;
import dev.lapwright.tyre.TyreState;

/** One axle's constants for the kernel; friction holds compound, pressure, temperature and the day's grip. */
final class AxleData {
    final double track;
    /** Load transfer per newton of lateral force at the centre of gravity. */
    final double transfer;
    /** Lateral peak force per load is max(floorY, aY - bY F). */
    final double aY;

    final double bY;
    final double floorY;
    final double aX;
    final double bX;
    final double floorX;
    /** Cornering stiffness per load is max(floorC, aC - bC F), 1/rad. */
    final double aC;

    final double bC;
    final double floorC;
    final double toeSquared;
    final double powerTorqueBias;

    AxleData(
            Car car,
            double conditionsGrip,
            double track,
            double transfer,
            Quantity frictionX,
            Quantity sensitivityX,
            Quantity frictionY,
            Quantity sensitivityY,
            Quantity referenceLoad,
            Quantity stiffness,
            Quantity stiffnessSensitivity,
            Quantity pressure,
            Quantity idealPressure,
            Quantity toe,
            Quantity powerLock) {
        this.track = track;
        this.transfer = transfer;
        double grip = conditionsGrip
                * car.value(Quantity.COMPOUND_GRIP)
                * TyreState.gripFactor(car.value(pressure), car.value(idealPressure), car.value(Quantity.PRESSURE_LOSS))
                * TyreState.gripFactor(
                        car.value(Quantity.TYRE_TEMPERATURE),
                        car.value(Quantity.IDEAL_TEMPERATURE),
                        car.value(Quantity.TEMPERATURE_LOSS));
        double load = car.value(referenceLoad);
        double muX = grip * car.value(frictionX);
        aX = muX * (1 + car.value(sensitivityX));
        bX = muX * car.value(sensitivityX) / load;
        floorX = LoadSensitivity.FLOOR * muX;
        double muY = grip * car.value(frictionY);
        aY = muY * (1 + car.value(sensitivityY));
        bY = muY * car.value(sensitivityY) / load;
        floorY = LoadSensitivity.FLOOR * muY;
        double c = car.value(stiffness);
        aC = c * (1 + car.value(stiffnessSensitivity));
        bC = c * car.value(stiffnessSensitivity) / load;
        floorC = LoadSensitivity.FLOOR * c;
        double toeRadians = Math.toRadians(car.value(toe));
        toeSquared = toeRadians * toeRadians;
        powerTorqueBias = Differential.torqueBias(car.value(powerLock) / 100);
    }
}
