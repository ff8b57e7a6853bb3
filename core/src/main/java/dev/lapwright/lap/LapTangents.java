package dev.lapwright.lap;

import java.util.List;

/**
 * Changes of a lap's speeds with cars that differ by a hair from the one that drove it, all from one solved lap: the courses of the lap
 * followed from where they begin. What the lap time's derivatives are to {@link LapDerivatives} these are to the speed at each station.
 *
 * <pre>{@code
 * Vehicle more = Vehicle.of(car.with("conditions.grip", 1.00001), day);
 * LapTangents tangents = solver.tangents(vehicle, List.of(LapTangents.Step.towards(more)));
 * double[] perGrip = tangents.speedChange(0); // m/s for 0.00001 of grip
 * }</pre>
 */
public final class LapTangents {
    private final double time;
    private final double[] speeds;
    private final double[][] changes;

    /**
     * A step from a car to one that differs by a hair, about 1e-5 of what is its own, and as long a step to the other side. Where the lap has a
     * kink the mean of both counts.
     *
     * @param less null where there is none
     * @param more null where there is none; one of both there must be
     */
    public record Step(Vehicle less, Vehicle more) {
        public Step {
            if (less == null && more == null) {
                throw new IllegalArgumentException("a step leads to one side at least");
            }
        }

        /** A step to one side alone. */
        public static Step towards(Vehicle more) {
            return new Step(null, more);
        }
    }

    private LapTangents(double time, double[] speeds, double[][] changes) {
        this.time = time;
        this.speeds = speeds;
        this.changes = changes;
    }

    /** Lap time, s. */
    public double time() {
        return time;
    }

    /** Speed at each station, m/s. */
    public double[] speeds() {
        return speeds.clone();
    }

    /** Change of the speed at each station with a step, m/s: to first order, and zero at rest. */
    public double[] speedChange(int step) {
        return changes[step].clone();
    }

    /** Those of the lap that a kernel has just solved. */
    static LapTangents of(double time, double[] speeds, LapCourses courses, List<LocalSlopes.Hairs> steps) {
        double[][] changes = new double[steps.size()][];
        for (int k = 0; k < changes.length; k++) {
            changes[k] = new Follower(courses, steps.get(k)).energies();
            for (int j = 0; j < speeds.length; j++) {
                changes[k][j] = speeds[j] > 0 ? changes[k][j] / speeds[j] : 0;
            }
        }
        return new LapTangents(time, speeds, changes);
    }

    /** The way of one step's errors along the lap. */
    private static final class Follower {
        private final LapCourses courses;
        private final LocalSlopes local;
        private final LocalSlopes.Hairs hairs;
        private final int rows;

        Follower(LapCourses courses, LocalSlopes.Hairs hairs) {
            this.courses = courses;
            this.hairs = hairs;
            local = courses.local;
            rows = 2 * courses.road.cells + 1;
        }

        /** Change of energy at each station, m²/s². */
        double[] energies() {
            if (hairs.nothing) {
                return new double[courses.source.length];
            }
            int[] limits = courses.limits();
            local.compare(hairs, courses.driveRows.kept, courses.brakeRows.kept, limits);
            double[] found = new double[courses.source.length];
            for (int j : limits) {
                local.limitChange(hairs, j);
                found[j] = hairs.mean();
            }
            follow(found, LapCourses.Source.BRAKE, added(false));
            follow(found, LapCourses.Source.DRIVE, added(true));
            if (courses.road.closed) {
                found[courses.road.cells] = found[0];
            }
            return found;
        }

        /** What changes of the slope add to the error over each cell. */
        private double[] added(boolean driving) {
            LapCourses.Passage[] passages = driving ? courses.driven : courses.braked;
            double[] evenly = changes(driving ? courses.driveRows : courses.brakeRows, driving, false);
            double[] shifting = changes(driving ? courses.shiftRows : courses.shiftBackRows, driving, true);
            double[] added = new double[passages.length];
            for (int i = 0; i < passages.length; i++) {
                LapCourses.Passage passage = passages[i];
                if (passage == null) {
                    continue;
                }
                if (passage.shifting() && local.movesGears(hairs, i)) {
                    if (driving) {
                        local.stepChange(hairs, i);
                    } else {
                        local.stepChangeBack(hairs, i);
                    }
                    added[i] = hairs.mean();
                } else {
                    double[] slope = passage.shifting() ? shifting : evenly;
                    added[i] = passage.first() * slope[2 * i]
                            + passage.middle() * slope[2 * i + 1]
                            + passage.last() * slope[2 * i + 2];
                }
            }
            return added;
        }

        private double[] changes(LocalSlopes.Thinned at, boolean driving, boolean shifting) {
            double[] changes = new double[rows];
            for (int row : at.kept) {
                if (!driving) {
                    local.brakeChange(hairs, row);
                } else if (shifting) {
                    local.shiftChange(hairs, row);
                } else {
                    local.driveChange(hairs, row);
                }
                changes[row] = hairs.mean();
            }
            at.spread(changes);
            return changes;
        }

        /** Follows courses of one kind from where they begin: drive forwards, brakes backwards, on round a closed track until nothing changes. */
        private void follow(double[] found, LapCourses.Source kind, double[] added) {
            int count = courses.stations();
            boolean driving = kind == LapCourses.Source.DRIVE;
            LapCourses.Passage[] passages = driving ? courses.driven : courses.braked;
            double moved = Double.POSITIVE_INFINITY;
            for (int round = 0; round < LapCourses.MOST_ROUNDS && moved > LapCourses.SETTLED; round++) {
                moved = 0;
                for (int c = 0; c < count; c++) {
                    int j = driving ? c : count - 1 - c;
                    if (courses.source[j] != kind) {
                        continue;
                    }
                    int cell = driving ? courses.cellBefore(j) : courses.cellAfter(j);
                    int from = driving ? cell : courses.road.closed ? (cell + 1) % count : cell + 1;
                    double next = passages[cell].growth() * found[from] + added[cell];
                    moved = Math.max(moved, Math.abs(next - found[j]));
                    found[j] = next;
                }
            }
        }
    }
}
