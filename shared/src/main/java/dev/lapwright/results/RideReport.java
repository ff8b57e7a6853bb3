package dev.lapwright.results;

import dev.lapwright.car.Adjustment;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RidePass;
import dev.lapwright.study.ride.DamperClicks;
import dev.lapwright.study.ride.DamperMapResult;
import dev.lapwright.study.ride.RideResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * Report of a study of the ride: frequencies, damping, a kerb, a rough road, and where to turn the fast dampers.
 *
 * @param subject the car, set up
 * @param result what was found
 * @param measure by which pairs of rates are judged
 * @param place where the speed comes from, in words; empty if it was given
 */
public record RideReport(Subject subject, RideResult result, RideMeasure measure, String place) {
    /** File of the map of damper rates. */
    public static final String MAP = "map.csv";

    /** File of the pass over the kerb. */
    public static final String TRACE = "pass.csv";

    private static final double MILLI = 1000;
    private static final double PERCENT = 100;

    /** A damper is turned by about this much at a time, N s/m: common practice, no source. */
    private static final double STEP = 100;

    private static final Table<RidePass> PASS = Table.<RidePass>of("Pass over a road")
            .value("timeS", RidePass::time)
            .number(
                    "loadVariationPercent",
                    "load rms",
                    "%",
                    Numbers.fixed(1),
                    pass -> PERCENT * pass.contact().loadVariation())
            .value("leastLoadN", pass -> pass.contact().leastLoad())
            .value("greatestLoadN", pass -> pass.contact().greatestLoad())
            .number(
                    "timeOffGroundMs",
                    "off ground",
                    "ms",
                    Numbers.fixed(0),
                    pass -> MILLI * pass.contact().timeOffGround())
            .number("peakBodyAccelerationMps2", "body peak", "m/s2", Numbers.fixed(1), RidePass::peakBodyAcceleration)
            .value("bodyAccelerationRmsMps2", RidePass::bodyAcceleration)
            .number(
                    "",
                    "peak load",
                    "N",
                    Numbers.fixed(0),
                    pass -> pass.contact().greatestLoad())
            .with(Table.Trait.LESSER)
            .number(
                    "bumpTravelMm",
                    "travel bump",
                    "mm",
                    Numbers.fixed(0),
                    pass -> MILLI * pass.stroke().bumpTravel())
            .number(
                    "reboundTravelMm",
                    "travel rebound",
                    "mm",
                    Numbers.fixed(0),
                    pass -> MILLI * pass.stroke().reboundTravel())
            .number(
                    "bumpSpeedMmPerS",
                    "damper bump",
                    "mm/s",
                    Numbers.fixed(0),
                    pass -> MILLI * pass.stroke().bumpSpeed())
            .number(
                    "reboundSpeedMmPerS",
                    "damper rebound",
                    "mm/s",
                    Numbers.fixed(0),
                    pass -> MILLI * pass.stroke().reboundSpeed())
            .value("energyFromRoadJ", pass -> pass.energy().fromRoad())
            .value("energyBumpJ", pass -> pass.energy().bump())
            .value("energyReboundJ", pass -> pass.energy().rebound())
            .number(
                    "",
                    "heat damper",
                    "J",
                    Numbers.fixed(0),
                    pass -> pass.energy().damper())
            .number(
                    "energyTyreJ",
                    "heat tyre",
                    "J",
                    Numbers.fixed(0),
                    pass -> pass.energy().tyre())
            .value("energyStoredJ", pass -> pass.energy().stored());

