package dev.lapwright.track.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;

/**
 * The laps found in the points of a whole event. A gate is laid across the line at many of its points; the one that is
 * passed most often, the same way, becomes the start line. A lap goes from one passage to the next.
 */
public final class EventLaps {
    /** Cars and receivers keep within this of the line of the lap before, m. */
    private static final double HALF_GATE = 15;

    private static final int GATES = 100;
    private static final double ALONG = 5;
    /** Cosine of the greatest angle at which a line passes its own gate again: 45°. */
    private static final double SAME_WAY = 0.7;
    /** No circuit is shorter, m. */
    private static final double SHORTEST = 100;

    private static final double SAME_LENGTH = 0.05;
    /** What may lie beyond the only lap without being cut off, m. */
    private static final double BEYOND = 0.5;
    /** Of the gates on what was driven twice, the share that must have been passed twice. */
    private static final double SHARED = 0.5;

    /** Laps that are pooled with the one picked: the errors of four in common are half of one's. */
    private static final int MOST_OTHERS = 3;

    private final List<SurveyPoint> points;
    private final double[] times;
    private final double[] way;
    /** The share of gates that were passed more than once. */
    private double passedAgain;

    /** The place between two points at which a gate is passed. */
    private record Passage(int before, double way, double time) {}

    private record Gate(double x, double y, double east, double north) {}

    private EventLaps(Survey survey, double[] times) {
        points = survey.points();
        this.times = times;
        way = new double[points.size()];
        for (int i = 1; i < way.length; i++) {
            way[i] = way[i - 1] + points.get(i - 1).distanceTo(points.get(i));
        }
    }

    /**
     * One lap of a survey.
     *
     * @param survey the points of the lap, its end brought to its start
     * @param pick how it was picked; null if the survey holds but one lap and was left as it is
     * @param drift from the end of the lap as recorded to its start, which was spread over the lap, m
     */
    public record OfSurvey(Survey survey, LapPick pick, double drift) {}

    /**
     * Picks one lap, and unless it was asked for by its number a few like it to pool with it.
     *
     * @param survey of one lap or several
     * @param times of its points, s; empty if not known
     * @param wanted the number among the whole laps, from 1, or empty
     * @throws dev.lapwright.fault.InvalidValueException if there is no such lap
     */
    public static OfSurvey pick(Survey survey, double[] times, OptionalInt wanted) {
        return new EventLaps(survey, times).picked(survey, wanted);
    }

    private OfSurvey picked(Survey survey, OptionalInt wanted) {
        List<Passage> passages = bestPassages();
        List<int[]> laps = new ArrayList<>();
        for (int k : wholeLaps(passages)) {
            laps.add(new int[] {k, k + 1});
        }
        boolean alone = laps.isEmpty();
        if (!alone) {
            double length = length(passages, laps.get(0)[0]);
            double rest = way[way.length - 1] - length;
            // Two roads side by side make a gate or two be passed twice; a second lap, most of them.
            alone = rest <= BEYOND || passedAgain < SHARED * Math.min(1, rest / length);
        }
        if (alone) {
            // The survey is one lap. Asking for another one is an error, which the pick tells.
            wanted.ifPresent(number -> LapPick.of(new double[] {Double.NaN}, wanted));
            return new OfSurvey(survey, null, 0);
        }
        double[] durations = laps.stream()
                .mapToDouble(lap ->
                        passages.get(lap[1]).time() - passages.get(lap[0]).time())
                .toArray();
        LapPick pick = LapPick.of(durations, wanted);
        int[] lap = laps.get(pick.number() - 1);
        List<List<SurveyPoint>> others = new ArrayList<>();
        if (wanted.isEmpty()) {
            for (int k : pick.like(durations, MOST_OTHERS)) {
                int[] other = laps.get(k);
                others.add(cut(passages.get(other[0]), passages.get(other[1])));
            }
        }
        Passage start = passages.get(lap[0]);
        Passage end = passages.get(lap[1]);
        Survey found = new Survey(cut(start, end), survey.hasElevation(), survey.hasWidths(), others);
        return new OfSurvey(found, pick, between(start).distanceTo(between(end)));
    }

