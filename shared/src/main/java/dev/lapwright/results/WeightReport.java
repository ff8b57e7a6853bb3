package dev.lapwright.results;

import dev.lapwright.car.Quantity;
import dev.lapwright.evidence.LapsToSee;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.weight.WeightResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Report of a study of weight: what a kilogram is worth on a lap, where it costs most, and whether its place in the car
 * matters. Differences are minus where faster.
 *
 * @param subject the car as it stands
 * @param scatter standard deviation of the driver's lap times, s
 * @param result what was found
 */
public record WeightReport(Subject subject, double scatter, WeightResult result) {
    /** What rules over every number. */
    public static final List<String> CAUTIONS = List.of(
            "Keep to the least weight of your class, weighed as its rules say. Never take out what protects people:"
                    + " cage, seat, belts, guards, fire system. A part made lighter than its maker made it can break.",
            "Ballast that comes loose can kill: fix it where and as the rules of the event say. Weight that has moved"
                    + " changes how the car brakes and turns: try it slowly first.");

    /** More laps with each of two weights than anybody drives to compare them: half a day. */
    private static final int MOST_LAPS = 30;

    private static final int RACE_LAPS = 20;
    private static final int PLACES_SAID = 3;
    private static final int DECIMALS = 2;
    private static final double MS = 1000;

