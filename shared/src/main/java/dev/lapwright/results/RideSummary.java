package dev.lapwright.results;

import dev.lapwright.documents.DocumentKind;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RidePass;
import dev.lapwright.study.ride.DamperMapResult;
import dev.lapwright.study.ride.RideResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** How a car rides, as JSON and as tables, the unit in each name. */
public final class RideSummary {
    private static final double MILLI = 1000;
    private static final double PERCENT = 100;

    private RideSummary() {}

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(RideResult result) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put(DocumentKind.MARK, "ride/1");
        tree.put("version", ResultHeader.version());
        tree.put("inputsSha256", InputHash.of(result));
        tree.put("car", result.car().name());
        tree.put("settings", result.car().settings());
        tree.put("conditions", ResultHeader.day(result.conditions()));
        tree.put("speedKmh", LapTrace.kmh(result.speed()));
        tree.put("over", over(result));
        tree.put("axles", result.axles().stream().map(RideSummary::axle).toList());
        return tree;
    }

    /** What was driven over. */
    static Map<String, Object> over(RideResult result) {
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

    private static Map<String, Object> axle(RideResult.Axle axle) {
        QuarterCar wheel = axle.wheel();
        Damper damper = wheel.damper();
        QuarterCar.Modes modes = wheel.modes();
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("axle", axle.end().label());
        tree.put("sprungMassKg", wheel.sprungMass());
        tree.put("unsprungMassKg", wheel.unsprungMass());
        tree.put("wheelRateNPerMm", wheel.wheelRate() / MILLI);
        tree.put("tyreRateNPerMm", wheel.tyreRate() / MILLI);
        tree.put("rideRateNPerMm", wheel.rideRate() / MILLI);
        tree.put("downforceN", wheel.downforce());
        tree.put("staticLoadN", wheel.staticLoad());
        tree.put("rideFrequencyHz", wheel.rideFrequency());
        tree.put("hopFrequencyHz", wheel.hopFrequency());
        tree.put("bodyModeHz", modes.bodyFrequency());
        tree.put("wheelModeHz", modes.wheelFrequency());
        tree.put("slowBump", rate(wheel, damper.slowBump()));
        tree.put("fastBump", rate(wheel, damper.fastBump()));
        tree.put("slowRebound", rate(wheel, damper.slowRebound()));
        tree.put("fastRebound", rate(wheel, damper.fastRebound()));
        tree.put("bumpKneeMmPerS", MILLI * damper.bumpKnee());
        tree.put("reboundKneeMmPerS", MILLI * damper.reboundKnee());
        tree.put("overKerb", pass(axle.kerb()));
        tree.put("overRoad", pass(axle.surface()));
        Map<String, Object> best = new LinkedHashMap<>();
        for (RideMeasure measure : RideMeasure.values()) {
            best.put(measure.word(), best(axle.map(), measure));
        }
        tree.put("bestOverKerb", best);
        return tree;
    }

    private static Map<String, Object> rate(QuarterCar wheel, double rate) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("rateNsPerM", rate);
        tree.put("bodyDampingRatio", wheel.bodyDampingRatio(rate));
        tree.put("hopDampingRatio", wheel.hopDampingRatio(rate));
        return tree;
    }

    private static Map<String, Object> best(DamperMapResult map, RideMeasure measure) {
        DamperMapResult.Region region = map.best(measure);
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("unit", measure.unit());
        tree.put("asItIs", measure.of(map.own()));
        tree.put("best", measure.of(region.pass()));
        tree.put("fastBumpNsPerM", region.bump());
        tree.put("fastReboundNsPerM", region.rebound());
        tree.put("regionFastBumpNsPerM", List.of(region.leastBump(), region.greatestBump()));
        tree.put("regionFastReboundNsPerM", List.of(region.leastRebound(), region.greatestRebound()));
        tree.put("regionPairs", region.pairs());
        tree.put("atEdgeOfMap", region.atEdge());
        map.best(measure, 1, 2).ifPresent(pair -> {
            Map<String, Object> within = new LinkedHashMap<>();
            within.put("best", measure.of(pair.pass()));
            within.put("fastBumpNsPerM", pair.bump());
            within.put("fastReboundNsPerM", pair.rebound());
            tree.put("withReboundOneToTwoTimesBump", within);
        });
        tree.put("perFastBumpNsPerM", map.bumpSlope(measure));
        tree.put("perFastReboundNsPerM", map.reboundSlope(measure));
        return tree;
    }

    private static Map<String, Object> pass(RidePass pass) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("timeS", pass.time());
        tree.put("loadVariationPercent", PERCENT * pass.loadVariation());
        tree.put("leastLoadN", pass.leastLoad());
        tree.put("greatestLoadN", pass.greatestLoad());
        tree.put("timeOffGroundMs", MILLI * pass.timeOffGround());
        tree.put("peakBodyAccelerationMps2", pass.peakBodyAcceleration());
        tree.put("bodyAccelerationRmsMps2", pass.bodyAcceleration());
        tree.put("bumpTravelMm", MILLI * pass.bumpTravel());
        tree.put("reboundTravelMm", MILLI * pass.reboundTravel());
        tree.put("bumpSpeedMmPerS", MILLI * pass.bumpSpeed());
        tree.put("reboundSpeedMmPerS", MILLI * pass.reboundSpeed());
        tree.put("energyFromRoadJ", pass.energy().fromRoad());
        tree.put("energyBumpJ", pass.energy().bump());
        tree.put("energyReboundJ", pass.energy().rebound());
        tree.put("energyTyreJ", pass.energy().tyre());
        tree.put("energyStoredJ", pass.energy().stored());
        return tree;
    }

    /** The maps of both axles as comma-separated values, one line for each pair of rates. */
    public static String mapCsv(RideResult result) {
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>(List.of("axle", "fastBumpNsPerM", "fastReboundNsPerM"));
        header.addAll(pass(result.axles().get(0).kerb()).keySet());
        csv.row(header);
        for (RideResult.Axle axle : result.axles()) {
            double[] bump = axle.map().bump();
            double[] rebound = axle.map().rebound();
            for (int i = 0; i < bump.length; i++) {
                for (int j = 0; j < rebound.length; j++) {
                    List<String> row = new ArrayList<>(
                            List.of(axle.end().label(), CsvText.number(bump[i]), CsvText.number(rebound[j])));
                    pass(axle.map().at(i, j)).values().forEach(value -> row.add(CsvText.number((Double) value)));
                    csv.row(row);
                }
            }
        }
        return csv.text();
    }

    /** The passes of both axles over the kerb, over time, as comma-separated values. */
    public static String traceCsv(RideResult result) {
        CsvText csv = new CsvText();
        csv.row(List.of(
                "axle", "timeS", "kerbMm", "wheelMm", "bodyMm", "travelMm", "contactLoadN", "bodyAccelerationMps2"));
        for (RideResult.Axle axle : result.axles()) {
            RidePass.Trace trace = axle.trace();
            double[] time = trace.time();
            double[] road = trace.road();
            double[] wheel = trace.wheel();
            double[] body = trace.body();
            double[] load = trace.load();
            double[] acceleration = trace.bodyAcceleration();
            for (int i = 0; i < time.length; i++) {
                csv.row(List.of(
                        axle.end().label(),
                        CsvText.number(time[i]),
                        CsvText.number(MILLI * road[i]),
                        CsvText.number(MILLI * wheel[i]),
                        CsvText.number(MILLI * body[i]),
                        CsvText.number(MILLI * (wheel[i] - body[i])),
                        CsvText.number(load[i]),
                        CsvText.number(acceleration[i])));
            }
        }
        return csv.text();
    }
}
