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
import dev.lapwright.study.StudyMemory;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.Collectors;

/** Laps of setups over all circuits and days of an optimisation. Safe to use from several threads. */
final class SetupLaps {
    /** Numbers that are kept of a setup before those of each circuit. */
    private static final int FIGURES = 7;

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
    private final StudyMemory memory;
    /** What was driven, or recalled by the memory, by place: searches come to the ends of ranges again and again. */
    private final Map<String, OptimisationResult.Candidate> known = new ConcurrentHashMap<>();

    SetupLaps(
            Car car,
            List<OptimisationResult.Axis> axes,
            List<Optimisation.Circuit> circuits,
            List<Conditions> days,
            boolean corners,
            boolean worst,
            StudyMemory memory) {
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
        this.memory = memory;
        memory.recall((place, numbers, failure) -> recalled(place, numbers, failure));
    }

    private void recalled(String place, double[] numbers, String failure) {
        String[] steps = place.split(",");
        boolean noLap = numbers.length == 0 && !failure.isEmpty();
        if (steps.length != axes.size() || (!noLap && numbers.length != FIGURES + stations.size())) {
            return;
        }
        double[] at = new double[steps.length];
        try {
            for (int i = 0; i < at.length; i++) {
                at[i] = Double.parseDouble(steps[i]);
            }
        } catch (NumberFormatException none) {
            return;
        }
        List<Double> settings = settings(at);
        known.put(
                place,
                noLap
                        ? OptimisationResult.Candidate.withoutLap(settings, failure)
                        : new OptimisationResult.Candidate(
                                settings,
                                numbers[0],
                                numbers[1],
                                Arrays.stream(numbers).skip(FIGURES).boxed().toList(),
                                new OptimisationResult.Limited(
                                        numbers[2], numbers[3], numbers[4], numbers[5], (int) numbers[6]),
                                ""));
    }

    private void keep(String place, OptimisationResult.Candidate found) {
        double[] numbers = new double[found.hasLap() ? FIGURES + stations.size() : 0];
        if (found.hasLap()) {
            OptimisationResult.Limited limited = found.limited();
            numbers[0] = found.cost();
            numbers[1] = found.lapTime();
            numbers[2] = limited.topSpeed();
            numbers[3] = limited.rideHeightMm();
            numbers[4] = limited.balanceLeastPercent();
            numbers[5] = limited.balanceMostPercent();
            numbers[6] = limited.upshiftsInCorners();
            for (int c = 0; c < stations.size(); c++) {
                numbers[FIGURES + c] = found.circuitTimes().get(c);
            }
        }
        memory.keep(place, numbers, found.failure());
    }

    /** Number of setups that the memory recalled, where none has been driven yet. */
    int recalled() {
        return known.size();
    }

    /** Drives the setup that was there before once more, as to see how long it takes. */
    void again() {
        drive(car, beforePoint.settings(), new double[days.size()]);
    }

    private List<Double> settings(double[] place) {
        List<Double> settings = new ArrayList<>(place.length);
        for (int i = 0; i < place.length; i++) {
            settings.add(axes.get(i).at(place[i]));
        }
        return settings;
    }

    /** What the car as it stood gives; it need not stand on legal steps. */
    OptimisationResult.Candidate before() {
        return beforePoint;
    }

    /** What the setup at a place of the search gives. */
    OptimisationResult.Candidate at(double[] place) {
        String name = Arrays.stream(place).mapToObj(Double::toHexString).collect(Collectors.joining(","));
        OptimisationResult.Candidate found = known.get(name);
        if (found != null) {
            return found;
        }
        found = driven(settings(place));
        if (known.putIfAbsent(name, found) == null) {
            keep(name, found);
        }
        return found;
    }

    private OptimisationResult.Candidate driven(List<Double> settings) {
        try {
            return drive(with(settings), settings, new double[days.size()]);
        } catch (NoLapException | InvalidValueException noLap) {
            return OptimisationResult.Candidate.withoutLap(settings, noLap.getMessage());
        }
    }

    /** The car with settings in the order of the axes. */
    Car with(List<Double> settings) {
        return car.with(setup(settings));
    }

    /** Settings in the order of the axes by name. */
    Setup setup(List<Double> settings) {
        Map<String, Double> named = new LinkedHashMap<>();
        for (int i = 0; i < axes.size(); i++) {
            named.put(axes.get(i).name(), settings.get(i));
        }
        return new Setup("", named);
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
