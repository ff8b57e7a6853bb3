package dev.lapwright.cli.brief;

import dev.lapwright.brief.BriefResult;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.page.Page;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Section of a brief on the circuit: its corners, and what limits the car where. */
public final class BriefCircuit {
    private static final int MOST_NAMED = 3;

    private final BriefResult result;
    private final BriefCharts charts;

    public BriefCircuit(BriefReport brief, BriefCharts charts) {
        this.result = brief.result();
        this.charts = charts;
    }

    public Page.Section circuit() {
        List<Page.Block> blocks = new ArrayList<>();
        blocks.add(charts.circuit("The road seen from above, north up, corners shaded and numbered in driving order."));
        times().ifPresent(text -> blocks.add(Page.Block.paragraph(text)));
        blocks.add(places());
        return new Page.Section(
                "circuit",
                "The circuit, and where the time goes",
                "The lap cut into its corners and the straights between them: the longer the car spends in a place, the"
                        + " more there is to win or lose there.",
                blocks);
    }

    private Optional<String> times() {
        double corners = result.places().stream()
                .filter(BriefResult.PlaceShare::isCorner)
                .mapToDouble(place -> place.drive().time())
                .sum();
        if (!(corners > 0)) {
            return Optional.empty();
        }
        double share = corners / result.lap().time();
        List<String> longest = result.places().stream()
                .sorted(Comparator.comparingDouble(
                                (BriefResult.PlaceShare place) -> place.drive().time())
                        .reversed())
                .limit(MOST_NAMED)
                .map(place -> said(place) + " (" + Numbers.fixed(place.drive().time(), 1) + " s)")
                .toList();
        return Optional.of("Corners take " + Numbers.fixed(corners, 1) + " s of the "
                + Numbers.lapTime(result.lap().time()) + " lap, " + Numbers.fixed(100 * share, 0)
                + " %; straights the rest. The most time is spent " + where(longest) + ".");
    }

    private static String where(List<String> places) {
        return "in these places: " + BriefWords.listed(places);
    }

    private static String said(BriefResult.PlaceShare place) {
        String label = Report.verbatim(place.label());
        return place.isCorner() ? label : "the straight " + label;
    }

    private Page.Block places() {
        Table<BriefResult.PlaceShare> table = Table.<BriefResult.PlaceShare>of("Corners and straights in driving order")
                .words("", "Place", place -> Report.verbatim(place.label()))
                .words("", "Kind", BriefCircuit::kind)
                .with(Table.Trait.LESSER)
                .number(
                        "",
                        "Begins at",
                        "m",
                        Numbers.fixed(0),
                        place -> place.from() % result.track().length())
                .with(Table.Trait.LESSER)
                .number(
                        "",
                        "Time",
                        "s",
                        Numbers.fixed(2),
                        place -> place.drive().time())
                .number("", "Share", "% of lap", Numbers::percent, BriefResult.PlaceShare::share)
                .number(
                        "",
                        "Slowest",
                        "km/h",
                        BriefCircuit::speed,
                        place -> place.drive().minimumSpeed())
                .number(
                        "",
                        "Fastest",
                        "km/h",
                        BriefCircuit::speed,
                        place -> place.drive().topSpeed())
                .with(Table.Trait.LESSER)
                .number(
                        "",
                        "Way out",
                        "km/h",
                        BriefCircuit::speed,
                        place -> place.drive().exitSpeed())
                .with(Table.Trait.LESSER)
                .words("", "Mostly limited by", place -> place.mainLimit().label())
                .marking(BriefResult.PlaceShare::isCorner);
        return Page.Block.table(table, result.places());
    }

    private static String kind(BriefResult.PlaceShare place) {
        return place.corner()
                .map(corner ->
                        (corner.left() ? "left, " : "right, ") + Numbers.fixed(corner.minimumRadius(), 0) + " m radius")
                .orElse("straight");
    }

    public static String speed(double metresPerSecond) {
        return Numbers.fixed(Unit.METRE_PER_SECOND.convert(metresPerSecond, Unit.KILOMETRE_PER_HOUR), 0);
    }

    public Page.Section limits() {
        List<Page.Block> blocks = new ArrayList<>();
        List<Map.Entry<Limit, Double>> shares =
                new ArrayList<>(result.lap().limitShares().entrySet());
        shares.removeIf(share -> !(share.getValue() > 0));
        shares.sort((a, b) -> Double.compare(b.getValue(), a.getValue()));
        double most = shares.isEmpty() ? 1 : shares.get(0).getValue();
        blocks.add(Page.Block.shares(shares.stream()
                .map(share -> new Page.Share(
                        said(share.getKey()),
                        Numbers.percent(share.getValue()) + " %",
                        "0%",
                        Numbers.fixed(100 * share.getValue() / most, 1) + "%"))
                .toList()));
        blocks.add(Page.Block.paragraph(meaning(shares)));
        blocks.add(
                charts.speed(
                        "Speed over distance from the start line, with the gear beneath. Shaded stretches are corners; the"
                                + " numbers at the dips are their lowest speeds in km/h; broken lines part the timing sectors."));
        return new Page.Section(
                "limits",
                "What limits the car where",
                "At every metre one thing keeps the car from going faster; the bars say for how much of the lap each of"
                        + " them does.",
                blocks);
    }

    private static String said(Limit limit) {
        String label = limit.label();
        return Character.toUpperCase(label.charAt(0)) + label.substring(1);
    }

    private String meaning(List<Map.Entry<Limit, Double>> shares) {
        Map<Limit, Double> byLimit = result.lap().limitShares();
        double front = byLimit.getOrDefault(Limit.FRONT_GRIP, 0.0);
        double rear = byLimit.getOrDefault(Limit.REAR_GRIP, 0.0);
        String first = shares.isEmpty()
                ? ""
                : "Most of the time the car is limited by "
                        + shares.get(0).getKey().label() + ". ";
        String axle = front > rear
                ? "Where grip is the limit it is more often the front tyres that run out of it: the car pushes wide"
                        + " (understeer) before its tail slides."
                : "Where grip is the limit it is more often the rear tyres that run out of it: the tail slides, or the"
                        + " driven wheels spin, before the car pushes wide.";
        return first + axle + " The table above says which limit rules where.";
    }
}
