package dev.lapwright.sense;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Rows of a car that drives round at an even pace, with one fault put in each; the fault, its place and its size are then known. */
class SampleOdditiesTest {
    private static final int ROWS = 400;
    private static final double[] NONE = {};

    private final double[] time =
            IntStream.range(0, ROWS).mapToDouble(i -> 0.1 * i).toArray();
    private final double[] speed = IntStream.range(0, ROWS)
            .mapToDouble(i -> 40 + 10 * Math.sin(0.05 * i))
            .toArray();
    private final double[] distance = distance();

    private double[] distance() {
        double[] way = new double[ROWS];
        for (int i = 1; i < ROWS; i++) {
            way[i] = way[i - 1] + 0.05 * (speed[i] + speed[i - 1]);
        }
        return way;
    }

    private List<Oddity> log() {
        return SampleOddities.ofLog(time, distance, speed, row -> "row " + row);
    }

    @Test
    void aSoundLogHasNothingOdd() {
        assertThat(log()).isEmpty();
        assertThat(SampleOddities.ofLog(time, NONE, speed, row -> "")).isEmpty();
        assertThat(SampleOddities.ofLog(NONE, distance, speed, row -> "")).isEmpty();
    }

    @Test
    void aClockThatJumpsGoesBackOrStandsIsTold() {
        for (int i = 100; i < ROWS; i++) {
            time[i] += 2;
        }
        assertThat(log()).singleElement().satisfies(odd -> {
            assertThat(odd.place()).isEqualTo("row 100");
            assertThat(odd.problem()).contains("jumps by 2.1 s", "0.1 s apart");
        });
        for (int i = 100; i < ROWS; i++) {
            time[i] -= 3;
        }
        assertThat(log()).extracting(Oddity::problem).containsExactly("the clock goes back by 0.9 s");
        for (int i = 100; i < ROWS; i++) {
            time[i] += 0.9;
        }
        assertThat(log()).extracting(Oddity::problem).containsExactly("the clock stands still");
    }

    /** 54 km/h within a tenth of a second is 150 m/s², which brakes do not do. */
    @Test
    void aSpikeOfSpeedIsToldAndHardBrakingIsNot() {
        double sound = speed[200];
        speed[200] += 20;
        assertThat(log()).extracting(Oddity::place).containsExactly("row 200");
        speed[200] = sound + 5;
        assertThat(log()).isEmpty();
    }

    @Test
    void speedsInAnotherUnitAreToldThreeTimesAndThenCounted() {
        double[] kmh = Arrays.stream(speed).map(v -> 3.6 * v).toArray();
        List<Oddity> odd = SampleOddities.ofLog(time, NONE, kmh, row -> "row " + row);
        assertThat(odd).hasSize(4);
        assertThat(odd.get(3).problem())
                .isEqualTo(Arrays.stream(kmh).filter(v -> v > 110).count() - 3 + " more of the same kind");
        assertThat(odd.get(0).remedy()).contains("km/h");
    }

    /** The sum of speed over time is the distance, but for what the logger's rolling radius is wrong by. */
    @Test
    void aSpeedThatIsScaledWrongIsToldFromOnePercent() {
        double[] fast = Arrays.stream(speed).map(v -> 1.02 * v).toArray();
        assertThat(SampleOddities.ofLog(time, distance, fast, row -> ""))
                .singleElement()
                .satisfies(odd -> assertThat(odd.remedy()).contains("-1.96 %"));
        double[] nearly = Arrays.stream(speed).map(v -> 1.005 * v).toArray();
        assertThat(SampleOddities.ofLog(time, distance, nearly, row -> "")).isEmpty();
    }

    @Test
    void pointsThatSpikeLieApartOrStandTwiceAreTold() {
        double[] x = IntStream.range(0, ROWS)
                .mapToDouble(i -> 500 * Math.cos(i * 2 * Math.PI / ROWS))
                .toArray();
        double[] y = IntStream.range(0, ROWS)
                .mapToDouble(i -> 500 * Math.sin(i * 2 * Math.PI / ROWS))
                .toArray();
        double[] z = IntStream.range(0, ROWS)
                .mapToDouble(i -> 10 * Math.sin(i * 2 * Math.PI / ROWS))
                .toArray();
        assertThat(SampleOddities.ofPoints(x, y, z, i -> "point " + i)).isEmpty();
        double[] spiked = x.clone();
        spiked[50] += 60;
        assertThat(SampleOddities.ofPoints(spiked, y, NONE, i -> "point " + i))
                .extracting(Oddity::place)
                .containsExactly("point 50");
        double[] twice = x.clone();
        double[] twiceY = y.clone();
        twice[51] = twice[50];
        twiceY[51] = twiceY[50];
        assertThat(SampleOddities.ofPoints(twice, twiceY, NONE, i -> "point " + i))
                .extracting(Oddity::problem)
                .containsExactly("the point is that before it");
        double[] few = IntStream.range(0, ROWS)
                .filter(i -> i < 100 || i > 120)
                .mapToDouble(i -> x[i])
                .toArray();
        double[] fewY = IntStream.range(0, ROWS)
                .filter(i -> i < 100 || i > 120)
                .mapToDouble(i -> y[i])
                .toArray();
        assertThat(SampleOddities.ofPoints(few, fewY, NONE, i -> "point " + i))
                .extracting(Oddity::place)
                .containsExactly("point 100");
        z[70] += 30;
        assertThat(SampleOddities.ofPoints(x, y, z, i -> "point " + i))
                .extracting(Oddity::place)
                .containsExactly("point 70");
    }

    @Test
    void flyingLapsFarFromTheOthersAreTold() {
        double[] laps = {101, 100.4, 88, 100.9, 140, 100.2};
        assertThat(SampleOddities.ofLaps(laps, i -> "lap " + (i + 1)))
                .extracting(Oddity::place)
                .containsExactly("lap 3", "lap 5");
    }
}
