package dev.lapwright.slip;

import static dev.lapwright.slip.SlipForces.FREE;
import static dev.lapwright.slip.SlipForces.SIDESLIP;
import static dev.lapwright.slip.SlipForces.SLIP;
import static dev.lapwright.slip.SlipForces.STEER;
import static dev.lapwright.slip.SlipForces.UNKNOWNS;

import dev.lapwright.lap.FourWheels;
import dev.lapwright.lap.Limit;
import dev.lapwright.lap.StationLimits;
import java.util.Arrays;

/**
 * Limits of a car by the equilibrium of its four wheels' slips: from a straight into the turn, on in speed or in acceleration, to where the
 * equilibrium first ends or engine, brakes or the car's height do. What lies beyond that first end, with the tail out, is
 * never counted, however fast. Scratch of one thread; allocates nothing where it answers.
 */
final class SlipLimits implements StationLimits {
    /** Shares of a guessed limit from which it is looked for. */
    private static final double[] STARTS = {0.8, 0.5, 0.25};
    /** Shares of a speed from which drive and brakes are looked for, and steps from there. */
    private static final double[] SLOWER = {0.85, 0.95, 1, 0.6, 0.3};

    private static final double SPEED_STEP = 0.08;
    private static final double LEAST_SPEED_STEP = 0.005;

    private final FourWheels wheels;
    private final SlipForces forces;
    private final SlipTracer tracer;
    private final double[] guess = new double[UNKNOWNS];
    private final Memory drive = new Memory();
    private final Memory brake = new Memory();

    /** Whether the last speed asked for is beyond what the car holds: only trial steps ask there. */
    private boolean beyond;

    private double engineForce;
    private Limit limit = Limit.POWER;

    SlipLimits(FourWheels wheels, SlipSoftness softness) {
        this.wheels = wheels;
        forces = new SlipForces(wheels, softness);
        tracer = new SlipTracer(forces);
    }

    /** Where the last search of a kind ended. */
    private static final class Memory {
        final double[] state = new double[UNKNOWNS];
        final double[] tangent = new double[UNKNOWNS];
        double fall;
        boolean left;
        boolean known;
    }

    SlipForces forces() {
        return forces;
    }

    SlipTracer tracer() {
        return tracer;
    }

    /** Forgets where searches ended: the next begin from a straight. */
    void forget() {
        drive.known = false;
        brake.known = false;
    }

    /** An equilibrium at the speed and acceleration that are set, found from a straight; false where there is none. */
    boolean settle(double speed, double acceleration) {
        forces.speed = speed;
        forces.acceleration = acceleration;
        wheels.drive(speed);
        forces.free = SlipForces.Free.TURN;
        Arrays.fill(guess, 0);
        Arrays.fill(guess, SLIP, SLIP + 4, 0.002 * (acceleration < 0 ? -1 : 1));
        forces.turn = 0;
        if (!tracer.settle(guess)) {
            return false;
        }
        return (wheels.lateral() == 0 && wheels.curvature() == 0) || (tracer.march(1) && tracer.state[FREE] >= 1);
    }

    @Override
    public double highest(double cap, double near) {
        forces.massFactor = 1;
        forces.engineDrag = 0;
        tracer.engine = Double.POSITIVE_INFINITY;
        if (near >= cap && settle(cap, 0)) {
            return cap;
        }
        for (double share : STARTS) {
            double begin = share * near;
            if (!settle(begin, 0)) {
                continue;
            }
            forces.turn = 1;
            forces.free = SlipForces.Free.SPEED;
            forces.speedScale = 2 * near;
            forces.speed = begin;
            if (!resume() || !tracer.march(cap / forces.speedScale)) {
                continue;
            }
            limit = !tracer.turned && tracer.state[FREE] * forces.speedScale < cap ? tipping() : weakerAxle();
            return Math.min(cap, tracer.state[FREE] * forces.speedScale);
        }
        return Double.NaN;
    }

    /** Goes on from the tracer's state with something else left free. */
    private boolean resume() {
        System.arraycopy(tracer.state, 0, guess, 0, UNKNOWNS);
        guess[FREE] = forces.lambda();
        return tracer.settle(guess);
    }

    @Override
    public double drive(double speed, double engine, double massFactor) {
        tracer.engine = engine;
        forces.massFactor = massFactor;
        forces.engineDrag = 0;
        if (!find(SlipForces.Free.DRIVE, drive, speed)) {
            limit = Limit.REAR_GRIP;
            engineForce = 0;
            return beyond ? 0 : shortOfPower(speed);
        }
        engineForce =
                tracer.turned ? Math.max(0, forces.enginePart()) : Math.min(engine, Math.max(0, forces.enginePart()));
        limit = tracer.turned ? weakerAxle() : wheels.tipping() > 1 - 1e-6 ? tipping() : Limit.POWER;
        return forces.acceleration;
    }

