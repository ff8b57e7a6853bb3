package dev.lapwright.lap;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Choice of the places where a driver holds a gear although the rule of {@link Propulsion} would shift up and soon down again (section 7
 * of docs/theory.md): a short spell in a higher gear is driven out in the gear below wherever that takes less time, both ways being
 * integrated. Scratch of one solver.
 */
final class HeldGears {
    /** What a spell may lose at sight, over what its shift costs, and still be tried: that loss is a lower bound but for rounding. */
    private static final double WORTH_A_TRY = 1.1;
    /** Cells before a spell that are driven again, since it may move the place where brakes are met. */
    private static final int BEFORE = 3;
    /** Energies that differ by rounding alone, as a share of them. */
    private static final double SAME = 1e-11;

    private final Kernel kernel;
    private final Road road;
    private final int n;
    private final Kernel.Course natural;
    /** Cell from which places are counted. */
    private int origin;

    private Propulsion p;
    private double mass;

    HeldGears(Kernel kernel, Road road) {
        this.kernel = kernel;
        this.road = road;
        n = road.cells;
        natural = new Kernel.Course(n);
    }

    /**
     * A spell in a higher gear.
     *
     * @param from first cell, counted from the origin
     * @param count of cells, on round a closed track
     * @param gear from 0; the one below would be held
     */
    private record Spell(int from, int count, int gear) {
        int end() {
            return from + count;
        }
    }

    /** A spell driven out in the gear below: what it takes less, s, and the cells that it changes, counted from the origin. */
    private record Trial(Spell held, double gain, int from, int count) {}

    /** Holds gears where that is faster; the kernel has solved the lap by the rule. */
    void choose(Vehicle car) {
        p = car.propulsion;
        mass = car.mass;
        if (p.shiftTime == 0) {
            return;
        }
        origin = origin();
        List<Spell> spells = spells(0, n);
        while (!spells.isEmpty()) {
            List<Spell> nest = new ArrayList<>(List.of(spells.remove(0)));
            int end = nest.get(0).end();
            while (!spells.isEmpty() && spells.get(0).from < end) {
                nest.add(spells.remove(0));
                end = Math.max(end, nest.get(nest.size() - 1).end());
            }
            int changed = Math.min(hold(nest), n);
            if (changed > end) {
                // On the way from there the car has another speed now, and shifts elsewhere.
                int from = end;
                spells.removeIf(spell -> spell.from < changed);
                spells.addAll(0, spells(from, changed));
            }
        }
    }

    /** A cell where the car begins to brake: what it did before ends there. */
    private int origin() {
        for (int i = 0; road.closed && i < n; i++) {
            if (kernel.mode[i] == Kernel.BRAKING && kernel.mode[i == 0 ? n - 1 : i - 1] != Kernel.BRAKING) {
                return i;
            }
        }
        return 0;
    }

    private int cell(int place) {
        return Math.floorMod(origin + place, n);
    }

    // --- Spells ---------------------------------------------------------------------------------------------------

    /** All that are worth a try and begin between two places, by where they begin. */
    private List<Spell> spells(int from, int until) {
        List<Spell> spells = new ArrayList<>();
        for (int g = p.lowestGear + 1; g < p.massFactor.length; g++) {
            int i = from;
            // One under way comes last on a closed track.
            while (i < until && inSpell(cell(i), g)) {
                i++;
            }
            int last = road.closed ? i + n : n;
            while (i < until) {
                int end = i;
                while (end < last && inSpell(cell(end), g)) {
                    end++;
                }
                if (end > i) {
                    Spell spell = new Spell(i, end - i, g);
                    if (isWorthATry(spell)) {
                        spells.add(spell);
                    }
                }
                i = Math.max(end, i + 1);
            }
        }
        spells.sort(Comparator.comparingInt(Spell::from).thenComparingInt(Spell::count));
        return spells;
    }

    private boolean inSpell(int cell, int g) {
        double top = Math.max(kernel.energy[cell], kernel.energy[cell + 1]);
        return (kernel.mode[cell] == Kernel.TURNING ? Math.max(top, kernel.peak[cell]) : top) > p.bandFrom(g);
    }

