package dev.lapwright.documents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Fields in other units. Factors: NIST Special Publication 811 (2008), Guide for the Use of the International System of
 * Units, appendix B.8, as printed there; a tolerance is half a unit of the last digit printed, or rounding where the
 * factor is exact (bold there).
 */
class UnitsTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/other-units.json"));

    @ParameterizedTest
    @CsvSource({
        // written, quantity, factor printed, share of it that its last digit leaves open
        "2000, MASS, 4.5359237e-1, 1e-15", // pound (avoirdupois) to kilogram, exact
        "100, WHEELBASE, 2.54e-2, 1e-15", // inch to metre, exact
        "60, TRACK_FRONT, 2.54e-2, 1e-15",
        "4, RIDE_HEIGHT_FRONT, 25.4, 1e-15", // inch to millimetre, exact
        "12, WHEEL_RADIUS, 2.54e-2, 1e-15",
        "400, SPRING_FRONT, 0.1751268, 3e-7", // pound-force per inch to N/m: 1.751 268 E+02
        "1200, VERTICAL_RATE_FRONT, 0.1751268, 3e-7",
        "26, HOT_PRESSURE_FRONT, 6.894757, 1e-7", // psi to kilopascal: 6.894 757 E+00
        "1.8, IDEAL_PRESSURE_FRONT, 100, 1e-15", // bar to kilopascal, exact
    })
    void areConvertedByThePublishedFactor(double written, Quantity quantity, double factor, double share) {
        assertThat(CAR.value(quantity)).isCloseTo(written * factor, within(written * factor * share));
    }

    @Test
    void fahrenheitBecomesCelsius() {
        // NIST SP 811 B.8: t/°C = (t/°F - 32)/1.8, exact; 194 °F is 90 °C.
        assertThat(CAR.value(Quantity.TYRE_TEMPERATURE)).isCloseTo(90, within(1e-12));
    }

    @Test
    void poundForceFeetBecomeNewtonMetres() {
        // NIST SP 811 B.8: pound-force foot to newton metre 1.355 818; half its last digit is 4e-7 of it.
        assertThat(CAR.torqueCurve().torqueNm()[0]).isCloseTo(135.5818, within(5e-5));
    }

    @Test
    void radiansAndDegreesOfRollStiffnessConvert() {
        // A degree is pi/180 rad, exact (SI brochure, table 8).
        assertThat(CAR.value(Quantity.BAR_REAR)).isCloseTo(20000 * Math.PI / 180, within(1e-9));
    }

    @Test
    void milesPerHourBecomeMetresPerSecond() {
        // NIST SP 811 B.8: mile per hour to metre per second 4.4704 E-01, exact.
        double speed = Documents.conditions(TestDocuments.source("valid/conditions/altitude.json"))
                .windSpeedMps();
        assertThat(speed).isCloseTo(4.4704, within(1e-14));
    }

    @Test
    void aSlopeInPercentIsItsTangent() {
        // Rise over run: 100 % is 45 degrees; definition.
        Track track = Documents.circuit(run("\"slopePercent\": 50"));
        assertThat(Math.tan(track.pointAt(50).slope())).isCloseTo(0.5, within(1e-15));
    }

    @Test
    void aBankInPercentIsItsTangent() {
        TrackPoint point = Documents.circuit(run("\"bankPercent\": 100")).pointAt(50);
        assertThat(Math.toDegrees(point.bank())).isCloseTo(45, within(1e-13));
    }

    @Test
    void aLimitHoldsInEveryUnit() {
        // 200 °C, the greatest tyre temperature, is 392 °F exactly, but not in binary.
        String text = TestDocuments.source("valid/car/other-units.json").text().replace("194", "392");
        assertThat(Documents.car(new DocumentSource("hot", text)).value(Quantity.TYRE_TEMPERATURE))
                .isEqualTo(200);
    }

    private static DocumentSource run(String surface) {
        String text = """
                { "lapwright": "circuit/1", "name": "Run", "closed": false,
                  "segments": [ { "type": "straight", "lengthM": 100, %s } ] }
                """;
        return new DocumentSource("run", text.replace("%s", surface));
    }
}
