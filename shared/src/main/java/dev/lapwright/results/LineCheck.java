package dev.lapwright.results;

import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.study.lines.OwnLinesResult;
import java.util.List;
import java.util.Map;

/**
 * Check of a recommendation with the line found anew for the car as it stands and for the car as recommended.
 *
 * @param what is recommended, for people
 * @param held its difference on the one line that all laps were driven on, s, minus where faster
 * @param before lap time of the car as it stands on its own line, s; of several circuits and days the mean by weight
 * @param after the same of the car as recommended
 */
public record LineCheck(String what, double held, double before, double after) {
    /** Hundredths: two searches for a line end no closer to each other. */
    private static final int DECIMALS = 2;

    /** The check of one of the cars that the first was compared with. */
    public static LineCheck of(String what, double held, OwnLinesResult found, int other) {
        return new LineCheck(
                what, held, found.first().lapTime(), found.others().get(other).lapTime());
    }

    /**
     * The check on several circuits and days.
     *
     * @param found with one other car, for each circuit and day
     * @param weights of the circuits, as many
     */
    public static LineCheck of(String what, double held, List<OwnLinesResult> found, List<Double> weights) {
        double all = 0;
        double before = 0;
        double after = 0;
        for (int i = 0; i < found.size(); i++) {
            double weight = weights.get(i);
            all += weight;
            before += weight * found.get(i).first().lapTime();
            after += weight * found.get(i).others().get(0).lapTime();
        }
        return new LineCheck(what, held, before / all, after / all);
    }

    /** Its difference with a line of its own for each, s, minus where faster. */
    public double difference() {
        return after - before;
    }

    /** Whether, on lines of their own, the other of the two is the better by what counts, or neither is though one was. */
    public boolean isOtherChoice() {
        boolean counted = LapTimeDifference.counts(held);
        boolean counts = LapTimeDifference.counts(difference());
        return counted != counts || (counts && Math.signum(held) != Math.signum(difference()));
    }

    /** Both lap times, as an item of a heading. */
    public String text() {
        return "before " + Numbers.lapTime(before) + ", best " + Numbers.lapTime(after) + ", difference "
                + Numbers.signed(difference(), DECIMALS) + " s, the fastest line found anew for each";
    }

    /**
     * What it comes to, in a sentence or two.
     *
     * @param subject what was checked, as the sentence calls it
     */
    public String reading(String subject) {
        double own = difference();
        String found = "With the fastest line found anew for each car " + subject + " is "
                + DifferenceWords.said(own, DECIMALS);
        if (!isOtherChoice()) {
            return LapTimeDifference.counts(own) ? found + ": the same choice." : found + ".";
        }
        String better = !LapTimeDifference.counts(own)
                ? "there is little to choose between the two"
                : own > 0 ? "the car as it stands is the better one there" : "it is the better one there";
        return found + ", where on one line for both it was " + Numbers.signed(held, DECIMALS)
                + " s. The choice differs: " + better + ".";
    }

    /** The same for machines. */
    public Map<String, Object> tree() {
        return new Report()
                .field("what", what)
                .field("differenceOnOneLineS", held)
                .field("lapTimeBeforeS", before)
                .field("lapTimeAfterS", after)
                .field("differenceS", difference())
                .field("sameChoice", !isOtherChoice())
                .fields();
    }
}
