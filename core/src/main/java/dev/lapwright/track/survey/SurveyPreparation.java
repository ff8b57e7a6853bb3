package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * The check of a survey, and its points in the order in which they are to be driven, without duplicates, slips of order and
 * single points far beside the rest. What was changed or looks odd is said with the point's number and where it is.
 */
final class SurveyPreparation {
    /** The spline's equations need five; a shape needs a few more. */
    static final int FEWEST = 8;

    private static final double SAME_SPOT = 1e-3;
    private static final double LEAST_EXTENT = 10;
    /** Longest track, m: as {@link dev.lapwright.track.Track} takes. */
    private static final double LONGEST = 200_000;

    private static final double GAP = 5;
    /** A gap that the road does not turn over more than this is one in a straight, and no loss. */
    private static final double STRAIGHT_GAP = Math.toRadians(8);
    /** Two points have changed places if the steps to and from them shrink to this share; evenly spaced, they halve. */
    private static final double SHORTER = 0.7;

    private static final int MOST_PLACES = 3;
    private static final double LEAST_GAP = 20;
    private static final double OPEN_GAP = 3;
    private static final double KINK = Math.toRadians(60);
    /** Between closer points the errors of any survey turn this way and that. */
    private static final double LEAST_STEP_OF_A_KINK = 1;

    /** Times the median miss of all points: a normal error is never that large. */
    private static final double OUTLIER = 12;

    private static final double LEAST_OUTLIER = 1;
    private static final double MOST_OUTLIERS = 0.02;

    private final ImportChoices choices;
    private final List<String> warnings = new ArrayList<>();
    /** The numbers, from 1, that the points kept had in the survey. */
    private final List<Integer> numbers = new ArrayList<>();

    SurveyPreparation(ImportChoices choices) {
        this.choices = choices;
    }

    List<String> warnings() {
        return warnings;
    }

    List<SurveyPoint> prepare(Survey survey) {
        List<SurveyPoint> points = withoutDuplicates(survey.points());
        checkExtent(points);
        if (points.size() < FEWEST) {
            throw new InvalidValueException(
                    "survey",
                    points.size() + " points at different places are too few",
                    "give at least " + FEWEST + "; one every 5 to 20 m is usual");
        }
        if (choices.reversed()) {
            points = reversed(points);
        }
        if (!exact()) {
            points = withoutOutliers(inOrder(points));
        }
        warnOfKinks(points);
        double[] steps = steps(points);
        checkLength(steps);
        if (choices.closed()) {
            checkClosed(points, steps);
        }
        warnOfGaps(points, steps);
        return points;
    }

    private List<SurveyPoint> withoutDuplicates(List<SurveyPoint> points) {
        List<SurveyPoint> kept = new ArrayList<>();
        int dropped = 0;
        int firstDropped = 0;
        for (int i = 0; i < points.size(); i++) {
            SurveyPoint p = points.get(i);
            if (!kept.isEmpty() && kept.get(kept.size() - 1).distanceTo(p) < SAME_SPOT) {
                firstDropped = dropped++ == 0 ? i + 1 : firstDropped;
            } else {
                kept.add(p);
                numbers.add(i + 1);
            }
        }
        // A ring says its first point again at the end; that is how rings are written, and no fault.
        if (choices.closed() && kept.size() > 1 && kept.get(kept.size() - 1).distanceTo(kept.get(0)) < SAME_SPOT) {
            kept.remove(kept.size() - 1);
            numbers.remove(numbers.size() - 1);
        }
        if (dropped > 0) {
            warnings.add("dropped " + dropped + (dropped == 1 ? " point" : " points")
                    + " on the spot of the one before, the first of them point " + firstDropped);
        }
        return kept;
    }

    /** Where a point of the survey is, for people: its number in the file, and its place on the plane of the points. */
    private String place(SurveyPoint p, int number) {
        return "point " + number + " (" + Math.round(p.x()) + ", " + Math.round(p.y()) + ")";
    }

    /** Places of points by their index, the first few of them. */
    private String places(List<SurveyPoint> points, List<Integer> indices) {
        List<String> places = new ArrayList<>();
        for (int i : indices.subList(0, Math.min(MOST_PLACES, indices.size()))) {
            places.add(place(points.get(i), numbers.get(i)));
        }
        return String.join(", ", places) + (indices.size() > MOST_PLACES ? " and further on" : "");
    }

