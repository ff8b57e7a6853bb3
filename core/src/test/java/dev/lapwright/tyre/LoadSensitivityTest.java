package dev.lapwright.tyre;

import dev.lapwright.checks.CheckFile;
import dev.lapwright.checks.CheckRow;
import org.junit.jupiter.params.ParameterizedTest;

class LoadSensitivityTest {
    @ParameterizedTest(name = "{0}")
    @CheckFile(
            value = "load-sensitivity.csv",
            quantities = {"friction", "force of a pair"})
    void frictionFallsWithLoad(CheckRow row) {
        LoadSensitivity tyre =
                new LoadSensitivity(row.number("friction"), row.number("sensitivity"), row.number("reference_n"));
        double load = row.number("load_n");
        row.verify(
                row.quantity().equals("friction")
                        ? tyre.friction(load)
                        : tyre.peakForce(load - row.number("transfer_n"))
                                + tyre.peakForce(load + row.number("transfer_n")));
    }
}
