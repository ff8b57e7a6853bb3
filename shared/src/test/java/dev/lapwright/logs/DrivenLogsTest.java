package dev.lapwright.logs;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.fit.DrivenLap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DrivenLogsTest {
    private static final int SAMPLES = 60;

    private static DrivenLog read(String text, String... columns) {
        return DrivenLogs.read(
                new DocumentSource("monday.csv", text),
                Arrays.stream(columns).map(DrivenLogs::column).toList());
    }

    private static void refuses(String text, String problem) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining(problem);
    }

    /** Headings over so many samples, each row made of its number from 0. */
    private static String log(String headings, int samples, IntFunction<String> row) {
        List<String> lines = new ArrayList<>(List.of(headings));
        for (int i = 0; i < samples; i++) {
            lines.add(row.apply(i));
        }
        return String.join("\n", lines) + "\n";
    }

    private static String log(String headings, IntFunction<String> row) {
        return log(headings, SAMPLES, row);
    }

    private static String number(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    /** 25 m/s, sample after sample 10 m on, half throttle: by definition 90 km/h, and 1 g is 9.80665 m/s² (ISO 80000-3). */
    private static String row(int i, String format) {
        return number(format, 10 * i);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "distance,speed,throttle,brake,gear,longitudinal_acceleration,lateral_acceleration"
                        + "|%d,25,0.5,0,3,-9.80665,9.80665",
                "Lat Acc (g);Speed [km/h];Dist (m);TPS (%%);BRAKE;Gear;Long Acc (g)|1;90;%d;50;0,0;3;-1",
                "distanceM,speedKmh,throttlePercent,brakePercent,gear,longitudinalAccelerationMps2,lateralAccelerationMps2"
                        + "|%d,90,50,0,3,-9.80665,9.80665",
                "Venue,nowhere\n\nDistance,GPS Speed,Throttle Position,G Long,G Lat,Gear,Brake\nm,km/h,%%,g,g,-,bar"
                        + "|%d,90.0,50,-1,1,3,0",
                "gear\tax\tay\tthrottle\tspeed (m/s)\tdistance|3\t-9,80665\t9,80665\t0,5\t25,0\t%d",
            })
    void columnsAreFoundInAnyOrderUnitAndNotation(String text) {
        String[] parts = text.split("\\|");
        // Ten samples at full throttle and brake give the pedals their range.
        DrivenLap lap = read(log(parts[0].replace("%%", "%"), i -> row(i, parts[1])))
                .laps()
                .get(0)
                .lap();
        assertThat(lap.distance()[7]).isCloseTo(70, within(1e-9));
        assertThat(lap.speed()[3]).isCloseTo(25, within(1e-9));
        assertThat(lap.throttle()[3]).isCloseTo(0.5, within(1e-9));
        assertThat(lap.gear()[3]).isEqualTo(3);
        assertThat(lap.longitudinalAcceleration()[3]).isCloseTo(-9.80665, within(1e-9));
        assertThat(lap.lateralAcceleration()[3]).isCloseTo(9.80665, within(1e-9));
    }

    @Test
    void whatWasTakenForWhatAndWhatIsMissingIsSaid() {
        assertThat(read(log("t,Speed (km/h),tps,ax", i -> number("%.2f,90,%d,1.1", i / 20.0, i)))
                        .columns())
                .isEqualTo("time from 't' in s (assumed); speed from 'Speed (km/h)' in km/h; longitudinal_acceleration"
                        + " from 'ax' in g (by its values); throttle from 'tps' in % (by its values); not logged:"
                        + " brake, gear, lateral_acceleration");
    }

    @Test
    void aColumnThatIsNotKnownCanBeNamedWithItsUnitEitherWay() {
        String text = log("Weg,Tempo [km/h]", i -> row(i, "%d,90"));
        assertThat(read(text, "distance=Weg", "speed=Tempo [km/h]")
                        .laps()
                        .get(0)
                        .lap()
                        .speed()[0])
                .isCloseTo(25, within(1e-12));
        assertThat(read(text, "distance=Weg", "speed=Tempo [km/h]:mph")
                        .laps()
                        .get(0)
                        .lap()
                        .speed()[0])
                .isCloseTo(90 * 0.44704, within(1e-12));
    }

    @Test
    void aChosenHeadingThatIsNotThereIsToldWithThoseThatAre() {
        assertThatThrownBy(() -> read(log("distance,Tempo", i -> row(i, "%d,25")), "speed=Pace"))
                .hasMessageContaining("no column is headed 'Pace'")
                .hasMessageContaining("distance, Tempo");
    }

    @Test
    void aNewLapBeginsWhereTheNumberChangesOrDistanceStartsAnew() {
        List<DrivenLog.Lap> byNumber = read(log("lap,distance,v", 180, i -> number("%d,%d,25", 4 + i / 60, 10 * i)))
                .laps();
        assertThat(byNumber).extracting(DrivenLog.Lap::number).containsExactly(4, 5, 6);
        // A running distance: the line lies half-way between the samples on either side of it.
        assertThat(byNumber.get(1).lap().distance()[0]).isEqualTo(5);
        assertThat(byNumber.get(1).lap().name()).isEqualTo("lap 5 of monday.csv");
        List<DrivenLog.Lap> byDistance = read(log("distance,v", 120, i -> number("%d,25", 3 + 10 * (i % 60))))
                .laps();
        assertThat(byDistance).extracting(DrivenLog.Lap::number).containsExactly(1, 2);
        assertThat(byDistance.get(1).lap().distance()[0]).isEqualTo(3);
    }

    @Test
    void theTimeOfALapIsItsClockOrElseItsDistanceOverItsSpeed() {
        assertThat(read(log("time,v", i -> number("%.1f,25", 100 + i / 10.0)))
                        .laps()
                        .get(0)
                        .duration())
                .isCloseTo(5.9, within(1e-9));
        // 59 steps of 10 m at 25 m/s.
        assertThat(read(log("distance,v", i -> row(i, "%d,25"))).laps().get(0).duration())
                .isCloseTo(59 * 10 / 25.0, within(1e-9));
    }

    @Test
    void slowChannelsHoldTheirValueAndRowsWithoutASampleArePassedOver() {
        DrivenLog log = read(log(
                "distance,speed,throttle",
                i -> i == 9 ? ",,0.75" : number("%d,25,%s", 10 * i, i % 4 == 0 ? "0.5" : "")));
        assertThat(log.laps().get(0).lap().count()).isEqualTo(SAMPLES - 1);
        assertThat(log.laps().get(0).lap().throttle()[2]).isEqualTo(0.5);
        assertThat(log.remarks()).containsExactly("1 row without speed, distance or time passed over.");
    }

    @Test
    void aBrakePressureIsAShareOfItsGreatest() {
        DrivenLog log = read(log("distance,speed,brake pressure (bar)", i -> number("%d,25,%d", 10 * i, i)));
        assertThat(log.laps().get(0).lap().brake()[59]).isEqualTo(1);
        assertThat(log.remarks()).hasSize(1).first().asString().contains("is a pressure");
    }

    @Test
    void aPedalThatNeverMovesIsLeftOut() {
        DrivenLog log = read(log("distance,speed,throttle", i -> row(i, "%d,25,0")));
        assertThat(log.laps().get(0).lap().throttle()).isEmpty();
        assertThat(log.remarks()).containsExactly("The throttle never moves: it is left out.");
    }

    @Test
    void neutralAndReverseAreNoGear() {
        double[] gear = read(log(
                        "distance,speed,gear", i -> number("%d,25,%s", 10 * i, i == 0 ? "N" : i == 1 ? "R" : "2")))
                .laps()
                .get(0)
                .lap()
                .gear();
        assertThat(gear).startsWith(0, 0, 2);
    }

    @Test
    void aPieceOfALapIsLeftOutAndSaid() {
        DrivenLog log = read(log("lap,distance,v", 63, i -> number("%d,%d,25", i / 60, 10 * (i % 60))));
        assertThat(log.laps()).hasSize(1);
        assertThat(log.remarks()).containsExactly("Lap 1 cannot be used: it has 3 samples.");
    }

    /** Ratios of units by definition: 3.6 km/h to 1 m/s, 1/0.44704 mph to 1 m/s. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "distance,speed | %d,250 | its speeds go up to 250 m/s (assumed), which looks like km/h",
                "distance,speed (km/h) | %d,900 | its speeds go up to 900 km/h, which no car does",
                "distance,speed,throttle | %d,25,900 | throttle goes up to 900 times its full travel",
                "time,speed | %d,25 | its samples are 10 s apart, which looks like milliseconds",
                "distance,Tempo | %d,25 | no heading is known for speed; the headings are: distance, Tempo",
                "Weg,Tempo | %d,25 | no heading is known for speed and distance or time",
                "distance,speed,GPS speed | %d,25,25 | two columns have this name: 'speed' and 'GPS speed'",
                "distance,speed | %d,NaN | 'NaN' is not a number",
                "distance,speed | %d,25,5,0 | looks like decimal commas between commas",
            })
    void faultyLogsAreRefusedWithTheReason(String headings, String row, String problem) {
        refuses(log(headings, i -> row(i, row)), problem);
    }

    @Test
    void speedsThatDoNotMakeTheDistanceAreToldByTheirRatio() {
        refuses(
                log("time,distance,speed", i -> number("%.1f,%d,90", 0.4 * i, 10 * i)),
                "speeds look like km/h taken for m/s");
    }

    @Test
    void aLogWithTooFewSamplesIsRefused() {
        refuses(log("distance,speed", 5, i -> row(i, "%d,25")), "it has 5 samples");
        refuses("distance,speed\n", "there are headings and no samples");
    }

    @Test
    void aBadValueIsToldByItsRow() {
        refuses(
                log("distance,time,speed", i -> i == 29 ? "290,1e308,25" : number("%d,%d,25", 10 * i, i)),
                "line 31, time: 1E+308 s is more than anything that is logged");
        refuses(
                log("distance,time,speed", i -> i == 29 ? "290,2.9,25" : number("%d,%d,25", 10 * i, i)),
                "line 31, time: '2.9' stands between '28' and '30'");
        refuses(
                log("distance,time,speed", i -> i == 29 ? "29000,29,25" : number("%d,%d,25", 10 * i, i)),
                "line 31, distance: '29000' stands between '280' and '300'");
        refuses(
                log("distance,time,speed", i -> i == 29 ? "290,29,0x1p3" : number("%d,%d,25", 10 * i, i)),
                "line 31, speed: '0x1p3' is not a number");
    }

    /** 90 deg is a quarter turn; 180 deg/s are pi rad/s. */
    @ParameterizedTest
    @ValueSource(strings = {"Distance,Speed,Steering angle (deg),Yaw rate (deg/s)", "distance,speed,steer,yaw_rate"})
    void steeringAngleAndYawRateAreRead(String headings) {
        DrivenLap lap =
                read(log(headings, i -> row(i, "%d,25,90,180"))).laps().get(0).lap();
        // One rounding of a factor.
        assertThat(lap.steering().angle()[7]).isCloseTo(Math.PI / 2, within(1e-12));
        assertThat(lap.steering().yawRate()[7]).isCloseTo(Math.PI, within(1e-12));
    }

    @Test
    void aSteeringThatNeverMovesIsLeftOut() {
        DrivenLog log = read(log("distance,speed,steering (rad),yaw rate (rad/s)", i -> row(i, "%d,25,0,0.5")));
        assertThat(log.laps().get(0).lap().steering().angle()).isEmpty();
        assertThat(log.laps().get(0).lap().steering().yawRate()).contains(0.5);
        assertThat(log.remarks()).anyMatch(remark -> remark.contains("steering is 0"));
    }
}