    /** Whether the gear below could win more by the shift that it saves than it loses by its weaker drive, at sight. */
    private boolean isWorthATry(Spell spell) {
        int held = spell.gear - 1;
        double shift = Math.sqrt(p.bandFrom(spell.gear) + p.bandTo(spell.gear));
        double cost = p.shiftTime * p.force(held, shift) / (mass * p.massFactor[held]);
        double less = 0;
        double lost = 0;
        double saved = 0;
        for (int c = 0; c < spell.count; c++) {
            int i = cell(spell.from + c);
            if (kernel.mode[i] == Kernel.BRAKING || !(road.length[i] > 0)) {
                continue;
            }
            // What the car gains is less than what its drive would give it.
            double gain = (kernel.energy[i + 1] - kernel.energy[i]) / road.length[i];
            double e = 0.5 * (kernel.energy[i] + kernel.energy[i + 1]);
            double force = e < p.limitEnergy[held] ? p.force(held, Math.sqrt(2 * e)) : 0;
            less += Math.max(0, gain - force / (mass * p.massFactor[held])) * kernel.time[i];
            lost += less * kernel.time[i];
            saved += cost * kernel.time[i];
        }
        return lost < WORTH_A_TRY * saved;
    }

    // --- Trials ---------------------------------------------------------------------------------------------------

    /** Holds the gears below spells that lie within each other where that gains most in all; returns where its changes end, 0 without any. */
    private int hold(List<Spell> nest) {
        List<Trial> gaining = new ArrayList<>();
        for (Spell spell : nest) {
            Trial trial = driven(spell);
            if (trial.gain > 0) {
                gaining.add(trial);
            }
            putBack(trial);
        }
        int changed = 0;
        for (Trial chosen : together(gaining)) {
            // What one changes may reach into the next.
            Trial again = driven(chosen.held);
            if (again.gain > 0) {
                changed = again.from + again.count;
            } else {
                putBack(again);
            }
        }
        return changed;
    }

    /** Those of some trials whose spells do not overlap and that gain most together, in turn. */
    private static List<Trial> together(List<Trial> trials) {
        trials.sort(Comparator.comparingInt(trial -> trial.held.end()));
        double[] most = new double[trials.size() + 1];
        int[] free = new int[trials.size()];
        for (int i = 0; i < trials.size(); i++) {
            Trial trial = trials.get(i);
            while (free[i] < i && trials.get(free[i]).held.end() <= trial.held.from) {
                free[i]++;
            }
            most[i + 1] = Math.max(most[i], most[free[i]] + trial.gain);
        }
        List<Trial> together = new ArrayList<>();
        for (int i = trials.size() - 1; i >= 0; ) {
            if (most[i + 1] > most[i]) {
                together.add(0, trials.get(i));
                i = free[i] - 1;
            } else {
                i--;
            }
        }
        return together;
    }

    /** Drives with a gear held until the lap by the rule is met again. */
    private Trial driven(Spell held) {
        int from = start(held);
        int count = 0;
        double before = kernel.energy[cell(from)];
        boolean met = false;
        boolean holding = false;
        while (!met && count < n) {
            int i = cell(from + count);
            natural.take(kernel.course, i);
            natural.energy[i] = before;
            int behind = from + count - held.from;
            holding = behind >= 0 && (behind < held.count || (holding && kernel.energy[i] > p.bandFrom(held.gear)));
            if (holding) {
                int lowest = kernel.lowest(i);
                kernel.gears(i, lowest, Math.max(lowest, Math.min(kernel.highest(i), held.gear - 1)));
            }
            before = kernel.energy[i + 1];
            kernel.forward(i);
            count++;
            double after = kernel.energy[i + 1];
            met = behind + 1 >= held.count
                    && (natural.mode[i] == Kernel.BRAKING
                            ? after >= before
                            : Math.abs(after - before) <= SAME * before);
            if (met) {
                kernel.store(i + 1, before);
            } else if (!road.closed && i + 1 == n) {
                natural.energy[n] = before;
                met = true;
            }
        }
        boolean braking = false;
        double gain = 0;
        for (int c = count - 1; c >= 0; c--) {
            int i = cell(from + c);
            braking = kernel.backward(i, braking);
            gain += natural.time[i] - kernel.time[i];
        }
        int first = cell(from);
        boolean apart = Math.abs(kernel.energy[first] - natural.energy[first]) > SAME * natural.energy[first];
        return new Trial(held, met && !apart ? gain : Double.NEGATIVE_INFINITY, from, count);
    }

    /** Place from which a spell is driven anew. */
    private int start(Spell spell) {
        int from = spell.from;
        int driving = 0;
        while (driving < BEFORE && spell.end() - from < n && (road.closed || from > 0)) {
            from--;
            driving = kernel.mode[cell(from)] == Kernel.DRIVING ? driving + 1 : 0;
        }
        return from;
    }

    private void putBack(Trial trial) {
        for (int c = 0; c < trial.count; c++) {
            kernel.putBack(natural, cell(trial.from + c));
        }
        if (!road.closed && trial.from + trial.count == n) {
            kernel.store(n, natural.energy[n]);
        }
    }
}
