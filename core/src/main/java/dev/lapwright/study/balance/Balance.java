package dev.lapwright.study.balance;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.AxleLimits;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Handling;
import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.TurnState;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.List;

/**
 * Study of the balance of a car: which axle reaches its limit first in each phase of each corner of a lap, and by how much;
 * with the understeer gradient, the aero balance and the yaw acceleration that the corners ask for.
 *
 * <pre>{@code
 * BalanceResult balance = Balance.of(LapSolver.lap(car, track, Conditions.STANDARD)).run();
 * double onExit = balance.understeer(BalancePhase.EXIT);
 * }</pre>
 */
public final class Balance implements Study<BalanceResult> {
    private static final int AERO_SPEEDS = 6;

    private final Lap lap;
    private final AxleLimits limits;
    private final Handling handling;

    private Balance(Lap lap) {
        this.lap = lap;
        limits = AxleLimits.of(lap.vehicle());
        handling = Handling.of(lap.vehicle());
    }

    /** A look at a lap. */
    public static Balance of(Lap lap) {
        return new Balance(lap);
    }

    /** @throws InvalidValueException if the lap's track has no corner */
    @Override
    public BalanceResult run(StudyRun how) {
        List<Corner> corners = lap.stations().corners();
        if (corners.isEmpty()) {
            throw new InvalidValueException(
                    lap.track().name(),
                    "it has no corner, so there is no balance to tell",
                    "take a track with corners");
        }
        PhaseStations stations = new PhaseStations(lap);
        List<BalanceResult.CornerBalance> balances = new ArrayList<>();
        for (int k = 0; k < corners.size(); k++) {
            balances.add(corner(stations.of(k)));
        }
        return new BalanceResult(
                lap,
                balances,
                handling.atRest(),
                handling.frontToe(),
                handling.rearToe(),
                handling.yawInertia(),
                aero());
    }

    private BalanceResult.CornerBalance corner(PhaseStations.Places places) {
        List<BalanceResult.PhaseBalance> phases = new ArrayList<>();
        for (BalancePhase phase : BalancePhase.values()) {
            int station = places.station(phase);
            if (station >= 0) {
                phases.add(phase(phase, station, places.corner().left()));
            }
        }
        // The middle is always there.
        BalanceResult.PhaseBalance middle = phases.stream()
                .filter(one -> one.phase() == BalancePhase.MIDDLE)
                .findFirst()
                .orElseThrow();
        BalanceResult.PhaseBalance entry = phases.get(0);
        BalanceResult.PhaseBalance exit = phases.get(phases.size() - 1);
        BalanceResult.PhaseBalance before = entry.phase() == BalancePhase.ENTRY ? entry : middle;
        return new BalanceResult.CornerBalance(
                places.corner(),
                phases,
                demand(places.turningIn(), before.margins().frontGrip()),
                demand(places.unwinding(), exit.margins().rearGrip()));
    }

    private BalanceResult.PhaseBalance phase(BalancePhase phase, int station, boolean left) {
        TurnState state = TurnState.of(lap, station, left, phase.pedals());
        return new BalanceResult.PhaseBalance(
                phase,
                station,
                lap.value(Channel.DISTANCE, station),
                Math.abs(lap.value(Channel.LATERAL_ACCELERATION, station)),
                state,
                limits.in(state));
    }

    private BalanceResult.YawDemand demand(PhaseStations.YawPeak peak, double grip) {
        double moment = peak.acceleration() == 0 ? 0 : handling.yawInertia() * peak.acceleration();
        double wheelbase = handling.atRest().wheelbase();
        return new BalanceResult.YawDemand(
                peak.distance(), peak.acceleration(), moment, Math.abs(moment) / (wheelbase * grip));
    }

    private List<AeroBalance> aero() {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = 0;
        for (int i = 0; i < lap.count(); i++) {
            double v = lap.value(Channel.SPEED, i);
            lowest = Math.min(lowest, v);
            highest = Math.max(highest, v);
        }
        List<AeroBalance> list = new ArrayList<>();
        for (int i = 0; i < AERO_SPEEDS; i++) {
            list.add(handling.aero(lowest + (highest - lowest) * i / (AERO_SPEEDS - 1)));
        }
        return list;
    }
}