    /** Puts two neighbours back in order that have changed places, so that the line runs back and forth again. */
    private List<SurveyPoint> inOrder(List<SurveyPoint> points) {
        List<SurveyPoint> ordered = new ArrayList<>(points);
        List<Integer> changed = new ArrayList<>();
        for (int i = 1; i + 2 < ordered.size(); i++) {
            SurveyPoint before = ordered.get(i - 1);
            SurveyPoint a = ordered.get(i);
            SurveyPoint b = ordered.get(i + 1);
            SurveyPoint after = ordered.get(i + 2);
            double here = before.distanceTo(a) + b.distanceTo(after);
            double turned = before.distanceTo(b) + a.distanceTo(after);
            boolean jitter = a.distanceTo(b) < LEAST_STEP_OF_A_KINK;
            if (!jitter && turned < SHORTER * here) {
                ordered.set(i, b);
                ordered.set(i + 1, a);
                int number = numbers.get(i);
                numbers.set(i, numbers.get(i + 1));
                numbers.set(i + 1, number);
                changed.add(i);
            }
        }
        if (changed.isEmpty() || changed.size() > Math.max(1, MOST_OUTLIERS * points.size())) {
            return points;
        }
        warnings.add((changed.size() == 1 ? "a point stood" : changed.size() + " points stood")
                + " behind the one that follows and was put in order: " + places(ordered, changed)
                + "; --smoothing 0 keeps the order");
        return ordered;
    }

    private void checkLength(double[] steps) {
        double length = Arrays.stream(steps).sum();
        if (!(length <= LONGEST)) {
            throw new InvalidValueException(
                    "survey",
                    "the points make a way of " + Check.text(Math.rint(length / 1000)) + " km, longer than "
                            + Math.round(LONGEST / 1000) + " km",
                    "give the points of one lap, and check their unit: in the heading, as in x (m), or --column x=HEADING:cm");
        }
    }

    private boolean exact() {
        return choices.smoothing().isPresent() && choices.smoothing().getAsDouble() == 0;
    }

    /** Drops single points far beside the cubic through their four neighbours, where all others lie close to theirs. */
    private List<SurveyPoint> withoutOutliers(List<SurveyPoint> points) {
        int n = points.size();
        double[] miss = new double[n];
        for (int i = choices.closed() ? 0 : 2; i < (choices.closed() ? n : n - 2); i++) {
            miss[i] = miss(points, i);
        }
        double[] sorted = miss.clone();
        Arrays.sort(sorted);
        double limit = Math.max(LEAST_OUTLIER, OUTLIER * sorted[n / 2]);
        List<SurveyPoint> kept = new ArrayList<>();
        List<Integer> keptNumbers = new ArrayList<>();
        List<Integer> dropped = new ArrayList<>();
        double farthest = 0;
        for (int i = 0; i < n; i++) {
            boolean worst = miss[i] >= miss[(i + 1) % n]
                    && miss[i] >= miss[(i + 2) % n]
                    && miss[i] >= miss[(i + n - 1) % n]
                    && miss[i] >= miss[(i + n - 2) % n];
            if (worst && miss[i] > limit && miss[i] > shorterStep(points, i)) {
                dropped.add(i);
                farthest = Math.max(farthest, miss[i]);
            } else {
                kept.add(points.get(i));
                keptNumbers.add(numbers.get(i));
            }
        }
        if (dropped.isEmpty() || dropped.size() > Math.max(1, MOST_OUTLIERS * n) || kept.size() < FEWEST) {
            return points;
        }
        warnings.add((dropped.size() == 1
                        ? "a point that lies far beside its neighbours was"
                        : dropped.size() + " points that lie far beside their neighbours were")
                + " left out, by up to " + Check.text(Math.rint(10 * farthest) / 10) + " m: " + places(points, dropped)
                + "; --smoothing 0 goes through all points");
        numbers.clear();
        numbers.addAll(keptNumbers);
        return kept;
    }

    /** The shorter way to a neighbour, halved: errors that small are no outliers. */
    private static double shorterStep(List<SurveyPoint> points, int i) {
        int n = points.size();
        SurveyPoint p = points.get(i);
        return Math.min(p.distanceTo(points.get((i + 1) % n)), p.distanceTo(points.get((i + n - 1) % n))) / 2;
    }

    /** How far a point lies from the cubic through the two points before it and the two behind it, m. */
    private static double miss(List<SurveyPoint> points, int i) {
        int n = points.size();
        SurveyPoint[] p = new SurveyPoint[5];
        for (int k = 0; k < 5; k++) {
            p[k] = points.get((i + k - 2 + n) % n);
        }
        double before = p[1].distanceTo(p[2]);
        double share = before / (before + p[2].distanceTo(p[3]));
        double across = p[1].distanceTo(p[3]);
        double[] t = {-p[0].distanceTo(p[1]), 0, across * share, across, across + p[3].distanceTo(p[4])};
        double x = 0;
        double y = 0;
        for (int k = 0; k < 5; k++) {
            if (k != 2) {
                double weight = 1;
                for (int m = 0; m < 5; m++) {
                    weight *= m == k || m == 2 ? 1 : (t[2] - t[m]) / (t[k] - t[m]);
                }
                x += weight * p[k].x();
                y += weight * p[k].y();
            }
        }
        return Math.hypot(x - p[2].x(), y - p[2].y());
    }

