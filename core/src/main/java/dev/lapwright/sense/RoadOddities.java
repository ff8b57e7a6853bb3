package dev.lapwright.sense;

import dev.lapwright.car.Unit;
import dev.lapwright.car.UnitGuess;
import dev.lapwright.track.Stations;
import dev.lapwright.track.survey.UnitPlausibility;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;

/** Oddities of a road as the solver sees it, each at its worst place. Bounds are common practice, no source. */
public final class RoadOddities {
    private static final double TIGHTEST = 5;
    private static final double MOST_BANK = Math.toRadians(38);
    private static final double NARROWEST = 3.5;
    private static final double WIDEST = 30;
    private static final double SLICKEST = 0.4;
    private static final double GRIPPIEST = 1.3;
    private static final double SHORTEST = 300;
    private static final double LONGEST = 30_000;
    /** Vertical radius below which a car at 30 m/s would leave the road or be pressed to twice its weight, m. */
    private static final double LEAST_CREST = 90;

    private static final double CORNER_EVERY = 40;

    private RoadOddities() {}

    /** All that is odd about a road. */
    public static List<Oddity> of(Stations stations) {
        List<Oddity> odd = new ArrayList<>();
        double[] s = stations.s();
        double length = s[s.length - 1] - s[0];
        if (length < SHORTEST || length > LONGEST) {
            odd.add(new Oddity(
                    "length",
                    Oddity.text(length) + " m; circuits are 500 m to 25 km long",
                    UnitGuess.remedy(
                            "check that lengths are in metres, and that the points are those of one lap",
                            length,
                            Unit.METRE,
                            SHORTEST,
                            LONGEST)));
        }
        int corners = stations.corners().size();
        if (corners * CORNER_EVERY > length) {
            odd.add(new Oddity(
                    "corners",
                    corners + " in " + Oddity.text(length) + " m, one every " + Oddity.text(length / corners)
                            + " m: some of them are noise of the points",
                    "import the survey anew with the driver's count, circuit import --corners N"));
        }
        worst(
                odd,
                s,
                stations.curvature(),
                k -> Math.abs(k) - 1 / TIGHTEST,
                k -> "a radius of " + Oddity.text(1 / Math.abs(k)) + " m; hardly any car turns within "
                        + Oddity.text(TIGHTEST),
                "look for a kink in the points there, or set the corner's radius with circuit edit");
        worst(
                odd,
                s,
                stations.slope(),
                a -> Math.abs(a) - UnitPlausibility.STEEPEST,
                a -> "a slope of " + Oddity.text(100 * Math.tan(a)) + " %; roads climb by up to 20 %",
                "check the elevations there and their unit");
        worst(
                odd,
                s,
                stations.bank(),
                a -> Math.abs(a) - MOST_BANK,
                a -> "a bank of " + Oddity.text(Math.toDegrees(a)) + " deg; the steepest banked circuits have some 35",
                "check the banks there; they are angles in degrees");
        worst(
                odd,
                s,
                stations.verticalCurvature(),
                k -> Math.abs(k) - 1 / LEAST_CREST,
                k -> (k > 0 ? "a dip" : "a crest") + " with a radius of " + Oddity.text(1 / Math.abs(k))
                        + " m; less than " + Oddity.text(LEAST_CREST) + " m is a step",
                "smooth the elevations, as with circuit import --elevation-smoothing 200");
        worst(
                odd,
                s,
                stations.grip(),
                g -> Math.max(SLICKEST - g, g - GRIPPIEST),
                g -> "grip " + Oddity.text(g) + " of the reference; wet roads have 0.5 to 0.7",
                "check it: 1 is a dry road");
        double[] left = stations.widthLeft();
        double[] right = stations.widthRight();
        double[] width = new double[s.length];
        for (int i = 0; i < s.length; i++) {
            width[i] = left[i] + right[i];
        }
        worst(
                odd,
                s,
                width,
                w -> w > 0 ? Math.max(NARROWEST - w, w - WIDEST) : -1,
                w -> "a width of " + Oddity.text(w) + " m; circuits are 6 to 20 m wide"
                        + UnitGuess.of(w, Unit.METRE, NARROWEST, WIDEST)
                                .map(guess -> "; " + guess)
                                .orElse(""),
                "check widths there: they count from the centre line to each side, in metres");
        return List.copyOf(odd);
    }

    private static void worst(
            List<Oddity> odd,
            double[] s,
            double[] values,
            DoubleUnaryOperator excess,
            DoubleFunction<String> problem,
            String remedy) {
        int at = 0;
        int many = 0;
        for (int i = 0; i < values.length; i++) {
            many += excess.applyAsDouble(values[i]) > 0 ? 1 : 0;
            at = excess.applyAsDouble(values[i]) > excess.applyAsDouble(values[at]) ? i : at;
        }
        if (many > 0) {
            String also = many > 1 ? " (the worst of " + many + " places)" : "";
            odd.add(new Oddity(Math.round(s[at]) + " m", problem.apply(values[at]) + also, remedy));
        }
    }
}
