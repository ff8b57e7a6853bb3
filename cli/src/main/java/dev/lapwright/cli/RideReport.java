package dev.lapwright.cli;

import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.ride.Damper;
import dev.lapwright.ride.Kerb;
import dev.lapwright.ride.QuarterCar;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.ride.RidePass;
import dev.lapwright.study.ride.DamperMapResult;
import dev.lapwright.study.ride.RideResult;
import java.util.List;
import java.util.function.Function;

/** A study of the ride for people. */
final class RideReport {
    private static final double MILLI = 1000;

    private final Console console;
    private final RideOutcome outcome;
    private final RideResult result;

    RideReport(Console console, RideOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        this.result = outcome.result();
    }

    void print() {
        console.line(console.bold(result.car().name() + " over kerb and road"));
        Lines.item(console, "Setup", outcome.subject().setupText());
        Lines.item(console, "Conditions", Subject.text(result.conditions()));
        Lines.item(
                console,
                "Speed",
                console.bold(Numbers.kmh(result.speed()) + " km/h")
                        + (outcome.place().isEmpty() ? "" : ", " + outcome.place()));
        console.line();
        frequencies();
        console.line();
        damping();
        console.line();
        passes("Over the kerb: " + kerb(result) + ".", RideResult.Axle::kerb);
        console.line();
        passes(
                "Over a road of class " + result.choices().road() + " (ISO 8608), for "
                        + Numbers.fixed(result.axles().get(0).surface().time(), 1) + " s.",
                RideResult.Axle::surface);
        console.line();
        map();
        for (String said : RideReading.of(outcome)) {
            console.line();
            Lines.paragraph(console, said);
        }
        for (String caution : RideReading.cautions(outcome)) {
            console.line();
            Lines.paragraph(console, console.bold("Caution:") + " " + caution);
        }
    }

    /** The kerb in words. */
    static String kerb(RideResult result) {
        Kerb kerb = result.choices().kerb();
        String teeth = kerb.teeth() > 1 ? kerb.teeth() + " times " : "";
        return teeth + kerb.shape().label() + " of " + Numbers.plain(MILLI * kerb.height()) + " mm on "
                + Numbers.plain(kerb.length()) + " m";
    }

    private void frequencies() {
        Lines.paragraph(
                console,
                "One wheel of each axle; the load on it with the downforce of that speed, in a straight line at steady"
                        + " speed. Ride frequency is the body's, hop the wheel's.");
        Table table = new Table()
                .words("axle")
                .numbers("sprung", "kg")
                .numbers("unsprung", "kg")
                .numbers("load", "N")
                .numbers("wheel rate", "N/mm")
                .numbers("tyre rate", "N/mm")
                .numbers("ride", "Hz")
                .numbers("hop", "Hz");
        for (RideResult.Axle axle : result.axles()) {
            QuarterCar wheel = axle.wheel();
            table.row(
                    axle.end().label(),
                    Numbers.fixed(wheel.sprungMass(), 1),
                    Numbers.fixed(wheel.unsprungMass(), 1),
                    Numbers.fixed(wheel.staticLoad(), 0),
                    Numbers.fixed(wheel.wheelRate() / MILLI, 1),
                    Numbers.fixed(wheel.tyreRate() / MILLI, 1),
                    Numbers.fixed(wheel.rideFrequency(), 2),
                    Numbers.fixed(wheel.hopFrequency(), 1));
        }
        table.printTo(console);
    }

    private void damping() {
        Lines.paragraph(console, "Rates at the damper, and damping over critical damping: of the body, of the wheel.");
        Table table = new Table()
                .words("damper")
                .numbers("bump", "N s/m")
                .numbers("rebound", "N s/m")
                .numbers("rebound over bump", "")
                .numbers("body bump", "")
                .numbers("body rebound", "")
                .numbers("wheel bump", "")
                .numbers("wheel rebound", "");
        for (RideResult.Axle axle : result.axles()) {
            Damper damper = axle.wheel().damper();
            String end = axle.end().label();
            table.row(rates(end + " slow", axle.wheel(), damper.slowBump(), damper.slowRebound()), false);
            table.row(rates(end + " fast", axle.wheel(), damper.fastBump(), damper.fastRebound()), false);
        }
        table.printTo(console);
    }