    private static final Table<RideResult.Axle> AXLES = Table.<RideResult.Axle>of("Wheels")
            .words("axle", "axle", RideReport::end)
            .number("sprungMassKg", "sprung", "kg", Numbers.fixed(1), of(QuarterCar::sprungMass))
            .number("unsprungMassKg", "unsprung", "kg", Numbers.fixed(1), of(QuarterCar::unsprungMass))
            .number("", "load", "N", Numbers.fixed(0), of(QuarterCar::staticLoad))
            .number("wheelRateNPerMm", "wheel rate", "N/mm", Numbers.fixed(1), of(wheel -> wheel.wheelRate() / MILLI))
            .number("tyreRateNPerMm", "tyre rate", "N/mm", Numbers.fixed(1), of(wheel -> wheel.tyreRate() / MILLI))
            .value("rideRateNPerMm", of(wheel -> wheel.rideRate() / MILLI))
            .value("downforceN", of(QuarterCar::downforce))
            .value("staticLoadN", of(QuarterCar::staticLoad))
            .number("rideFrequencyHz", "ride", "Hz", Numbers.fixed(2), of(QuarterCar::rideFrequency))
            .number("hopFrequencyHz", "hop", "Hz", Numbers.fixed(1), of(QuarterCar::hopFrequency))
            .value("bodyModeHz", of(wheel -> wheel.modes().bodyFrequency()))
            .value("wheelModeHz", of(wheel -> wheel.modes().wheelFrequency()))
            .value("slowBump", rate(Damper::slowBump))
            .value("fastBump", rate(Damper::fastBump))
            .value("slowRebound", rate(Damper::slowRebound))
            .value("fastRebound", rate(Damper::fastRebound))
            .value("bumpKneeMmPerS", of(wheel -> MILLI * wheel.damper().bumpKnee()))
            .value("reboundKneeMmPerS", of(wheel -> MILLI * wheel.damper().reboundKnee()))
            .value("overKerb", axle -> PASS.map(axle.kerb()))
            .value("overRoad", axle -> PASS.map(axle.surface()))
            .value("bestOverKerb", RideReport::bestOfAll);

    /** Rates of a damper, slow or fast. */
    private record Rates(String name, QuarterCar wheel, double bump, double rebound) {}

    private static final Table<Rates> DAMPING = Table.<Rates>of("Damping")
            .words("", "damper", Rates::name)
            .number("", "bump", "N s/m", Numbers.fixed(0), Rates::bump)
            .number("", "rebound", "N s/m", Numbers.fixed(0), Rates::rebound)
            .number("", "rebound over bump", "", Numbers.fixed(2), rates -> rates.rebound() / rates.bump())
            .number(
                    "",
                    "body bump",
                    "",
                    Numbers.fixed(2),
                    rates -> rates.wheel().bodyDampingRatio(rates.bump()))
            .number(
                    "",
                    "body rebound",
                    "",
                    Numbers.fixed(2),
                    rates -> rates.wheel().bodyDampingRatio(rates.rebound()))
            .number(
                    "",
                    "wheel bump",
                    "",
                    Numbers.fixed(2),
                    rates -> rates.wheel().hopDampingRatio(rates.bump()))
            .number(
                    "",
                    "wheel rebound",
                    "",
                    Numbers.fixed(2),
                    rates -> rates.wheel().hopDampingRatio(rates.rebound()));

    /** A pass with one pair of rates. */
    private record Pair(String axle, double bump, double rebound, RidePass pass) {}

    private static final Table<Pair> PAIRS = Table.<Pair>of("Fast bump and rebound over the kerb")
            .value("axle", Pair::axle)
            .value("fastBumpNsPerM", Pair::bump)
            .value("fastReboundNsPerM", Pair::rebound)
            .all(PASS, Pair::pass);

    /** One moment of a pass, in m, N and m/s². */
    private record Moment(
            String axle, double time, double road, double wheel, double body, double load, double acceleration) {}

    private static final Table<Moment> MOMENTS = Table.<Moment>of("Pass over the kerb")
            .value("axle", Moment::axle)
            .value("timeS", Moment::time)
            .value("kerbMm", moment -> MILLI * moment.road())
            .value("wheelMm", moment -> MILLI * moment.wheel())
            .value("bodyMm", moment -> MILLI * moment.body())
            .value("travelMm", moment -> MILLI * (moment.wheel() - moment.body()))
            .value("contactLoadN", Moment::load)
            .value("bodyAccelerationMps2", Moment::acceleration);

    private static String end(RideResult.Axle axle) {
        return axle.end().label();
    }

    private static Function<RideResult.Axle, Double> of(Function<QuarterCar, Double> value) {
        return axle -> value.apply(axle.wheel());
    }