    /** The passages of the gate that is passed most often; of several, the one that comes first. */
    private List<Passage> bestPassages() {
        List<Passage> best = List.of();
        double length = points.isEmpty() ? 0 : way[way.length - 1];
        int at = 0;
        int again = 0;
        for (int k = 0; k < GATES; k++) {
            while (at < way.length && way[at] < length * k / GATES) {
                at++;
            }
            Gate gate = at < way.length ? gate(at) : null;
            if (gate != null) {
                List<Passage> passages = passages(gate);
                best = passages.size() > best.size() ? passages : best;
                again += passages.size() > 1 ? 1 : 0;
            }
        }
        passedAgain = (double) again / GATES;
        return best;
    }

    /** Null where the points around do not move on. */
    private Gate gate(int at) {
        int from = at;
        int to = at;
        while (from > 0 && way[at] - way[from] < ALONG) {
            from--;
        }
        while (to + 1 < way.length && way[to] - way[at] < ALONG) {
            to++;
        }
        double east = points.get(to).x() - points.get(from).x();
        double north = points.get(to).y() - points.get(from).y();
        double size = Math.hypot(east, north);
        return size < ALONG ? null : new Gate(points.get(at).x(), points.get(at).y(), east / size, north / size);
    }

    private List<Passage> passages(Gate gate) {
        List<Passage> found = new ArrayList<>();
        for (int i = 0; i + 1 < way.length; i++) {
            SurveyPoint p = points.get(i);
            SurveyPoint q = points.get(i + 1);
            double before = (p.x() - gate.x()) * gate.east() + (p.y() - gate.y()) * gate.north();
            double behind = (q.x() - gate.x()) * gate.east() + (q.y() - gate.y()) * gate.north();
            // The first point of a gate laid there passes it too.
            boolean passes = before <= 0 && behind > 0;
            if (passes) {
                double share = before / (before - behind);
                double x = p.x() + share * (q.x() - p.x()) - gate.x();
                double y = p.y() + share * (q.y() - p.y()) - gate.y();
                boolean within = Math.abs(-x * gate.north() + y * gate.east()) <= HALF_GATE;
                Gate here = gate(i);
                boolean sameWay = here != null && here.east() * gate.east() + here.north() * gate.north() >= SAME_WAY;
                double place = way[i] + share * (way[i + 1] - way[i]);
                boolean again =
                        found.isEmpty() || place - found.get(found.size() - 1).way() >= SHORTEST;
                if (within && sameWay && again) {
                    double time = times.length == 0 ? Double.NaN : times[i] + share * (times[i + 1] - times[i]);
                    found.add(new Passage(i, place, time));
                }
            }
        }
        return found;
    }

    private static double length(List<Passage> passages, int k) {
        return passages.get(k + 1).way() - passages.get(k).way();
    }

    /** Which passages begin a lap as long as the others. */
    private static List<Integer> wholeLaps(List<Passage> passages) {
        List<Integer> whole = new ArrayList<>();
        if (passages.size() < 2) {
            return whole;
        }
        double[] lengths = new double[passages.size() - 1];
        for (int k = 0; k < lengths.length; k++) {
            lengths[k] = length(passages, k);
        }
        double[] sorted = lengths.clone();
        Arrays.sort(sorted);
        double usual = sorted[sorted.length / 2];
        for (int k = 0; k < lengths.length; k++) {
            if (Math.abs(lengths[k] - usual) <= SAME_LENGTH * usual) {
                whole.add(k);
            }
        }
        return whole;
    }

    /** The points of a lap; what its end misses its start by is taken off evenly along the way. */
    private List<SurveyPoint> cut(Passage start, Passage end) {
        SurveyPoint first = between(start);
        SurveyPoint last = between(end);
        List<SurveyPoint> lap = new ArrayList<>();
        lap.add(first);
        for (int i = start.before() + 1; i <= end.before(); i++) {
            double share = (way[i] - start.way()) / (end.way() - start.way());
            SurveyPoint p = points.get(i);
            lap.add(p.at(
                    p.x() - share * (last.x() - first.x()),
                    p.y() - share * (last.y() - first.y()),
                    p.z() - share * (last.z() - first.z())));
        }
        return lap;
    }

    private SurveyPoint between(Passage passage) {
        SurveyPoint p = points.get(passage.before());
        SurveyPoint q = points.get(passage.before() + 1);
        double step = way[passage.before() + 1] - way[passage.before()];
        double share = step > 0 ? (passage.way() - way[passage.before()]) / step : 0;
        return p.towards(q, share);
    }
}
