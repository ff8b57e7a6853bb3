package dev.lapwright.study.balance;

import dev.lapwright.air.StandardAtmosphere;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Effect;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.AxleLimits;
import dev.lapwright.lap.Handling;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.study.Study;
import dev.lapwright.study.StudyRun;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Study of remedies against a complaint: each adjustment of the car one legal step each way. The balance of the changed car
 * is taken in the very states of the lap looked at (place, speed, what the pedals do), so that only the car differs; its lap
 * time is that of its own lap.
 */
public final class Remedies implements Study<RemedyResult> {
    /** A shift of the limits below this is none, m/s²: a thousandth of g, and about of what tyres hold. */
    public static final double NOTHING = 0.001 * StandardAtmosphere.GRAVITY;
    /** A shift of the understeer gradient below this is none, rad per m/s²: a thousandth of a degree per g. */
    private static final double NO_GRADIENT = 1.8e-6;
    /** A phase is disturbed if its limits part by this much more, m/s². */
    public static final double DISTURBING = 0.005 * StandardAtmosphere.GRAVITY;

    private final BalanceResult balance;
    private final BalanceComplaint complaint;
    private final Lap lap;

    private Remedies(BalanceResult balance, BalanceComplaint complaint) {
        this.balance = balance;
        this.complaint = complaint;
        lap = balance.lap();
    }

    /** A search for remedies on the lap of a balance. */
    public static Remedies against(BalanceComplaint complaint, BalanceResult balance) {
        return new Remedies(balance, complaint);
    }

    /** @throws InvalidValueException if no corner complained of has the phase, or the car has nothing to turn */
    @Override
    public RemedyResult run(StudyRun how) {
        Car car = lap.vehicle().car();
        double now = understeer(complaint.phase(), AxleLimits.of(lap.vehicle()));
        if (Double.isNaN(now)) {
            throw new InvalidValueException(
                    "complaint",
                    (complaint.isOfSeveral()
                                    ? "none of " + complaint.where() + " of this lap"
                                    : "corner " + complaint.where())
                            + " has a phase of "
                            + complaint.phase().label(),
                    "look at the table of balance for the phases there are");
        }
        if (car.adjustments().isEmpty()) {
            throw new InvalidValueException(
                    "complaint", "this car has nothing to adjust", "name adjustments in the car's document");
        }
        Search search = new Search();
        for (int i = 0; i < car.adjustments().size(); i++) {
            how.report(i, car.adjustments().size());
            Adjustment adjustment = car.adjustments().get(i);
            if (!gearing(adjustment)) {
                search.bothWays(adjustment);
            }
        }
        return search.result(now);
    }

    /** Whether an adjustment moves the gearbox alone: that is chosen for speed, though it too changes how hard a lifted throttle brakes. */
    private static boolean gearing(Adjustment adjustment) {
        return adjustment.effects().stream()
                .allMatch(effect -> effect.quantity().startsWith("gearbox."));
    }

    /** Steps tried so far, in the order in which they were tried. */
    private final class Search {
        private final LapSolver solver = new LapSolver(lap.stations());
        private final List<RemedyResult.Remedy> steps = new ArrayList<>();
        private final List<RemedyResult.Remedy> remedies = new ArrayList<>();
        private final List<RemedyResult.Remedy> belowTheLimit = new ArrayList<>();
        private final List<String> failures = new ArrayList<>();

        void bothWays(Adjustment adjustment) {
            Car car = lap.vehicle().car();
            double setting = car.setting(adjustment.name());
            if (!stands(car, adjustment, setting)) {
                failures.add(adjustment.name() + ": a quantity that it moves is set on its own, or moved by another"
                        + " adjustment too, so a step from here would undo that");
                return;
            }
            double below = Double.NaN;
            double above = Double.NaN;
            double slack = 1e-9 * Math.max(1, Math.abs(setting));
            for (double legal : adjustment.legalSettings()) {
                if (legal < setting - slack) {
                    below = legal;
                } else if (legal > setting + slack && Double.isNaN(above)) {
                    above = legal;
                }
            }
            look(adjustment, setting, below);
            look(adjustment, setting, above);
        }

