package dev.lapwright.brief;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.checks.PlainCar;
import dev.lapwright.study.StudyCars;
import dev.lapwright.study.sweep.Sweep;
import dev.lapwright.study.sweep.SweepAxis;
import dev.lapwright.study.sweep.SweepResult;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What wings trade, and what drag, downforce and grip are worth to each other. */
class WingTradeTest {
    /** Sums and differences in double precision. */
    private static final double ROUNDING = 1e-9;

    private static final BriefResult BRIEF = BriefCars.run(BriefCars.brief());
    private static final WingTrade WING = trades(BRIEF).get(0);

    private static List<WingTrade> trades(BriefResult brief) {
        return brief.wings().value().orElseThrow();
    }

    @Test
    void onlyWhatMovesTheAerodynamicsIsAWing() {
        assertThat(trades(BRIEF).stream().map(trade -> trade.adjustment().name()))
                .containsExactly("wing");
    }

    @Test
    void whatMovesAnAreaIsFoundByItsEffectWhateverItIsCalled() {
        Car car = StudyCars.with(
                BriefCars.plain(),
                StudyCars.adjustment("lever", 0.5, 1, 0.1, 0.6, new Effect.Absolute("aero.cdAM2", 0, 1)),
                StudyCars.adjustment("wing-bolts", 900, 1100, 50, 1050, new Effect.Absolute("chassis.massKg", 0, 1)));
        BriefResult brief = BriefCars.run(Brief.of(car, BriefCars.OVAL, BriefCars.DAY));
        assertThat(trades(brief).stream().map(trade -> trade.adjustment().name()))
                .containsExactly("lever");
    }

    @Test
    void itsLapsAreThoseOfASweep() {
        SweepResult sweep = Sweep.of(BriefCars.CAR, BriefCars.OVAL, BriefCars.DAY)
                .over(SweepAxis.stepped("wing", 0, 10, 1))
                .run();
        assertThat(WING.choices()).hasSameSizeAs(sweep.points());
        for (int i = 0; i < WING.choices().size(); i++) {
            WingTrade.Setting choice = WING.choices().get(i);
            assertThat(choice.setting())
                    .isEqualTo(sweep.points().get(i).settings().get(0));
            assertThat(choice.effect().orElseThrow().difference())
                    .isCloseTo(sweep.difference(sweep.points().get(i)), within(ROUNDING));
        }
        assertThat(WING.fastest().orElseThrow().setting())
                .isEqualTo(sweep.fastest().orElseThrow().settings().get(0));
    }

    @Test
    void whereItStandsThereIsNoDifference() {
        WingTrade.Setting here = WING.choices().stream()
                .filter(choice -> choice.setting() == WING.setting())
                .findFirst()
                .orElseThrow();
        assertThat(here.effect().orElseThrow().difference()).isZero();
    }

    /** The plain car has no ride-height map: areas are those of the body and of so many degrees. */
    @Test
    void dragAndDownforceGrowWithItsAngleAsItsTableSays() {
        double body = BriefCars.CAR.value(Quantity.DRAG_AREA);
        for (WingTrade.Setting choice : WING.choices()) {
            assertThat(choice.dragArea()).isCloseTo(body + BriefCars.WING_DRAG * choice.setting(), within(ROUNDING));
            assertThat(choice.downforceArea()).isCloseTo(2 * BriefCars.WING_LIFT * choice.setting(), within(ROUNDING));
        }
    }

    @Test
    void moreWingIsSlowerOnTheStraightsOfAnOvalAndFasterInItsCorners() {
        WingTrade.Setting most = WING.choices().get(WING.choices().size() - 1);
        assertThat(most.effect().orElseThrow().onStraights()).isPositive();
        assertThat(most.effect().orElseThrow().inCorners()).isNegative();
    }

    /** t = 2π √(r/(μ g)) round a circle: textbook mechanics. */
    @Test
    void aPercentOfGripDoesRoundACircleWhatMechanicsSays() {
        double radius = 60;
        Track circle = Track.closed(
                "circle", List.of(TrackPoint.flat(0, 1 / radius), TrackPoint.flat(2 * Math.PI * radius, 1 / radius)));
        BriefResult brief = BriefCars.run(Brief.of(PlainCar.ofMass(1000).car(), circle, BriefCars.DAY));
        double time = 2 * Math.PI * Math.sqrt(radius / PlainCar.GRAVITY);
        // Drag from cornering takes (1/200)²/2 of the grip, 1e-5, and half of that of the time.
        assertThat(brief.exchange().value().orElseThrow().moreGrip())
                .isCloseTo(time * (1 / Math.sqrt(1.01) - 1), within(1e-5 * time));
    }

    /** On a straight there is nothing to hold: downforce does nothing without load-sensitive or rolling losses. */
    @Test
    void onAStraightDragCountsAndDownforceDoesNot() {
        // From 40 m/s on, where the engine, not the tyres, sets the drive force.
        Track straight = Track.open("straight", 40, List.of(TrackPoint.flat(0, 0), TrackPoint.flat(1000, 0)));
        BriefResult.AeroExchange exchange = BriefCars.run(Brief.of(BriefCars.CAR, straight, BriefCars.DAY))
                .exchange()
                .value()
                .orElseThrow();
        assertThat(exchange.lessDrag()).isLessThan(-1e-3);
        // Far below the thousandth in which lap times are given.
        assertThat(exchange.moreDownforce()).isCloseTo(0, within(1e-6));
        assertThat(exchange.dragForDownforce()).isCloseTo(0, within(1e-3));
    }

    @Test
    void withoutDownforceNothingIsSaidOfItsPrice() {
        BriefResult brief = BriefCars.run(Brief.of(BriefCars.plain().car(), BriefCars.OVAL, BriefCars.DAY));
        assertThat(brief.exchange().value().orElseThrow().dragForDownforce()).isNaN();
    }
}
