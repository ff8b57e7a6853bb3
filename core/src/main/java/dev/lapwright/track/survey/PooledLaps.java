package dev.lapwright.track.survey;

import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * All that several laps of one log tell of a line: their points, lap by lap, and the samples of speed and lateral acceleration that
 * were logged with them.
 */
final class PooledLaps {
    /** Below it an error of acceleration is too large a one of curvature, m/s. */
    private static final double SLOW = 5;
    /** A lap that leaves the first by more went another way, m. */
    private static final double FARTHEST = 15;

    private final List<SurveyPoint> points = new ArrayList<>();
    private final List<Integer> lapOf = new ArrayList<>();
    private final List<SurveyPoint> moving = new ArrayList<>();
    private final List<Integer> movingLap = new ArrayList<>();
    private int laps;

    /**
     * @param survey as read
     * @param first points of its first lap, in the order in which they are driven
     */
    PooledLaps(Survey survey, List<SurveyPoint> first, ImportChoices choices) {
        add(first, survey.points(), choices);
        for (List<SurveyPoint> lap : survey.otherLaps()) {
            List<SurveyPoint> prepared = prepared(lap, survey, choices);
            if (follows(prepared, first)) {
                add(prepared, lap, choices);
            }
        }
    }

    /** Empty where a lap cannot be used. */
    private static List<SurveyPoint> prepared(List<SurveyPoint> lap, Survey survey, ImportChoices choices) {
        try {
            return new SurveyPreparation(choices).prepare(new Survey(lap, survey.hasElevation(), survey.hasWidths()));
        } catch (InvalidValueException e) {
            // One lap of several: the others serve without it.
            return List.of();
        }
    }

    private static boolean follows(List<SurveyPoint> lap, List<SurveyPoint> first) {
        double step = 0;
        for (int i = 0; i < first.size(); i++) {
            step = Math.max(step, first.get(i).distanceTo(first.get((i + 1) % first.size())));
        }
        for (SurveyPoint p : lap) {
            double nearest = Double.POSITIVE_INFINITY;
            for (SurveyPoint q : first) {
                nearest = Math.min(nearest, p.distanceTo(q));
            }
            if (nearest > FARTHEST + step / 2) {
                return false;
            }
        }
        return !lap.isEmpty();
    }

    private void add(List<SurveyPoint> prepared, List<SurveyPoint> raw, ImportChoices choices) {
        points.addAll(prepared);
        lapOf.addAll(Collections.nCopies(prepared.size(), laps));
        List<SurveyPoint> ordered = new ArrayList<>(raw);
        if (choices.reversed()) {
            ordered.replaceAll(SurveyPoint::reversed);
            Collections.reverse(ordered);
        }
        double way = Double.NEGATIVE_INFINITY;
        for (SurveyPoint p : ordered) {
            if (p.motion() != null && p.motion().speed() >= SLOW && p.motion().way() > way) {
                way = p.motion().way();
                moving.add(p);
                movingLap.add(laps);
            }
        }
        laps++;
    }

    List<SurveyPoint> points() {
        return points;
    }

    int laps() {
        return laps;
    }

    /** The lap of each point, from 0. */
    int[] lapOf() {
        return ints(lapOf);
    }

    /** None unless all points came with them. */
    LoggedSamples samples() {
        boolean known = points.stream().allMatch(p -> p.motion() != null);
        int n = known ? moving.size() : 0;
        double[] way = new double[n];
        double[] speed = new double[n];
        double[] acceleration = new double[n];
        for (int i = 0; i < n; i++) {
            way[i] = moving.get(i).motion().way();
            speed[i] = moving.get(i).motion().speed();
            acceleration[i] = moving.get(i).motion().lateralAcceleration();
        }
        return new LoggedSamples(Arrays.copyOf(ints(movingLap), n), way, speed, acceleration);
    }

    private static int[] ints(List<Integer> values) {
        return values.stream().mapToInt(Integer::intValue).toArray();
    }
}