        RemedyResult result(double now) {
            remedies.sort(Comparator.comparing((RemedyResult.Remedy remedy) -> !remedy.isFree())
                    .thenComparing(remedy -> remedy.isFree() ? -remedy.gain() : -remedy.gainPerTenth()));
            double sign = complaint.understeer() ? 1 : -1;
            belowTheLimit.sort(Comparator.comparingDouble(remedy -> sign * remedy.gradientShift()));
            return new RemedyResult(complaint, now, steps, remedies, belowTheLimit, failures);
        }

        private void look(Adjustment adjustment, double from, double to) {
            if (Double.isNaN(to)) {
                return;
            }
            try {
                Vehicle changed = Vehicle.of(
                        lap.vehicle().car().with(adjustment.name(), to),
                        lap.vehicle().conditions());
                sort(remedy(adjustment, from, to, changed));
            } catch (InvalidValueException | NoLapException fault) {
                failures.add(adjustment.name() + " " + adjustment.withUnit(to) + ": " + fault.getMessage());
            }
        }

        private void sort(RemedyResult.Remedy remedy) {
            steps.add(remedy);
            double sign = complaint.understeer() ? -1 : 1;
            if (remedy.gain() >= NOTHING) {
                remedies.add(remedy);
            } else if (remedy.gain() > -NOTHING && sign * remedy.gradientShift() >= NO_GRADIENT) {
                belowTheLimit.add(remedy);
            }
        }

        private RemedyResult.Remedy remedy(Adjustment adjustment, double from, double to, Vehicle changed) {
            AxleLimits before = AxleLimits.of(lap.vehicle());
            AxleLimits after = AxleLimits.of(changed);
            Map<BalancePhase, Double> shifts = new EnumMap<>(BalancePhase.class);
            List<BalancePhase> disturbed = new ArrayList<>();
            for (BalancePhase phase : BalancePhase.values()) {
                double was = understeer(phase, before);
                double is = understeer(phase, after);
                if (Double.isNaN(was)) {
                    continue;
                }
                shifts.put(phase, is - was);
                if (phase != complaint.phase() && Math.abs(is) - Math.abs(was) >= DISTURBING) {
                    disturbed.add(phase);
                }
            }
            double gain = (complaint.understeer() ? -1 : 1) * shifts.get(complaint.phase());
            return new RemedyResult.Remedy(
                    adjustment.name(),
                    from,
                    to,
                    gain,
                    solver.lapTime(changed) - lap.time(),
                    shifts,
                    disturbed,
                    Handling.of(changed).atRest().radPerMps2()
                            - balance.gradient().radPerMps2(),
                    adjustment.cautions());
        }
    }

    /** Whether the car stands where this adjustment alone would put it: only then is a step of it one step. */
    private static boolean stands(Car car, Adjustment adjustment, double setting) {
        Car set = car.with(adjustment.name(), setting);
        for (Effect effect : adjustment.effects()) {
            double now = car.value(effect.quantity());
            if (!(Math.abs(set.value(effect.quantity()) - now) <= 1e-9 * Math.max(1, Math.abs(now)))) {
                return false;
            }
        }
        return true;
    }

    /** Mean over the corners, in the phase complained of over those complained of; NaN if none has it. */
    private double understeer(BalancePhase phase, AxleLimits limits) {
        boolean all = phase != complaint.phase();
        return balance.corners().stream()
                .filter(corner -> all || complaint.concerns(corner))
                .flatMap(corner -> corner.in(phase).stream())
                .mapToDouble(one -> limits.in(one.state()).understeer())
                .average()
                .orElse(Double.NaN);
    }
}
