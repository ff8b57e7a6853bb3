package dev.lapwright.cli;

import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.ride.RideMeasure;
import dev.lapwright.study.ride.Ride;
import dev.lapwright.study.ride.RoadInput;
import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Frequencies, damping, kerbs, rough roads, and where to turn the fast dampers. */
@Command(
        name = "ride",
        sortOptions = false,
        descriptionHeading = "%n",
        description = {"Drives a wheel over a kerb and a rough road, and maps fast bump and rebound."},
        customSynopsis = {
            "lapwright ride CAR [--speed-kmh V] [OPTIONS]",
            "       lapwright ride CAR CIRCUIT --corner CORNER [OPTIONS]"
        },
        parameterListHeading = "%n",
        optionListHeading = "%n",
        footerHeading = "%nExamples:%n",
        footer = {
            "  lapwright ride gt-talvex --kerb-height-mm 50 --map dampers.svg",
            "      A higher kerb at 100 km/h, and the map of the front dampers as a chart.",
            "  lapwright ride gt-talvex castelvane --corner T3 --kerb sawtooth --kerb-teeth 4 --kerb-length-m 2",
            "      Four teeth at the lowest speed of the third corner."
        })
final class RideCommand implements Callable<Integer> {
    private static final double STANDARD_KMH = 100;

    private final Console console;

    @Mixin
    private RideDocuments documents;

    @ArgGroup(validate = false, heading = "%nKerb and road:%n")
    private final RideOptions ride = new RideOptions();

    @ArgGroup(validate = false, heading = "%nSetup:%n")
    private final SetupOptions setup = new SetupOptions();

    @ArgGroup(validate = false, heading = "%nConditions:%n")
    private final ConditionsOptions conditions = new ConditionsOptions();

    @ArgGroup(validate = false, heading = "%nOutput:%n")
    private final RideOutputOptions output = new RideOutputOptions();

    @Mixin
    HelpOption help;

    /** A speed and where it comes from. */
    private record Speed(double metresPerSecond, String place) {}

    RideCommand(Console console) {
        this.console = console;
    }

    @Override
    public Integer call() {
        ResultFiles<RideOutcome> files = RideFiles.plan(output);
        ride.check(documents.circuit);
        RoadInput choices = ride.choices();
        RideMeasure measure = ride.measure();
        Subject subject = setup.subject(documents.car, documents.circuit, conditions.day(), console);
        Speed speed = ride.corner == null ? given() : inCorner(subject);
        RideOutcome outcome = new RideOutcome(
                subject,
                Ride.of(subject.car(), subject.day(), speed.metresPerSecond())
                        .over(choices)
                        .run(),
                measure,
                speed.place());
        files.write(outcome);
        if (output.json) {
            console.text(RideJson.text(outcome));
        } else {
            new RideReport(console, outcome).print();
        }
        files.report(console, output.json);
        return Lapwright.DONE;
    }

    private Speed given() {
        double kmh = ride.speedKmh == null ? STANDARD_KMH : Check.inRange("--speed-kmh", ride.speedKmh, 5, 500);
        return new Speed(Unit.KILOMETRE_PER_HOUR.convert(kmh, Unit.METRE_PER_SECOND), "");
    }

    private Speed inCorner(Subject subject) {
        Lap lap = new LapSolver(subject.track().stations(StationSpacing.DEFAULT))
                .solve(Vehicle.of(subject.car(), subject.day()));
        Corner wanted = Corner.find(lap.stations().corners(), ride.corner)
                .orElseThrow(() -> new InvalidValueException(
                        "--corner " + ride.corner,
                        "the circuit has no such corner",
                        "take T1 to T" + lap.stations().corners().size() + ", or a corner's name"));
        CornerFigures corner = lap.corners().get(wanted.number() - 1);
        String place = ride.at == null ? "slowest" : ride.at.strip();
        double speed = switch (place) {
            case "entry" -> corner.entrySpeed();
            case "slowest" -> corner.minimumSpeed();
            case "exit" -> corner.exitSpeed();
            default ->
                throw new InvalidValueException(
                        "--at " + place, "it is no place in a corner", "take entry, slowest or exit");
        };
        String text = (place.equals("slowest") ? "the lowest in " : "at the " + place + " of ") + wanted.label()
                + " on the" + " lap of " + subject.track().name() + " (" + Numbers.lapTime(lap.time()) + ")";
        return new Speed(speed, text);
    }
}