    private record InTheCar(String place, WeightResult.Worth worth) {}

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading()
                .gap()
                .item(
                        result.lap().track().isClosed() ? "Lap time" : "Run time",
                        Report.strong(Numbers.lapTime(result.lap().time())))
                .item(
                        "Mass",
                        Numbers.fixed(result.mass(), 1) + " kg with driver and fuel, "
                                + Numbers.fixed(frontPercent(), 1) + " % of it on the front axle")
                .item(
                        "A kilogram",
                        Report.strong(perKg(result.atCentre().perKg())) + ": " + perKg(result.inCorners())
                                + " in corners, " + perKg(result.onStraights()) + " on straights")
                .gap()
                .paragraph("By its place in the car, differences of the time (minus is faster):")
                .rows(inTheCar(), places())
                .gap()
                .paragraph(
                        "By the part of the lap, for a kilogram at the centre of gravity; last the percent of time that a"
                                + " percent of mass costs there:")
                .rows(parts(), result.places());
        reading().forEach(paragraph -> report.gap().paragraph(paragraph));
        CAUTIONS.forEach(report::caution);
        fields(report);
        return report.csv("weight.csv", parts(), result.places());
    }

    private void fields(Report report) {
        String hash = InputHash.of(subject.car(), subject.day(), result.lap().track())
                .with("stepKg", stepKg())
                .with("scatterS", scatter)
                .sha256();
        report.fields(ResultHeader.of("weight/1", hash, result.lap()))
                .field("lapTimeS", result.lap().time())
                .field("massKg", result.mass())
                .field("frontWeightPercent", frontPercent())
                .field("stepKg", stepKg())
                .field("differenceSPerKg", result.atCentre().perKg())
                .field("differenceSPerKgInCorners", result.inCorners())
                .field("differenceSPerKgOnStraights", result.onStraights())
                .field("differenceSPerKgMovedToTheRear", result.toTheRear())
                .field("scatterS", scatter)
                .field("lapsToSeeWithEach", isEverSeen() ? lapsToSee() : null)
                .field("inTheCar", inTheCar(), places())
                .field("parts", parts(), result.places())
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("reading", reading())
                .field("cautions", CAUTIONS);
    }

    private double stepKg() {
        return result.atCentre().stepKg();
    }

    private String step() {
        return Numbers.plain(stepKg()) + " kg";
    }

    private double frontPercent() {
        return subject.car().value(Quantity.FRONT_WEIGHT);
    }

    private static String perKg(double seconds) {
        return Numbers.signed(MS * seconds, DECIMALS) + " ms/kg";
    }

    private List<InTheCar> places() {
        return List.of(
                new InTheCar("at the centre of gravity", result.atCentre()),
                new InTheCar("over the front axle", result.overFront()),
                new InTheCar("over the rear axle", result.overRear()));
    }

    private Table<InTheCar> inTheCar() {
        return Table.<InTheCar>of("Worth of mass by its place in the car")
                .words("place", "place", InTheCar::place)
                .value("differenceSPerKg", row -> row.worth().perKg())
                .number(
                        "",
                        "a kilogram more",
                        "ms/kg",
                        Numbers.signed(DECIMALS),
                        row -> MS * row.worth().perKg())
                .number(
                        "differenceSLighter",
                        step() + " out",
                        "s",
                        Numbers.signed(3),
                        row -> row.worth().lighter())
                .number(
                        "differenceSHeavier",
                        step() + " in",
                        "s",
                        Numbers.signed(3),
                        row -> row.worth().heavier());
    }

    private Table<WeightResult.Place> parts() {
        return Table.<WeightResult.Place>of("Worth of a kilogram by the part of the lap")
                .names("name", "part", WeightResult.Place::label)
                .words("kind", "kind", place -> place.corner().isPresent() ? "corner" : "straight")
                .number("fromM", "from", "m", Numbers.fixed(0), WeightResult.Place::from)
                .value("toM", WeightResult.Place::to)
                .number("timeS", "time", "s", Numbers.fixed(3), WeightResult.Place::time)
                .value("differenceSPerKg", WeightResult.Place::perKg)
                .number("", "a kilogram more", "ms/kg", Numbers.signed(DECIMALS), place -> MS * place.perKg())
                .number("percentTimePerPercentMass", "by time there", "%/%", Numbers.signed(2), this::relative);
    }

    /** Percent of the time there that a percent of mass costs. */
    private double relative(WeightResult.Place place) {
        return place.perKg() * result.mass() / place.time();
    }

    private int lapsToSee() {
        return LapsToSee.perSetup(result.atCentre().lighter(), scatter);
    }

    private boolean isEverSeen() {
        return lapsToSee() < Integer.MAX_VALUE;
    }

    /** What was found, in plain words. */
    private List<String> reading() {
        List<String> said = new ArrayList<>();
        said.add(worth());
        if (result.places().size() > 1
                && !LapTimeDifference.isNone(stepKg() * result.atCentre().perKg())) {
            said.add(where());
        }
        said.add(inWhichPlace());
        said.add(
                "Held in all this: the height of the centre of gravity, ride heights, moment of inertia. A kilogram high up"
                        + " is worth more than this, one on the floor less.");
        return said;
    }

    /** Whether it is worth taking the step out. */
    private String worth() {
        double lighter = result.atCentre().lighter();
        String lap = lap();
        if (LapTimeDifference.isNone(lighter)) {
            return "Taking " + step() + " out makes no difference to the time of this " + lap
                    + ": no reason to take anything out here.";
        }
        String makes = "Taking " + step() + " out makes the " + lap + " " + DifferenceWords.said(lighter) + ", "
                + Numbers.fixed(100 * Math.abs(lighter) / result.lap().time(), 2) + " % of it, or "
                + Numbers.fixed(RACE_LAPS * Math.abs(lighter), 1) + " s in " + RACE_LAPS + " " + lap + "s.";
        if (lighter > 0) {
            return makes
                    + " By this model weight helps here, which is no advice to carry any: it costs tyres, brakes and"
                    + " fuel, which this does not count. " + LessIsSlower.ofMass(result.byCause(), DECIMALS);
        }
        String scattered = " with each weight, if " + lap + "s scatter by " + Numbers.plain(scatter) + " s";
        return makes
                + (lapsToSee() <= MOST_LAPS
                        ? " The timing screen shows that in " + lapsToSee() + " " + lap + "s" + scattered + "."
                        : " The timing screen would show that in "
                                + (isEverSeen() ? lapsToSee() : "more than a million") + " " + lap + "s" + scattered
                                + ": worth it where the rules leave room and it costs little, but trust the scales for it,"
                                + " not the watch.");
    }

    /** Where mass costs most. */
    private String where() {
        List<WeightResult.Place> most = result.places().stream()
                .filter(place -> Numbers.signed(MS * place.perKg(), DECIMALS).startsWith("+"))
                .sorted(Comparator.comparingDouble(WeightResult.Place::perKg).reversed())
                .limit(PLACES_SAID)
                .toList();
        double corners = result.places().stream()
                .filter(place -> place.corner().isPresent())
                .mapToDouble(WeightResult.Place::time)
                .sum();
        String share = "A kilogram costs " + perKg(result.inCorners()) + " in corners, "
                + Numbers.fixed(100 * corners / result.lap().time(), 0) + " % of the time, and "
                + perKg(result.onStraights()) + " on straights.";
        if (most.isEmpty()) {
            return share;
        }
        WeightResult.Place steepest = result.places().stream()
                .max(Comparator.comparingDouble(this::relative))
                .orElseThrow();
        return share + " It costs most "
                + most.stream()
                        .map(place -> there(place) + " (" + perKg(place.perKg()) + ")")
                        .collect(Collectors.joining(", "))
                + "; for the time spent there, " + there(steepest) + ": a percent of mass costs "
                + Numbers.fixed(relative(steepest), 2) + " % of it.";
    }

    private static String there(WeightResult.Place place) {
        return (place.corner().isPresent() ? "in " : "from ") + Report.verbatim(place.label());
    }

    /** Whether it matters where in the car it is. */
    private String inWhichPlace() {
        double moved = stepKg() * result.toTheRear();
        if (LapTimeDifference.isNone(moved)) {
            return "Front or rear makes no difference to the time: take weight out where it comes out safely, and mind the"
                    + " balance.";
        }
        String makes = step() + " moved from the front axle to the rear make the " + lap() + " "
                + DifferenceWords.said(moved) + ".";
        if (!LapTimeDifference.counts(moved)) {
            return "Its place hardly matters to the time: " + makes
                    + " Take weight out where it comes out safely, and mind" + " the balance.";
        }
        String light = moved < 0 ? "front" : "rear";
        String heavy = moved < 0 ? "rear" : "front";
        return "Its place matters: " + makes + " By the time alone, take weight out at the " + light
                + " and carry ballast at the "
                + heavy
                + "; but weight moved shifts the balance, which a driver feels sooner than the watch: look at 'lapwright"
                + " balance' with chassis.frontWeightPercent changed.";
    }

    private String lap() {
        return result.lap().track().isClosed() ? "lap" : "run";
    }
}
