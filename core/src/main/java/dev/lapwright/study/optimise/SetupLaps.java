package dev.lapwright.study.optimise;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;

/** Laps of setups over all circuits and days of an optimisation. Safe to use from several threads. */
final class SetupLaps {
    private final Car car;
    private final List<OptimisationResult.Axis> axes;
    private final List<Stations> stations = new ArrayList<>();
    private final double[] weights;
    private final List<Conditions> days;
    private final boolean corners;
    private final boolean worst;
    private final Queue<LapSolver[][]> solvers = new ConcurrentLinkedQueue<>();

    /** Lap times of the setup that was there before, s, by day: the weighted mean of the circuits. */
    private final double[] before;

    private final OptimisationResult.Candidate beforePoint;

    SetupLaps(
            Car car,
            List<OptimisationResult.Axis> axes,
            List<Optimisation.Circuit> circuits,
            List<Conditions> days,
            boolean corners,
            boolean worst) {
        this.car = car;
        this.axes = axes;
        this.days = days;
        this.corners = corners;
        this.worst = worst;
        double sum = circuits.stream().mapToDouble(Optimisation.Circuit::weight).sum();
        weights = circuits.stream().mapToDouble(c -> c.weight() / sum).toArray();
        circuits.forEach(c -> stations.add(c.track().stations(StationSpacing.DEFAULT)));
        before = new double[days.size()];
        List<Double> settings =
                axes.stream().map(axis -> car.setting(axis.name())).toList();
        beforePoint = drive(car, settings, before);
    }

    /** What the car as it stood gives; it need not stand on legal steps. */
    OptimisationResult.Candidate before() {
        return beforePoint;
    }

    /** What the setup at a place of the search gives. */
    OptimisationResult.Candidate at(double[] place) {
        List<Double> settings = new ArrayList<>(place.length);
        for (int i = 0; i < place.length; i++) {
            settings.add(axes.get(i).at(place[i]));
        }
        try {
            return drive(with(settings), settings, new double[days.size()]);
        } catch (NoLapException | InvalidValueException noLap) {
            return OptimisationResult.Candidate.withoutLap(settings, noLap.getMessage());
        }
    }

    /** The car with settings in the order of the axes. */
    Car with(List<Double> settings) {
        Map<String, Double> named = new LinkedHashMap<>();
        for (int i = 0; i < axes.size(); i++) {
            named.put(axes.get(i).name(), settings.get(i));
        }
        return car.with(new Setup("", named));
    }

    private OptimisationResult.Candidate drive(Car driven, List<Double> settings, double[] byDay) {
        LapSolver[][] own = solvers.poll();
        if (own == null) {
            own = newSolvers();
        }
        try {
            return drive(driven, settings, byDay, own);
        } finally {
            solvers.add(own);
        }
    }

    /** A solver for each circuit and day: one for several winds would lay out its road again and again. */
    private LapSolver[][] newSolvers() {
        LapSolver[][] own = new LapSolver[stations.size()][days.size()];
        for (int c = 0; c < own.length; c++) {
            for (int d = 0; d < own[c].length; d++) {
                own[c][d] = new LapSolver(stations.get(c));
            }
        }
        return own;
    }

    private OptimisationResult.Candidate drive(Car driven, List<Double> settings, double[] byDay, LapSolver[][] own) {
        double top = Double.POSITIVE_INFINITY;
        double height = Double.POSITIVE_INFINITY;
        double balanceLeast = Double.NaN;
        double balanceMost = Double.NaN;
        int upshifts = corners ? 0 : -1;
        double[] byCircuit = new double[stations.size()];
        for (int d = 0; d < days.size(); d++) {
            Vehicle vehicle = Vehicle.of(driven, days.get(d));
            for (int c = 0; c < stations.size(); c++) {
                LapFigures figures;
                if (corners) {
                    Lap lap = own[c][d].solve(vehicle);
                    figures = lap.figures();
                    double balance = LimitBalance.percent(lap);
                    balanceLeast = Double.isNaN(balanceLeast) || balance < balanceLeast ? balance : balanceLeast;
                    balanceMost = Double.isNaN(balanceMost) || balance > balanceMost ? balance : balanceMost;
                    upshifts += LimitBalance.upshiftsInCorners(lap);
                } else {
                    figures = own[c][d].figures(vehicle);
                }
                byDay[d] += weights[c] * figures.lapTime();
                byCircuit[c] += figures.lapTime() / days.size();
                top = Math.min(top, figures.topSpeed());
                height = Math.min(height, leastRideHeight(vehicle, figures.topSpeed()));
            }
        }
        List<Double> circuitTimes = new ArrayList<>();
        double mean = 0;
        for (int c = 0; c < byCircuit.length; c++) {
            circuitTimes.add(byCircuit[c]);
            mean += weights[c] * byCircuit[c];
        }
        double cost = worst ? worst(byDay) : mean;
        OptimisationResult.Limited limited =
                new OptimisationResult.Limited(top, height, balanceLeast, balanceMost, upshifts);
        return new OptimisationResult.Candidate(settings, cost, mean, circuitTimes, limited, "");
    }

    /** Against the wind the car runs lowest. */
    private static double leastRideHeight(Vehicle vehicle, double topSpeed) {
        var platform = vehicle.platformAt(topSpeed + vehicle.conditions().windSpeedMps());
        return Math.min(platform.frontMm(), platform.rearMm());
    }

    private double worst(double[] byDay) {
        double mean = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int d = 0; d < byDay.length; d++) {
            mean += before[d] / before.length;
            most = Math.max(most, byDay[d] - before[d]);
        }
        return mean + most;
    }

    /** Time in each sector of each circuit, mean over the days, s. */
    List<List<Double>> sectorTimes(Car driven) {
        LapSolver[][] own = newSolvers();
        List<List<Double>> all = new ArrayList<>();
        for (int c = 0; c < own.length; c++) {
            double[] mean = new double[stations.get(c).track().sectorEnds().length];
            for (int d = 0; d < days.size(); d++) {
                double[] times =
                        own[c][d].solve(Vehicle.of(driven, days.get(d))).sectorTimes();
                for (int k = 0; k < mean.length; k++) {
                    mean[k] += times[k] / days.size();
                }
            }
            List<Double> list = new ArrayList<>();
            for (double time : mean) {
                list.add(time);
            }
            all.add(list);
        }
        return all;
    }
}
