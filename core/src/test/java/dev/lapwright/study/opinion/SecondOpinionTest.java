package dev.lapwright.study.opinion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.lap.Limit;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.opinion.SecondOpinionResult.Opinion;
import dev.lapwright.study.opinion.SecondOpinionResult.Verdict;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class SecondOpinionTest {
    private static final double RADIUS = 50;
    private static final Track RING =
            new SegmentPath(List.of(Segment.arc(2 * Math.PI * RADIUS, RADIUS)), true, 1).closedTrack("ring", 1e-6);

    private static PlainCar point() {
        return PlainCar.ofMass(1000).stiffness(100).with(Quantity.WHEELBASE, 1).track(0.8);
    }

    /**
     * A point mass on a ring takes 2 π √(R/(μ g)): from a friction of 1 to 1.21 a tenth of a time less in either model, as near as a small car on
     * stiff tyres is a point mass.
     */
    @Test
    void onAPointMassBothSayTheSame() {
        double time = 2 * Math.PI * Math.sqrt(RADIUS / PlainCar.GRAVITY);
        SecondOpinionResult result = SecondOpinion.of(point().car(), RING, Conditions.STANDARD)
                .on("better tyres", point().friction(1.21).car())
                .run();
        Opinion opinion = result.opinions().get(0);
        assertThat(opinion.fast()).isEqualTo(time * (1 / 1.1 - 1), within(0.002 * time));
        assertThat(opinion.fuller()).isEqualTo(time * (1 / 1.1 - 1), within(0.002 * time));
        assertThat(opinion.verdict(0.001, 0)).isEqualTo(Verdict.BOTH_GAIN);
        assertThat(result.refusal()).isEmpty();
    }

    /** Differences by part and by limit are sums of the lap's: what they are parts of. */
    @Test
    void partsAndLimitsAddUp() {
        Car car = StudyCars.rearDriven().car();
        Opinion opinion = SecondOpinion.of(car, RING, Conditions.STANDARD)
                .on("more front bar", car.with(Quantity.BAR_FRONT, 500))
                .on("less mass", car.with(Quantity.MASS, 900))
                .run(StudyRun.onThreads(1))
                .opinions()
                .get(0);
        double fast = 0;
        double fuller = 0;
        for (SecondOpinionResult.Place place : opinion.places()) {
            fast += place.fast();
            fuller += place.fuller();
        }
        assertThat(fast).isEqualTo(opinion.fast(), within(1e-9));
        assertThat(fuller).isEqualTo(opinion.fuller(), within(1e-9));
        assertThat(opinion.apart().values().stream().mapToDouble(x -> x).sum())
                .isEqualTo(opinion.fuller() - opinion.fast(), within(1e-9));
    }

    @Test
    void lapsKnownFromAnEarlierOpinionAreNotDrivenAgain() {
        SecondOpinion study = SecondOpinion.of(point().car(), RING, Conditions.STANDARD);
        SecondOpinionResult earlier =
                study.on("worse tyres", point().friction(0.9).car()).run();
        SecondOpinion next = study.on("better tyres", point().friction(1.21).car());
        SecondOpinionResult knowing = next.knowing(earlier).run();
        assertThat(knowing.fast()).isSameAs(earlier.fast());
        assertThat(knowing.fuller().orElseThrow()).isSameAs(earlier.fuller().orElseThrow());
        assertThat(knowing.opinions()).isEqualTo(next.run().opinions());
        assertThat(next.inTurn().knowing(earlier).run().opinions()).isEqualTo(knowing.opinions());
    }

    @Test
    void aCarThatTheFullerModelDoesNotStandForHasTheFastWordAlone() {
        Car square = point().with(Quantity.FRICTION_EXPONENT, 3).car();
        SecondOpinionResult result = SecondOpinion.of(square, RING, Conditions.STANDARD)
                .on("lighter", square.with(Quantity.MASS, 900))
                .run();
        assertThat(result.fuller()).isEmpty();
        assertThat(result.refusal().orElseThrow()).contains("frictionExponent");
        Opinion opinion = result.opinions().get(0);
        assertThat(opinion.fast()).isNotNaN();
        assertThat(opinion.fuller()).isNaN();
        assertThat(opinion.verdict(0.001, 0.1)).isEqualTo(Verdict.UNKNOWN);
        assertThat(opinion.most()).isEmpty();
    }

    @Test
    void whatIsConfirmedAndWhatIsNot() {
        assertThat(told(-0.1, -0.02).verdict(0.001, 0.05)).isEqualTo(Verdict.BOTH_GAIN);
        assertThat(told(-0.1, 0.02).verdict(0.001, 0.05)).isEqualTo(Verdict.CONTRADICTED);
        assertThat(told(-0.1, 0.02).verdict(0.001, 0.15)).isEqualTo(Verdict.OPEN);
        assertThat(told(0.1, -0.02).verdict(0.001, 0.05)).isEqualTo(Verdict.OPEN);
        assertThat(told(0.1, 0.02).verdict(0.001, 0.05)).isEqualTo(Verdict.NO_GAIN);
        assertThat(told(-0.1, 0.02).most()).contains(place("T2", true, 0.03));
        assertThat(told(0.02, -0.1).most()).contains(place("T1", true, -0.1));
    }

    private static Opinion told(double fast, double fuller) {
        List<SecondOpinionResult.Place> places =
                List.of(place("T1", true, -0.1), place("T1 to T2", false, 0.5), place("T2", true, 0.03));
        return new Opinion("", fast, fuller, places, Map.of());
    }

    private static SecondOpinionResult.Place place(String label, boolean corner, double apart) {
        return new SecondOpinionResult.Place(label, corner, 0, apart, Limit.FRONT_GRIP, Limit.REAR_GRIP);
    }
}
