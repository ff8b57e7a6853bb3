package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.StationLimits;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.List;
import org.junit.jupiter.api.Test;

class LapModelTest {
    private static final Stations STATIONS = new SegmentPath(
                    List.of(Segment.straight(100), Segment.arc(60, 50), Segment.straight(100)), false, 20)
            .openTrack("bend", 20)
            .stations(StationSpacing.DEFAULT);

    private static Lap lap(LapSolver solver) {
        Car car = Documents.car(TestDocuments.source("valid/car/complete.json"));
        return solver.solve(Vehicle.of(car, Conditions.STANDARD));
    }

    /** A model that has no answer anywhere. */
    private static final class Ignorant implements StationLimits {
        @Override
        public double highest(double cap, double guess) {
            return Double.NaN;
        }

        @Override
        public double drive(double speed, double engine, double massFactor) {
            return Double.NaN;
        }

        @Override
        public double brake(double speed, double engineDrag, double massFactor) {
            return Double.NaN;
        }

        @Override
        public double engineForce() {
            return Double.NaN;
        }

        @Override
        public Limit limit() {
            return Limit.POWER;
        }
    }

    @Test
    void placesWithoutAnAnswerAreNamedWithTheirCorners() {
        Lap unchecked = lap(LapSolver.asking(wheels -> new Ignorant(), STATIONS));
        assertThat(LapModel.told(unchecked))
                .contains(
                        "none was found at " + STATIONS.count() + " of " + STATIONS.count()
                                + " stations, where the fast answer stands unchecked (0 m, ",
                        ", …)");
        assertThat(LapModel.unchecked(unchecked)).hasSize(STATIONS.count());
    }

    @Test
    void aLapWithAnswersEverywhereNamesNone() {
        assertThat(LapModel.told(lap(new LapSolver(STATIONS)))).doesNotContain("unchecked");
    }
}