    private static List<String> rates(String name, QuarterCar wheel, double bump, double rebound) {
        return List.of(
                name,
                Numbers.fixed(bump, 0),
                Numbers.fixed(rebound, 0),
                Numbers.fixed(rebound / bump, 2),
                Numbers.fixed(wheel.bodyDampingRatio(bump), 2),
                Numbers.fixed(wheel.bodyDampingRatio(rebound), 2),
                Numbers.fixed(wheel.hopDampingRatio(bump), 2),
                Numbers.fixed(wheel.hopDampingRatio(rebound), 2));
    }

    private void passes(String heading, Function<RideResult.Axle, RidePass> which) {
        Lines.paragraph(console, heading);
        Table table = new Table()
                .words("axle")
                .numbers("load rms", "%")
                .numbers("off ground", "ms")
                .numbers("body peak", "m/s2")
                .numbers("peak load", "N")
                .numbers("travel bump", "mm")
                .numbers("travel rebound", "mm")
                .numbers("damper bump", "mm/s")
                .numbers("damper rebound", "mm/s")
                .numbers("heat damper", "J")
                .numbers("heat tyre", "J");
        for (RideResult.Axle axle : result.axles()) {
            RidePass pass = which.apply(axle);
            table.row(
                    axle.end().label(),
                    Numbers.fixed(100 * pass.loadVariation(), 1),
                    Numbers.fixed(MILLI * pass.timeOffGround(), 0),
                    Numbers.fixed(pass.peakBodyAcceleration(), 1),
                    Numbers.fixed(pass.greatestLoad(), 0),
                    Numbers.fixed(MILLI * pass.bumpTravel(), 0),
                    Numbers.fixed(MILLI * pass.reboundTravel(), 0),
                    Numbers.fixed(MILLI * pass.bumpSpeed(), 0),
                    Numbers.fixed(MILLI * pass.reboundSpeed(), 0),
                    Numbers.fixed(pass.energy().damper(), 0),
                    Numbers.fixed(pass.energy().tyre(), 0));
        }
        table.printTo(console);
    }

    private void map() {
        RideMeasure measure = outcome.measure();
        int pairs = result.axles().get(0).map().passes().size();
        Lines.paragraph(
                console,
                "Fast bump and rebound, " + pairs + " pairs over that kerb: least " + measure.label()
                        + ", and the region within 2 % of it.");
        Table table = new Table()
                .words("axle")
                .numbers("as it is", measure.unit())
                .numbers("best", measure.unit())
                .numbers("bump", "N s/m")
                .numbers("best bump", "N s/m")
                .numbers("region", "N s/m")
                .numbers("rebound", "N s/m")
                .numbers("best rebound", "N s/m")
                .numbers("region", "N s/m");
        for (RideResult.Axle axle : result.axles()) {
            DamperMapResult map = axle.map();
            DamperMapResult.Region region = map.best(measure);
            Damper damper = axle.wheel().damper();
            table.row(
                    axle.end().label(),
                    Numbers.fixed(measure.of(map.own()), 1),
                    Numbers.fixed(measure.of(region.pass()), 1),
                    Numbers.fixed(damper.fastBump(), 0),
                    Numbers.fixed(region.bump(), 0),
                    range(region.leastBump(), region.greatestBump()),
                    Numbers.fixed(damper.fastRebound(), 0),
                    Numbers.fixed(region.rebound(), 0),
                    range(region.leastRebound(), region.greatestRebound()));
        }
        table.printTo(console);
    }

    private static String range(double from, double to) {
        return Numbers.fixed(from, 0) + (to > from ? "-" + Numbers.fixed(to, 0) : "");
    }
}
