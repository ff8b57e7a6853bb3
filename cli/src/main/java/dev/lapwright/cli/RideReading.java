package dev.lapwright.cli;

import dev.lapwright.report.Numbers;
import dev.lapwright.ride.AxleEnd;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.study.ride.DamperMapResult;
import dev.lapwright.study.ride.RideResult;
import java.util.ArrayList;
import java.util.List;

/** What the figures of a ride say, in sentences. */
final class RideReading {
    private static final double MILLI = 1000;
    /** A damper is turned by about this much at a time, N s/m: common practice, no source. */
    private static final double STEP = 100;

    private RideReading() {}

    static List<String> of(RideOutcome outcome) {
        List<String> said = new ArrayList<>();
        for (RideResult.Axle axle : outcome.result().axles()) {
            said.add(best(axle, outcome.measure()));
        }
        said.add("Rebound over bump as it is: " + ratios(outcome)
                + ". Common practice, no source: rebound higher than bump, up to twice; more holds the wheel off the road"
                + " behind a kerb and pulls the car down over several. This map judges one pass over one kerb, not how the"
                + " car answers to the driver.");
        return said;
    }

    private static String best(RideResult.Axle axle, RideMeasure measure) {
        DamperMapResult map = axle.map();
        DamperMapResult.Region region = map.best(measure);
        String name = axle.end() == AxleEnd.FRONT ? "Front" : "Rear";
        if (Numbers.fixed(measure.of(map.own()) - measure.of(region.pass()), 1).equals("0.0")) {
            return name + ": no pair does better than the rates it has.";
        }
        String text = name + ": from here " + slope("fast bump", map.bumpSlope(measure), measure) + ", "
                + slope("fast rebound", map.reboundSlope(measure), measure) + ". At the best pair rebound is "
                + ratio(region.rebound(), region.bump()) + " times bump, and the wheel travels "
                + Numbers.fixed(MILLI * region.pass().bumpTravel(), 0) + " mm in bump (as it is "
                + Numbers.fixed(MILLI * map.own().bumpTravel(), 0) + " mm).";
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

    private static String slope(String what, double slope, RideMeasure measure) {
        String change = Numbers.fixed(Math.abs(STEP * slope), 2);
        if (change.equals("0.00")) {
            return what + " makes no difference";
        }
        return "100 N s/m " + (slope > 0 ? "less " : "more ") + what + " takes away " + change + " " + measure.unit();
    }

    private static String ratios(RideOutcome outcome) {
        List<String> said = new ArrayList<>();
        for (RideResult.Axle axle : outcome.result().axles()) {
            Damper damper = axle.wheel().damper();
            said.add(axle.end().label() + " " + ratio(damper.slowRebound(), damper.slowBump()) + " slow and "
                    + ratio(damper.fastRebound(), damper.fastBump()) + " fast");
        }
        return String.join(", ", said);
    }

    private static String ratio(double rebound, double bump) {
        return bump > 0 ? Numbers.fixed(rebound / bump, 2) : "-";
    }

    static List<String> cautions(RideOutcome outcome) {
        List<String> cautions = new ArrayList<>();
        List<String> off = new ArrayList<>();
        for (RideResult.Axle axle : outcome.result().axles()) {
            if (axle.kerb().timeOffGround() > 0) {
                off.add(axle.end().label() + " "
                        + Numbers.fixed(MILLI * axle.kerb().timeOffGround(), 0) + " ms");
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
