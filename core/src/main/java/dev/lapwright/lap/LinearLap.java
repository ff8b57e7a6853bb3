package dev.lapwright.lap;

/**
 * Linear inequalities that bound a solved lap, about it: how far each energy v²/2 may rise or fall when others do, when
 * the path's curvature changes and when its cells grow. Energies are relative: ε is δe/e of a station. The lap itself is
 * ε = 0, and the least time that the inequalities allow on the path as it is.
 */
public final class LinearLap {
    final double[] limitSlack;
    final double[] limitPerCurvature;
    private final double time;
    private final double[] cellTime;
    private final Rows grip;
    private final Rows drive;

    LinearLap(double time, double[] cellTime) {
        this.time = time;
        this.cellTime = cellTime.clone();
        int cells = cellTime.length;
        limitSlack = new double[cells + 1];
        limitPerCurvature = new double[cells + 1];
        grip = new Rows(cells);
        drive = new Rows(cells);
    }

    /** For each cell perStart ε₀ + perEnd ε₁ + perCurvatureStart δκ₀ + perCurvatureEnd δκ₁ + perLength δh ≤ slack. */
    public static final class Rows {
        final double[] slack;
        final double[] perStart;
        final double[] perEnd;
        final double[] perCurvatureStart;
        final double[] perCurvatureEnd;
        final double[] perLength;

        Rows(int cells) {
            slack = new double[cells];
            perStart = new double[cells];
            perEnd = new double[cells];
            perCurvatureStart = new double[cells];
            perCurvatureEnd = new double[cells];
            perLength = new double[cells];
        }

        /** What is left. */
        public double slack(int cell) {
            return slack[cell];
        }

        /** By the relative energy where the cell begins. */
        public double perStart(int cell) {
            return perStart[cell];
        }

        /** By the relative energy where it ends. */
        public double perEnd(int cell) {
            return perEnd[cell];
        }

        /** By the curvature where it begins, m. */
        public double perCurvatureStart(int cell) {
            return perCurvatureStart[cell];
        }

        /** By the curvature where it ends, m. */
        public double perCurvatureEnd(int cell) {
            return perCurvatureEnd[cell];
        }

        /** By its length, 1/m. */
        public double perLength(int cell) {
            return perLength[cell];
        }
    }

    /** Lap time, s. */
    public double time() {
        return time;
    }

    /** Number of cells. */
    public int cells() {
        return cellTime.length;
    }

    /** Time for a cell, s. */
    public double cellTime(int cell) {
        return cellTime[cell];
    }

    /** How far a station's energy lies below its cornering limit, relative. */
    public double limitSlack(int station) {
        return limitSlack[station];
    }

    /** Change of that limit, relative, with the curvature there, m. */
    public double limitPerCurvature(int station) {
        return limitPerCurvature[station];
    }

    /** Tyres, roll-over and brakes. */
    public Rows grip() {
        return grip;
    }

    /** The engine. */
    public Rows drive() {
        return drive;
    }
}
