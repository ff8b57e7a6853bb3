package dev.lapwright.cli.bench;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.results.LapTrace;
import dev.lapwright.results.Subject;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;

/** State of the bench while knobs are turned: a car, a circuit and a line, and the laps driven there so far. */
final class Sheet {
    private static final int MOST_LAPS = 24;
    /** Places of the map: enough for a curve to look like one. */
    private static final int MAP_PLACES = 1200;

    private final Subject subject;
    private final String note;
    private final Stations stations;
    private final List<Knob> knobs;
    private final List<Conditions> days;
    private final Queue<LapSolver> solvers = new ConcurrentLinkedQueue<>();
    /** The setup that was held against last; empty while a question has it. */
    private final AtomicReference<Reference> reference = new AtomicReference<>();

    private final Map<Object, Lap> laps = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Object, Lap> eldest) {
            return size() > MOST_LAPS;
        }
    };

    /**
     * @param note what there is to say of the line, empty if nothing
     * @param days that have names
     */
    Sheet(Car bare, Track track, ChosenLine line, String note, List<Conditions> days) {
        subject = new Subject(bare, Setup.STANDARD, bare, track, line, Conditions.STANDARD);
        this.note = note;
        stations = subject.driven().stations(StationSpacing.DEFAULT);
        knobs = Knob.of(bare);
        this.days = List.copyOf(days);
    }

    Stations stations() {
        return stations;
    }

    List<Knob> knobs() {
        return knobs;
    }

    /** The knob of this name. */
    Knob knob(String name) {
        return knobs.stream()
                .filter(knob -> knob.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new InvalidValueException(
                        "knob", "'" + name + "' is not one of this car's", "reload the page"));
    }

    /** The car set up so, on that day. */
    Subject subject(Question.Stand stand) {
        Setup setup = stand.setup();
        return new Subject(
                subject.bare(),
                setup,
                subject.bare().with(setup),
                subject.track(),
                subject.line(),
                stand.conditions(days));
    }

    /**
     * The lap of a setup on a day; driven once.
     *
     * @throws dev.lapwright.fault.LapwrightException if there is none
     */
    Lap lap(Question.Stand stand) {
        Object key = List.of(stand.set(), stand.day());
        synchronized (laps) {
            Lap known = laps.get(key);
            if (known != null) {
                return known;
            }
        }
        Subject asked = subject(stand);
        LapSolver idle = solvers.poll();
        LapSolver solver = idle == null ? new LapSolver(stations) : idle;
        Lap lap;
        try {
            lap = solver.solve(Vehicle.of(asked.car(), asked.day()));
        } finally {
            solvers.offer(solver);
        }
        synchronized (laps) {
            laps.put(key, lap);
        }
        return lap;
    }

    /** Does something with a setup to hold others against, and what is remembered of it. */
    <T> T against(Question.Stand stand, Function<Reference, T> asked) {
        Object key = List.of(stand.set(), stand.day());
        Reference known = reference.getAndSet(null);
        Reference held = known != null && known.isOf(key) ? known : new Reference(key, () -> subject(stand));
        try {
            return asked.apply(held);
        } finally {
            reference.set(held);
        }
    }

    /** Where a knob stands in a setup on a day. */
    static double standing(Knob knob, Subject subject) {
        return subject.valueOf(knob.name());
    }

    /** What the page has to know of it, once. */
    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "sheet");
        tree.put("title", subject.title());
        tree.put("car", subject.car().name());
        tree.put("circuit", subject.track().name());
        tree.put("closed", subject.track().isClosed());
        tree.put("lengthM", stations.track().length());
        tree.put("line", subject.line().text());
        tree.put("note", note);
        tree.put("knobs", knobs.stream().map(Knob::tree).toList());
        tree.put("map", map());
        List<Map<String, Object>> corners = new ArrayList<>();
        for (Corner corner : stations.corners()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("number", corner.number());
            one.put("label", corner.label());
            one.put("from", corner.entry());
            one.put("apex", corner.apex());
            one.put("to", corner.exit());
            one.put("left", corner.left());
            corners.add(one);
        }
        tree.put("corners", corners);
        return tree;
    }

    private Map<String, Object> map() {
        Lap any = lap(Question.Stand.STANDARD);
        Map<String, double[]> columns =
                subject.line().line().map(line -> LapTrace.columns(any, line)).orElseGet(() -> LapTrace.columns(any));
        int[] rows = Rows.spread(stations.s(), MAP_PLACES);
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("s", new Wire.Column(stations.s(), rows, 1));
        map.put("x", new Wire.Column(columns.get("eastM"), rows, 2));
        map.put("y", new Wire.Column(columns.get("northM"), rows, 2));
        return map;
    }

    /** Choices of rows of a lap. */
    static final class Rows {
        private Rows() {}

        /** About so many, at even distances, the first and the last among them. */
        static int[] spread(double[] s, int most) {
            return spread(s, most, new Question.Zoom(0, 0));
        }

        /** The same, but all that lie within a part that is looked at closely. */
        static int[] spread(double[] s, int most, Question.Zoom zoom) {
            double step = (s[s.length - 1] - s[0]) / most;
            int[] rows = new int[s.length];
            int count = 0;
            double next = s[0];
            for (int i = 0; i < s.length; i++) {
                boolean close = s[i] >= zoom.from() && s[i] <= zoom.to() && zoom.to() > zoom.from();
                if (close || s[i] >= next || i == s.length - 1) {
                    rows[count++] = i;
                    next = Math.max(next, s[i] - s[i] % Math.max(step, 1e-9) + step);
                }
            }
            return java.util.Arrays.copyOf(rows, count);
        }
    }
}
