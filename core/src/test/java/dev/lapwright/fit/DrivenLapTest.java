package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DrivenLapTest {
    private static final int COUNT = 60;

    private static double[] rising() {
        double[] values = new double[COUNT];
        Arrays.setAll(values, i -> i);
        return values;
    }

    private static double[] even(double value) {
        double[] values = new double[COUNT];
        Arrays.fill(values, value);
        return values;
    }

    /** Eight channels in the order of the record. */
    private static double[][] sound() {
        return new double[][] {rising(), even(30), rising(), even(0.5), even(0.1), even(3), even(-2), even(4)};
    }

    private static DrivenLap lap(double[][] c) {
        return new DrivenLap("lap 3", c[0], c[1], c[2], c[3], c[4], c[5], c[6], c[7]);
    }

    private static List<Supplier<double[]>> channels(DrivenLap lap) {
        return List.of(
                lap::distance,
                lap::speed,
                lap::time,
                lap::throttle,
                lap::brake,
                lap::gear,
                lap::longitudinalAcceleration,
                lap::lateralAcceleration);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7})
    void aValueThatIsNoNumberIsRefusedInEveryChannelAndItsSampleNamed(int channel) {
        for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY}) {
            double[][] values = sound();
            values[channel][6] = bad;
            assertThatThrownBy(() -> lap(values))
                    .isInstanceOf(InvalidValueException.class)
                    .hasMessageContaining("lap 3")
                    .hasMessageContaining("sample 7");
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3, 4, 5, 6, 7})
    void channelsAreCopiedInAndOut(int channel) {
        double[][] values = sound();
        double[] before = values[channel].clone();
        DrivenLap lap = lap(values);
        Arrays.fill(values[channel], -77);
        Arrays.fill(channels(lap).get(channel).get(), -77);
        assertThat(channels(lap).get(channel).get()).isEqualTo(before);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7})
    void aChannelOfAnotherLengthIsRefused(int channel) {
        double[][] values = sound();
        values[channel] = Arrays.copyOf(values[channel], COUNT - 1);
        assertThatThrownBy(() -> lap(values))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("59 samples");
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4})
    void aPedalInPercentIsRefused(int pedal) {
        double[][] values = sound();
        values[pedal] = even(100);
        assertThatThrownBy(() -> lap(values))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("percent");
    }

    @Test
    void timeThatBeginsAgainIsRefused() {
        double[][] values = sound();
        values[2][30] = 0;
        assertThatThrownBy(() -> lap(values))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("two laps are glued together");
    }

    @Test
    void aNegativeSpeedIsRefused() {
        double[][] values = sound();
        values[1][3] = -1;
        assertThatThrownBy(() -> lap(values))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("-1 m/s");
    }

    @Test
    void distanceFromEvenAccelerationIsHalfAccelerationTimesTimeSquared() {
        double[] time = {0, 1, 2.5, 4};
        double[] speed = Arrays.stream(time).map(t -> 3 * t).toArray();
        double[] distance = DrivenLap.distanceFrom(time, speed);
        for (int i = 0; i < time.length; i++) {
            // The trapezium rule is exact for a straight line.
            assertThat(distance[i]).isCloseTo(1.5 * time[i] * time[i], within(1e-12));
        }
    }

    @Test
    void distanceFromTimeThatFallsIsRefused() {
        assertThatThrownBy(() -> DrivenLap.distanceFrom(new double[] {0, 1, 0}, new double[] {1, 1, 1}))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining("two laps are glued together");
    }
}