    private static void checkExtent(List<SurveyPoint> points) {
        double extent = 0;
        for (SurveyPoint p : points) {
            extent = Math.max(extent, points.get(0).distanceTo(p));
        }
        if (!points.isEmpty() && !(extent >= LEAST_EXTENT)) {
            throw new InvalidValueException(
                    "survey",
                    "all points lie within " + Check.text(extent) + " m of the first",
                    "give coordinates in metres, or say in the heading what they are in, as in x (km);"
                            + " degrees of longitude and latitude belong into GeoJSON or GPX, or under those two headings");
        }
    }

    private List<SurveyPoint> reversed(List<SurveyPoint> points) {
        List<SurveyPoint> turned = new ArrayList<>(points.size());
        for (SurveyPoint p : points) {
            turned.add(p.reversed());
        }
        Collections.reverse(turned);
        Collections.reverse(numbers);
        return turned;
    }

    /** Distances from each point to the next; of a closed line also from the last to the first. */
    private double[] steps(List<SurveyPoint> points) {
        int n = points.size();
        double[] steps = new double[choices.closed() ? n : n - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = points.get(i).distanceTo(points.get((i + 1) % n));
        }
        return steps;
    }

    private void checkClosed(List<SurveyPoint> points, double[] steps) {
        double gap = steps[steps.length - 1];
        double longest = Arrays.stream(steps).limit(points.size() - 1).max().orElse(0);
        if (gap > LEAST_GAP && gap > OPEN_GAP * longest) {
            throw new InvalidValueException(
                    "survey",
                    "the outline is open: its end lies " + Check.text(Math.rint(gap))
                            + " m from its start, and no other" + " two points are farther apart than "
                            + Check.text(Math.rint(10 * longest) / 10) + " m",
                    "add the missing points, or import it as an open run with --open");
        }
    }

    /** Gaps that the road turns over: how it does, no point tells. */
    private void warnOfGaps(List<SurveyPoint> points, double[] steps) {
        double[] sorted = steps.clone();
        Arrays.sort(sorted);
        double median = sorted[sorted.length / 2];
        List<Integer> gaps = new ArrayList<>();
        int longest = 0;
        for (int i = 0; i < steps.length; i++) {
            if (steps[i] > LEAST_GAP && steps[i] > GAP * median && turnOver(points, i) > STRAIGHT_GAP) {
                gaps.add(i);
                longest = gaps.size() == 1 || steps[i] > steps[longest] ? i : longest;
            }
        }
        if (!gaps.isEmpty()) {
            warnings.add((gaps.size() == 1 ? "a gap in a bend" : gaps.size() + " gaps in bends") + ", the longest "
                    + Check.text(Math.rint(10 * steps[longest]) / 10) + " m, where others are "
                    + Check.text(Math.rint(10 * median) / 10) + " m apart: behind " + places(points, gaps)
                    + "; add points there, for the bend between is a guess");
        }
    }

    /** By how much the way turns from before a step to behind it, rad. */
    private double turnOver(List<SurveyPoint> points, int i) {
        int n = points.size();
        boolean inside = choices.closed() || (i > 0 && i + 2 < n);
        if (!inside) {
            return 0;
        }
        SurveyPoint a = points.get((i + n - 1) % n);
        SurveyPoint b = points.get(i);
        SurveyPoint c = points.get((i + 1) % n);
        SurveyPoint d = points.get((i + 2) % n);
        return Math.abs(turn(a, b, c)) + Math.abs(turn(b, c, d));
    }

    private static double turn(SurveyPoint a, SurveyPoint b, SurveyPoint c) {
        double in = Math.atan2(b.y() - a.y(), b.x() - a.x());
        double out = Math.atan2(c.y() - b.y(), c.x() - b.x());
        return Math.IEEEremainder(out - in, 2 * Math.PI);
    }

    private void warnOfKinks(List<SurveyPoint> points) {
        int n = points.size();
        List<Integer> kinks = new ArrayList<>();
        double sharpest = 0;
        for (int i = choices.closed() ? 0 : 1; i < (choices.closed() ? n : n - 1); i++) {
            SurveyPoint a = points.get((i + n - 1) % n);
            SurveyPoint b = points.get(i);
            SurveyPoint c = points.get((i + 1) % n);
            double turn = Math.abs(turn(a, b, c));
            boolean judged = Math.min(a.distanceTo(b), b.distanceTo(c)) >= LEAST_STEP_OF_A_KINK;
            if (judged && turn > KINK) {
                kinks.add(i);
                sharpest = Math.max(sharpest, turn);
            }
        }
        if (!kinks.isEmpty()) {
            warnings.add((kinks.size() == 1 ? "a kink" : kinks.size() + " kinks")
                    + " of more than 60° from one point to the next, the sharpest "
                    + Math.round(Math.toDegrees(sharpest)) + "°: " + places(points, kinks)
                    + "; mend them, or say how far the points err, as in --accuracy-m 1");
        }
    }
}
