package dev.lapwright.track.survey;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/** The check of a survey, and its points in the order in which they are to be driven, without duplicates. */
final class SurveyPreparation {
    /** The spline's equations need five; a shape needs a few more. */
    static final int FEWEST = 8;

    private static final double SAME_SPOT = 1e-3;
    private static final double LEAST_EXTENT = 10;
    private static final double GAP = 5;
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
        warnOfKinks(points);
        if (!exact()) {
            points = withoutOutliers(points);
        }
        double[] steps = steps(points);
        if (choices.closed()) {
            checkClosed(points, steps);
        }
        warnOfGaps(steps);
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
        for (int i = 0; i < n; i++) {
            boolean worst = miss[i] >= miss[(i + 1) % n]
                    && miss[i] >= miss[(i + 2) % n]
                    && miss[i] >= miss[(i + n - 1) % n]
                    && miss[i] >= miss[(i + n - 2) % n];
            if (worst && miss[i] > limit && miss[i] > shorterStep(points, i)) {
                dropped.add(numbers.get(i));
            } else {
                kept.add(points.get(i));
                keptNumbers.add(numbers.get(i));
            }
        }
        if (dropped.isEmpty() || dropped.size() > Math.max(1, MOST_OUTLIERS * n) || kept.size() < FEWEST) {
            return points;
        }
        numbers.clear();
        numbers.addAll(keptNumbers);
        warnings.add((dropped.size() == 1
                        ? "a point that lies far beside its neighbours "
                        : dropped.size() + " points that lie far beside their neighbours ")
                + (dropped.size() == 1 ? "was" : "were") + " left out: point "
                + dropped.get(0) + (dropped.size() == 1 ? "" : " and others")
                + "; a smoothing of 0 goes through all points");
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
            turned.add(new SurveyPoint(p.x(), p.y(), p.z(), p.widthRight(), p.widthLeft()));
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
                    "add the missing points, or import it as an open run");
        }
    }

    private void warnOfGaps(double[] steps) {
        double[] sorted = steps.clone();
        Arrays.sort(sorted);
        double median = sorted[sorted.length / 2];
        int gaps = 0;
        int longest = 0;
        for (int i = 0; i < steps.length; i++) {
            if (steps[i] > LEAST_GAP && steps[i] > GAP * median) {
                gaps++;
                longest = steps[i] > steps[longest] ? i : longest;
            }
        }
        if (gaps > 0) {
            warnings.add((gaps == 1 ? "a gap" : gaps + " gaps") + " between points, the longest "
                    + Check.text(Math.rint(10 * steps[longest]) / 10) + " m behind point " + numbers.get(longest)
                    + ", where others are " + Check.text(Math.rint(10 * median) / 10) + " m apart");
        }
    }

    private void warnOfKinks(List<SurveyPoint> points) {
        int n = points.size();
        int kinks = 0;
        int sharpest = 0;
        double sharpestTurn = 0;
        for (int i = choices.closed() ? 0 : 1; i < (choices.closed() ? n : n - 1); i++) {
            SurveyPoint a = points.get((i + n - 1) % n);
            SurveyPoint b = points.get(i);
            SurveyPoint c = points.get((i + 1) % n);
            double in = Math.atan2(b.y() - a.y(), b.x() - a.x());
            double out = Math.atan2(c.y() - b.y(), c.x() - b.x());
            double turn = Math.abs(Math.IEEEremainder(out - in, 2 * Math.PI));
            boolean judged = Math.min(a.distanceTo(b), b.distanceTo(c)) >= LEAST_STEP_OF_A_KINK;
            if (judged && turn > KINK) {
                kinks++;
                if (turn > sharpestTurn) {
                    sharpestTurn = turn;
                    sharpest = i;
                }
            }
        }
        if (kinks > 0) {
            warnings.add((kinks == 1 ? "a kink" : kinks + " kinks")
                    + " of more than 60° from one point to the next, the" + " sharpest "
                    + Math.round(Math.toDegrees(sharpestTurn)) + "° at point " + numbers.get(sharpest));
        }
    }
}
