package dev.lapwright.study.balance;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.Place;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.slip.SlipModel;
import dev.lapwright.slip.SlipState;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Study of steer, sideslip and stability through the corners of a lap by the fuller model, {@link SlipModel}: the equilibrium of four slipping
 * wheels in each phase of each corner.
 *
 * <p>The lap is that of the fuller model itself. In the middle, on entry and on exit the state is the limit that the lap drives on; off the
 * throttle it is that of a car that coasts at the speed of turning in.
 */
public final class SlipBalance implements Study<SlipBalanceResult> {
    /** Shares of the highest speed between which the gradient near the limit is taken. Ours. */
    private static final double[] NEAR = {0.96, 0.99};
    /** Share of the greatest lateral acceleration that is far below it: the tyre curve has lost less than a hundredth of its stiffness there. */
    private static final double FAR_BELOW = 0.05;
    /** Of a difference at half of it, as a share of the greatest. */
    private static final double HALF_STEP = 0.02;
    /** Lateral acceleration that no car holds, m/s², and how well the greatest is found. */
    private static final double BEYOND_ANY = 100;

    private static final double LATERAL_STEP = 0.01;
    /** An engine that is never the limit, N. */
    private static final double STRONG = 1e6;

    private final Vehicle vehicle;
    private final Stations stations;

    private SlipBalance(Vehicle vehicle, Stations stations) {
        this.vehicle = vehicle;
        this.stations = stations;
    }

    /** A study of a car on what it drives. */
    public static SlipBalance of(Car car, Track driven, Conditions conditions) {
        return new SlipBalance(Vehicle.of(car, conditions), driven.stations(StationSpacing.DEFAULT));
    }

    /** @throws InvalidValueException if the track has no corner, or the fuller model does not stand for the car */
    @Override
    public SlipBalanceResult run(StudyRun how) {
        LapSolver solver = SlipModel.laps(stations);
        Lap lap = solver.solve(vehicle);
        how.stopIfWanted();
        SlipModel model = SlipModel.of(vehicle);
        BalanceResult fast = Balance.of(lap).run(how);
        Map<Integer, Double> slowest = lap.corners().stream()
                .collect(Collectors.toMap(one -> one.corner().number(), CornerFigures::minimumSpeedAt));
        List<SlipBalanceResult.Corner> corners = new ArrayList<>();
        for (BalanceResult.CornerBalance corner : fast.corners()) {
            List<SlipBalanceResult.Phase> phases = new ArrayList<>();
            for (BalanceResult.PhaseBalance phase : corner.phases()) {
                state(model, lap, phase)
                        .ifPresent(state ->
                                phases.add(new SlipBalanceResult.Phase(phase.phase(), phase.distance(), state)));
            }
            corners.add(corner(
                    model, lap, corner, phases, slowest.get(corner.corner().number())));
        }
        double wheelbase = fast.gradient().wheelbase();
        List<SlipBalanceResult.Steering> steering = fast.aero().stream()
                .flatMap(aero -> steering(model, wheelbase, aero).stream())
                .toList();
        return new SlipBalanceResult(lap, corners, steering);
    }

    /** Gradients at a speed; none where the car holds it on no straight. */
    private static Optional<SlipBalanceResult.Steering> steering(SlipModel model, double wheelbase, AeroBalance aero) {
        double speed = aero.airSpeed();
        double most = mostLateral(model, speed);
        return most > 0
                ? Optional.of(new SlipBalanceResult.Steering(
                        aero,
                        most,
                        gradient(model, wheelbase, speed, most * FAR_BELOW, most * FAR_BELOW),
                        gradient(model, wheelbase, speed, 0.5 * most, HALF_STEP * most)))
                : Optional.empty();
    }

    /** Greatest lateral acceleration at a speed, both in SI; 0 where there is none. */
    private static double mostLateral(SlipModel model, double speed) {
        double held = 0;
        double lost = BEYOND_ANY;
        while (lost - held > LATERAL_STEP) {
            double middle = 0.5 * (held + lost);
            if (model.at(Place.level(middle / (speed * speed)), speed, 0).isPresent()) {
                held = middle;
            } else {
                lost = middle;
            }
        }
        return held;
    }

    /** Gradient about a lateral acceleration, rad per m/s², by a difference of a step to either side; NaN if unknown. */
    private static double gradient(SlipModel model, double wheelbase, double speed, double lateral, double step) {
        double less = (lateral - step) / (speed * speed);
        double more = (lateral + step) / (speed * speed);
        Optional<SlipState> low = model.at(Place.level(Math.max(less, 1e-9)), speed, 0);
        Optional<SlipState> high = model.at(Place.level(more), speed, 0);
        return low.isEmpty() || high.isEmpty()
                ? Double.NaN
                : (high.get().steer() - low.get().steer() - wheelbase * (more - less)) / (2 * step);
    }

    private Place place(Lap lap, int station) {
        return Place.at(stations, station, lap.vehicle().conditions().wind());
    }

    private Optional<SlipState> state(SlipModel model, Lap lap, BalanceResult.PhaseBalance phase) {
        int i = phase.station();
        Place place = place(lap, i);
        double speed = lap.value(Channel.SPEED, i);
        double acceleration = lap.value(Channel.ACCELERATION, i);
        return switch (phase.phase()) {
            case ENTRY -> model.brake(place, speed);
            case LIFT_OFF -> model.at(place, speed, phase.margins().acceleration());
            case MIDDLE ->
                lap.limit(i) == Limit.POWER ? model.at(place, speed, acceleration) : model.fastest(place, speed);
            case EXIT ->
                lap.limit(i) == Limit.POWER ? model.at(place, speed, acceleration) : model.drive(place, speed, STRONG);
        };
    }

    private SlipBalanceResult.Corner corner(
            SlipModel model,
            Lap lap,
            BalanceResult.CornerBalance corner,
            List<SlipBalanceResult.Phase> phases,
            double slowestAt) {
        int middle = corner.in(BalancePhase.MIDDLE).orElseThrow().station();
        Place place = place(lap, middle);
        Optional<SlipState> most = model.fastest(place, lap.vehicle().geared());
        int slowest = station(lap, slowestAt);
        return new SlipBalanceResult.Corner(
                corner.corner(),
                phases,
                most.map(SlipState::limit),
                most.map(state -> gradient(model, place, state.speed())).orElse(Double.NaN),
                slowest,
                there(model, lap, slowest));
    }

    private static int station(Lap lap, double distance) {
        int i = 0;
        while (i < lap.count() - 1 && lap.value(Channel.DISTANCE, i) < distance) {
            i++;
        }
        return i;
    }

    /** On the lap; at a limit the highest speed itself, which a search may miss by rounding. */
    private Optional<SlipState> there(SlipModel model, Lap lap, int station) {
        Place place = place(lap, station);
        double speed = lap.value(Channel.SPEED, station);
        return model.at(place, speed, lap.value(Channel.ACCELERATION, station)).or(() -> model.fastest(place, speed));
    }

    /** Growth of steer with lateral acceleration at a place just below its highest speed (m/s), rad per m/s²; NaN if unknown. */
    private static double gradient(SlipModel model, Place place, double most) {
        Optional<SlipState> low = model.at(place, NEAR[0] * most, 0);
        Optional<SlipState> high = model.at(place, NEAR[1] * most, 0);
        return low.isEmpty() || high.isEmpty()
                ? Double.NaN
                : (high.get().steer() - low.get().steer())
                        / (high.get().lateral() - low.get().lateral());
    }
}