    /** A rate of the damper, and what it damps. */
    private static Function<RideResult.Axle, Map<String, Object>> rate(Function<Damper, Double> which) {
        return axle -> {
            QuarterCar wheel = axle.wheel();
            double rate = which.apply(wheel.damper());
            Map<String, Object> tree = new LinkedHashMap<>();
            tree.put("rateNsPerM", rate);
            tree.put("bodyDampingRatio", wheel.bodyDampingRatio(rate));
            tree.put("hopDampingRatio", wheel.hopDampingRatio(rate));
            return tree;
        };
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = new Report()
                .title(Report.verbatim(result.car().name()) + " over kerb and road", "")
                .item("Setup", subject.setupTold())
                .item("Conditions", Subject.told(result.conditions()))
                .item(
                        "Speed",
                        Report.strong(Numbers.kmh(result.speed()) + " km/h")
                                + (place.isEmpty() ? "" : ", " + Report.verbatim(place)))
                .gap()
                .paragraph(
                        "One wheel of each axle; the load on it with the downforce of that speed, in a straight line at"
                                + " steady speed. Ride frequency is the body's, hop the wheel's.")
                .rows(AXLES, result.axles())
                .gap()
                .paragraph("Rates at the damper, and damping over critical damping: of the body, of the wheel.")
                .rows(DAMPING, rates())
                .gap()
                .paragraph("Over the kerb: " + kerb() + ".")
                .rows(passes(RideResult.Axle::kerb), result.axles())
                .gap()
                .paragraph("Over a road of class " + result.choices().road() + " (ISO 8608), for "
                        + Numbers.fixed(result.axles().get(0).surface().time(), 1) + " s.")
                .rows(passes(RideResult.Axle::surface), result.axles())
                .gap()
                .paragraph("Fast bump and rebound, "
                        + result.axles().get(0).map().passes().size() + " pairs over that kerb: least "
                        + measure.label() + ", and the region within 2 % of it.")
                .rows(
                        Table.<RideResult.Axle>of("Best fast bump and rebound")
                                .words("", "axle", RideReport::end)
                                .all(best(measure), axle -> axle),
                        result.axles());
        reading().forEach(said -> report.gap().paragraph(said));
        cautions().forEach(report::caution);
        return report.field(DocumentKind.MARK, "ride/1")
                .field("version", ResultHeader.version())
                .field("inputsSha256", hash(result))
                .field("car", result.car().name())
                .field("settings", result.car().settings())
                .field("conditions", ResultHeader.day(result.conditions()))
                .field("speedKmh", LapTrace.kmh(result.speed()))
                .field("over", over(result))
                .field("axles", AXLES, result.axles())
                .field("setup", subject.setup().name())
                .field("speedFrom", place.isEmpty() ? null : place)
                .field("reading", reading())
                .field("cautions", cautions())
                .csv(MAP, PAIRS, () -> pairs().iterator())
                .csv(TRACE, MOMENTS, () -> moments().iterator());
    }

    /** Hash of the car as set up, conditions, speed, and what it was driven over. */
    static String hash(RideResult result) {
        return InputHash.of(result.car(), result.conditions())
                .with("speed", result.speed())
                .with("over", over(result))
                .sha256();
    }

    /** The kerb in words. */
    public String kerb() {
        Kerb kerb = result.choices().kerb();
        String teeth = kerb.teeth() > 1 ? kerb.teeth() + " times " : "";
        return teeth + kerb.shape().label() + " of " + Numbers.plain(MILLI * kerb.height()) + " mm on "
                + Numbers.plain(kerb.length()) + " m";
    }

    /** What was driven over. */
    private static Map<String, Object> over(RideResult result) {
        Kerb kerb = result.choices().kerb();
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("kerb", kerb.shape().label());
        tree.put("kerbHeightMm", MILLI * kerb.height());
        tree.put("kerbLengthM", kerb.length());
        tree.put("kerbTeeth", kerb.teeth());
        tree.put("road", result.choices().road().name());
        tree.put("seed", result.choices().seed());
        tree.put("contactPatchMm", MILLI * result.choices().contactLength());
        return tree;
    }

    private static Table<RideResult.Axle> passes(Function<RideResult.Axle, RidePass> which) {
        return Table.<RideResult.Axle>of("Pass of each axle")
                .words("", "axle", RideReport::end)
                .all(PASS, which);
    }

    private static Map<String, Object> bestOfAll(RideResult.Axle axle) {
        Map<String, Object> best = new LinkedHashMap<>();
        for (RideMeasure measure : RideMeasure.values()) {
            best.put(measure.word(), best(measure).map(axle));
        }
        return best;
    }

