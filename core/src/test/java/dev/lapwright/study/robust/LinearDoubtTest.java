package dev.lapwright.study.robust;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.doubt.PlausibleDays;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.StudyCars;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The doubt of settings by derivatives, against closed forms and laps solved anew. */
class LinearDoubtTest {
    private static Car doubting(Car car, double amount, boolean limit) {
        CarDoubt.Size size = new CarDoubt.Size(amount, true, limit, CarDoubt.Source.ESTIMATED);
        return car.doubting(new CarDoubt(Map.of(Quantity.MASS.path(), size), List.of(), new double[0][]));
    }

    /** From rest with an even force t = √(2 m L/F): a gain goes with the root of the mass. */
    private static LinearDoubt.Standing geared(double amount, boolean limit) {
        double force = 4000;
        Car car = doubting(StudyCars.with(PlainCar.ofMass(1000).force(force)), amount, limit);
        return LinearDoubt.of(car, StudyCars.straight(400), Conditions.STANDARD)
                .against(car.with(Quantity.FINAL_DRIVE, 1.2 * StudyCars.RATIO))
                .asStated()
                .run()
                .standings()
                .get(0);
    }

    private static final double GAIN = Math.sqrt(2 * 1000 * 400 / 4000.0) * (Math.sqrt(1 / 1.2) - 1);

    @Test
    void theDeviationIsThatOfTheRootOfALognormalMass() {
        LinearDoubt.Standing geared = geared(10, false);
        double sigma = 0.5 * Math.sqrt(Math.log1p(0.1 * 0.1));
        // The solver starts a little above rest.
        assertThat(geared.difference()).isCloseTo(GAIN, within(1e-3 * -GAIN));
        assertThat(geared.deviation()).isCloseTo(sigma * -GAIN, within(2e-3 * sigma * -GAIN));
        assertThat(geared.high() - geared.low()).isCloseTo(2 * 1.645 * geared.deviation(), within(1e-12));
        assertThat(geared.verdict()).isEqualTo(RobustnessResult.Verdict.FASTER);
        assertThat(geared.share(0)).isCloseTo(1, within(1e-12));
    }

    /** A number that lies anywhere within ±a has the deviation a/√3. */
    @Test
    void theDeviationWithinALimitIsThatOfAnEvenDistribution() {
        double expected = 0.5 * 0.1 / Math.sqrt(3) * -GAIN;
        assertThat(geared(10, true).deviation()).isCloseTo(expected, within(5e-3 * expected));
    }

    /** Each unknown of car, day and road, beside laps solved anew over a fiftieth of its deviation. */
    @Test
    void slopesAreThoseOfLapsSolvedAnew() {
        Car car = StudyCars.rearDriven().car();
        Car other = car.with(Quantity.BAR_FRONT, 300);
        Track track = StudyCars.circuit();
        LinearDoubt.Result found =
                LinearDoubt.of(car, track, Conditions.STANDARD).against(other).run();
        LinearDoubt.Standing standing = found.standings().get(0);
        PlausibleDays days = PlausibleDays.of(car, track, Conditions.STANDARD, true, List.of());
        Stations stations = track.stations(StationSpacing.DEFAULT);
        double step = 0.02;
        for (int u = 0; u < found.unknowns().size(); u++) {
            double[] draw = new double[found.unknowns().size()];
            double[] differences = new double[2];
            for (int side = 0; side < 2; side++) {
                draw[u] = side == 0 ? step : -step;
                LapSolver solver = new LapSolver(days.road(draw).stationsAt(stations.s()));
                for (Car setUp : List.of(car, other)) {
                    double time =
                            solver.lapTime(Vehicle.of(days.car(setUp, draw), days.day(Conditions.STANDARD, draw)));
                    differences[side] += setUp == car ? -time : time;
                }
            }
            double slope = (differences[0] - differences[1]) / (2 * step);
            double scale = found.unknowns().get(u).limit() ? Math.sqrt(Math.PI / 6) : 1;
            // Half a percent of the whole deviation: what integrals over cells leave (docs/performance.md,
            // derivatives).
            assertThat(standing.slopes().get(u))
                    .as(found.unknowns().get(u).title())
                    .isCloseTo(scale * slope, within(2e-2 * standing.deviation()));
        }
    }
}