    /**
     * Just below the highest speed a car may need more drive than the engine has to stay in balance, so that no equilibrium has the engine's full
     * force: it slows by what the engine lacks at steady speed. NaN where it lacks nothing.
     */
    private double shortOfPower(double speed) {
        if (!settle(speed, 0)) {
            return Double.NaN;
        }
        double lacking = forces.enginePart() - tracer.engine;
        if (!(lacking > 0)) {
            return Double.NaN;
        }
        limit = Limit.POWER;
        engineForce = tracer.engine;
        return -lacking / (wheels.mass() * forces.massFactor);
    }

    @Override
    public double brake(double speed, double engineDrag, double massFactor) {
        forces.massFactor = massFactor;
        forces.engineDrag = engineDrag;
        if (!find(SlipForces.Free.BRAKE, brake, speed)) {
            return beyond ? -wheels.resistance() / wheels.mass() - wheels.climb() : Double.NaN;
        }
        limit = Limit.BRAKES;
        return forces.acceleration;
    }

    private boolean find(SlipForces.Free free, Memory memory, double speed) {
        beyond = false;
        forces.turn = 1;
        forces.free = free;
        forces.speed = speed;
        wheels.drive(speed);
        if (memory.known) {
            if (memory.left != wheels.left()) {
                mirror(memory);
            }
            if (tracer.endNear(memory.state, memory.tangent, memory.fall)) {
                keep(memory);
                return true;
            }
        }
        memory.known = false;
        if (fromSlower(free, memory, SLOWER[0], speed)) {
            return true;
        }
        if (!settle(speed, 0)) {
            beyond = true;
            return false;
        }
        for (int i = 1; i < SLOWER.length; i++) {
            if (fromSlower(free, memory, SLOWER[i], speed)) {
                return true;
            }
        }
        return false;
    }

    /** The end at a share of the speed, and on from there to the speed: so that every end is one that slower cars have too. */
    private boolean fromSlower(SlipForces.Free free, Memory memory, double share, double speed) {
        if (!settle(share * speed, 0)) {
            return false;
        }
        forces.turn = 1;
        forces.free = free;
        forces.acceleration = 0;
        if (!resume() || !tracer.march(Double.POSITIVE_INFINITY)) {
            return false;
        }
        keep(memory);
        double reached = share;
        double step = SPEED_STEP;
        while (reached < 1) {
            double next = Math.min(1, reached + step);
            if (onTo(memory, next * speed)) {
                reached = next;
            } else {
                step *= 0.5;
                if (step < LEAST_SPEED_STEP) {
                    memory.known = false;
                    return false;
                }
            }
        }
        return true;
    }

    /** From the end at one speed to that at another, m/s. */
    private boolean onTo(Memory memory, double speed) {
        forces.speed = speed;
        wheels.drive(speed);
        if (memory.left != wheels.left()) {
            mirror(memory);
        }
        boolean found = tracer.endNear(memory.state, memory.tangent, memory.fall);
        if (found) {
            keep(memory);
        }
        return found;
    }

    private void keep(Memory memory) {
        System.arraycopy(tracer.state, 0, memory.state, 0, UNKNOWNS);
        System.arraycopy(tracer.tangent, 0, memory.tangent, 0, UNKNOWNS);
        memory.fall = tracer.fall();
        memory.left = wheels.left();
        memory.known = true;
    }

    /** The other side becomes the inner one. */
    private static void mirror(Memory memory) {
        mirror(memory.state);
        mirror(memory.tangent);
        memory.left = !memory.left;
    }

    private static void mirror(double[] y) {
        y[STEER] = -y[STEER];
        y[SIDESLIP] = -y[SIDESLIP];
        for (int w = 0; w < 4; w += 2) {
            double swap = y[SLIP + w];
            y[SLIP + w] = y[SLIP + w + 1];
            y[SLIP + w + 1] = swap;
        }
    }

    private Limit tipping() {
        return wheels.rolls() ? Limit.ROLL_OVER : Limit.PITCH_OVER;
    }

    /** The axle whose wheels, by what they could give, are nearer to their peak or further beyond it. */
    private Limit weakerAxle() {
        return use(0) >= use(2) ? Limit.FRONT_GRIP : Limit.REAR_GRIP;
    }

    private double use(int inner) {
        double a = wheels.peakAcross(inner);
        double b = wheels.peakAcross(inner + 1);
        return (a * forces.use[inner] + b * forces.use[inner + 1]) / (a + b);
    }

    @Override
    public double engineForce() {
        return engineForce;
    }

    @Override
    public Limit limit() {
        return limit;
    }
}