    /** Best rates by a measure, beside the axle's own. */
    private static Table<RideResult.Axle> best(RideMeasure measure) {
        Function<RideResult.Axle, DamperMapResult.Region> region =
                axle -> axle.map().best(measure);
        Table<DamperMapResult.Pair> pair = Table.<DamperMapResult.Pair>of("Best pair within a range")
                .value("best", within -> measure.of(within.pass()))
                .value("fastBumpNsPerM", DamperMapResult.Pair::bump)
                .value("fastReboundNsPerM", DamperMapResult.Pair::rebound);
        return Table.<RideResult.Axle>of("Best rates")
                .value("unit", axle -> measure.unit())
                .number(
                        "asItIs",
                        "as it is",
                        measure.unit(),
                        Numbers.fixed(1),
                        axle -> measure.of(axle.map().own()))
                .number(
                        "best",
                        "best",
                        measure.unit(),
                        Numbers.fixed(1),
                        axle -> measure.of(region.apply(axle).pass()))
                .number(
                        "",
                        "bump",
                        "N s/m",
                        Numbers.fixed(0),
                        of(wheel -> wheel.damper().fastBump()))
                .number(
                        "fastBumpNsPerM",
                        "best bump",
                        "N s/m",
                        Numbers.fixed(0),
                        axle -> region.apply(axle).bump())
                .text(
                        "region",
                        "N s/m",
                        axle -> range(
                                region.apply(axle).leastBump(),
                                region.apply(axle).greatestBump()))
                .number(
                        "",
                        "rebound",
                        "N s/m",
                        Numbers.fixed(0),
                        of(wheel -> wheel.damper().fastRebound()))
                .number(
                        "fastReboundNsPerM",
                        "best rebound",
                        "N s/m",
                        Numbers.fixed(0),
                        axle -> region.apply(axle).rebound())
                .text(
                        "region",
                        "N s/m",
                        axle -> range(
                                region.apply(axle).leastRebound(),
                                region.apply(axle).greatestRebound()))
                .value(
                        "regionFastBumpNsPerM",
                        axle -> List.of(
                                region.apply(axle).leastBump(),
                                region.apply(axle).greatestBump()))
                .value(
                        "regionFastReboundNsPerM",
                        axle -> List.of(
                                region.apply(axle).leastRebound(),
                                region.apply(axle).greatestRebound()))
                .value("regionPairs", axle -> region.apply(axle).pairs())
                .value("atEdgeOfMap", axle -> region.apply(axle).atEdge())
                .value(
                        "withReboundOneToTwoTimesBump",
                        axle -> axle.map().best(measure, 1, 2).map(pair::map).orElse(null))
                .value("perFastBumpNsPerM", axle -> axle.map().bumpSlope(measure))
                .value("perFastReboundNsPerM", axle -> axle.map().reboundSlope(measure));
    }

    private static String range(double from, double to) {
        return Numbers.fixed(from, 0) + (to > from ? "-" + Numbers.fixed(to, 0) : "");
    }

    private List<Rates> rates() {
        List<Rates> rates = new ArrayList<>();
        for (RideResult.Axle axle : result.axles()) {
            QuarterCar wheel = axle.wheel();
            Damper damper = wheel.damper();
            rates.add(new Rates(end(axle) + " slow", wheel, damper.slowBump(), damper.slowRebound()));
            rates.add(new Rates(end(axle) + " fast", wheel, damper.fastBump(), damper.fastRebound()));
        }
        return rates;
    }

    /** The maps of both axles, rebound varying fastest. */
    private List<Pair> pairs() {
        List<Pair> pairs = new ArrayList<>();
        for (RideResult.Axle axle : result.axles()) {
            double[] bump = axle.map().bump();
            double[] rebound = axle.map().rebound();
            for (int i = 0; i < bump.length; i++) {
                for (int j = 0; j < rebound.length; j++) {
                    pairs.add(
                            new Pair(end(axle), bump[i], rebound[j], axle.map().at(i, j)));
                }
            }
        }
        return pairs;
    }

    /** The passes of both axles over the kerb. */
    private List<Moment> moments() {
        List<Moment> moments = new ArrayList<>();
        for (RideResult.Axle axle : result.axles()) {
            RidePass.Trace trace = axle.trace();
            double[] time = trace.time();
            double[] road = trace.road();
            double[] wheel = trace.wheel();
            double[] body = trace.body();
            double[] load = trace.load();
            double[] acceleration = trace.bodyAcceleration();
            for (int i = 0; i < time.length; i++) {
                moments.add(new Moment(end(axle), time[i], road[i], wheel[i], body[i], load[i], acceleration[i]));
            }
        }
        return moments;
    }

    /** What the figures say, in sentences. */
    private List<String> reading() {
        List<String> said = new ArrayList<>();
        for (RideResult.Axle axle : result.axles()) {
            said.add(reading(axle) + " " + clicks(axle));
        }
        said.add("Rebound over bump as it is: " + ratios()
                + ". Common practice, no source: rebound higher than bump, up to twice; more holds the wheel off the road"
                + " behind a kerb and pulls the car down over several. This map judges one pass over one kerb, not how the"
                + " car answers to the driver.");
        return said;
    }

    private String reading(RideResult.Axle axle) {
        DamperMapResult map = axle.map();
        DamperMapResult.Region region = map.best(measure);
        String name = axle.end() == AxleEnd.FRONT ? "Front" : "Rear";
        if (Numbers.fixed(measure.of(map.own()) - measure.of(region.pass()), 1).equals("0.0")) {
            return name + ": no pair does better than the rates it has.";
        }
        String text = name + ": from here " + slope("fast bump", map.bumpSlope(measure)) + ", "
                + slope("fast rebound", map.reboundSlope(measure)) + ". At the best pair rebound is "
                + ratio(region.rebound(), region.bump()) + " times bump, and the wheel travels "
                + Numbers.fixed(MILLI * region.pass().stroke().bumpTravel(), 0) + " mm in bump (as it is "
                + Numbers.fixed(MILLI * map.own().stroke().bumpTravel(), 0) + " mm).";
        if (region.atEdge()) {
            text += " It lies on the edge of the map: better ones may lie beyond.";
        }
        return text
                + map.best(measure, 1, 2)
                        .map(pair -> " With rebound once to twice bump the best is "
                                + Numbers.fixed(measure.of(pair.pass()), 1) + " " + measure.unit() + ", at bump "
                                + Numbers.fixed(pair.bump(), 0) + " and rebound " + Numbers.fixed(pair.rebound(), 0)
                                + ".")
                        .orElse("");
    }

    /** What can be turned on this car, inside its adjusters' range. */
    private String clicks(RideResult.Axle axle) {
        Optional<DamperClicks.Option> best = axle.clicks().best(measure);
        if (best.isEmpty()) {
            return "The car's document has no adjuster of these dampers.";
        }
        List<String> turns = new ArrayList<>();
        String end = "";
        for (Adjustment adjustment : result.car().adjustments()) {
            if (best.get().turned().contains(adjustment.name())) {
                double to = best.get().settings().get(adjustment.name());
                double from = DamperClicks.now(result.car(), adjustment);
                turns.add(adjustment.name() + " from " + adjustment.withUnit(from) + " to " + adjustment.withUnit(to));
                if (to == adjustment.min() || to == adjustment.max()) {
                    end = " That is the end of its range: more would need other dampers.";
                }
            }
        }
        String was = Numbers.fixed(measure.of(axle.map().own()), 1);
        String is = Numbers.fixed(measure.of(best.get().pass()), 1);
        if (turns.isEmpty() || was.equals(is)) {
            return "On its own adjusters it stands best as it is.";
        }
        return "On its own adjusters: " + String.join(", ", turns) + " would make " + was + " to " + is + " "
                + measure.unit() + "." + end;
    }

    private String slope(String what, double slope) {
        String change = Numbers.fixed(Math.abs(STEP * slope), 2);
        if (change.equals("0.00")) {
            return what + " makes no difference";
        }
        return "100 N s/m " + (slope > 0 ? "less " : "more ") + what + " takes away " + change + " " + measure.unit();
    }

    private String ratios() {
        List<String> said = new ArrayList<>();
        for (RideResult.Axle axle : result.axles()) {
            Damper damper = axle.wheel().damper();
            said.add(end(axle) + " " + ratio(damper.slowRebound(), damper.slowBump()) + " slow and "
                    + ratio(damper.fastRebound(), damper.fastBump()) + " fast");
        }
        return String.join(", ", said);
    }

    private static String ratio(double rebound, double bump) {
        return bump > 0 ? Numbers.fixed(rebound / bump, 2) : "-";
    }

    private List<String> cautions() {
        List<String> cautions = new ArrayList<>();
        List<String> off = new ArrayList<>();
        for (RideResult.Axle axle : result.axles()) {
            if (axle.kerb().contact().timeOffGround() > 0) {
                off.add(end(axle) + " "
                        + Numbers.fixed(MILLI * axle.kerb().contact().timeOffGround(), 0) + " ms");
            }
        }
        if (!off.isEmpty()) {
            cautions.add(
                    "Off the ground (" + String.join(", ", off) + ") a wheel neither steers nor brakes, and it lands"
                            + " with a blow. That a model survives a kerb is no reason to take it.");
        }
        cautions.add(
                "Bump stops, the floor and what a kerb does to the car's path are not in the model, and soft dampers"
                        + " use travel that a car may not have. Turn dampers a click or two at a time, stay within the range of"
                        + " their maker and the rules of the event, and try each change in licensed practice.");
        return cautions;
    }
}
