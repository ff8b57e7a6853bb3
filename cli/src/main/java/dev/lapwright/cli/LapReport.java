package dev.lapwright.cli;

import dev.lapwright.car.Conditions;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.CornerFigures;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapFigures;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.results.Cautions;
import dev.lapwright.results.Extreme;
import dev.lapwright.results.Subject;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A lap's result for people. */
final class LapReport {
    private final Console console;
    private final LapResult result;
    private final Lap lap;

    LapReport(Console console, LapResult result) {
        this.console = console;
        this.result = result;
        this.lap = result.lap();
    }

    void print() {
        heading(console, result.subject());
        TerminalReport.print(console, result.line().addTo(new Report()));
        console.line();
        figures();
        console.line();
        corners();
        if (!result.others().isEmpty()) {
            console.line();
            comparison();
        }
        for (String caution : Cautions.of(lap)) {
            console.line();
            caution("Caution: ", caution);
        }
        for (LapResult.Other other : result.others()) {
            for (String caution : Cautions.of(other.lap())) {
                console.line();
                caution("Caution with " + other.name() + ": ", caution);
            }
        }
    }

    private void caution(String beginning, String caution) {
        Lines.paragraph(console, console.bold(beginning.strip()) + " " + caution);
    }

    /** What is driven, where, and on what day. */
    static void heading(Console console, Subject subject) {
        Track track = subject.track();
        String kind = track.isClosed() ? "closed circuit" : "open run";
        console.line(console.bold(subject.car().name() + " at " + track.name()) + ", " + kind + " of "
                + Numbers.fixed(track.length(), 0) + " m");
        Lines.item(console, "Setup", subject.setupText());
        Lines.item(console, "Conditions", conditions(subject.day()));
    }

    /** The day in one line. */
    static String conditions(Conditions day) {
        String wind = day.windSpeedMps() > 0
                ? "wind " + Numbers.kmh(day.windSpeedMps()) + " km/h from " + Numbers.plain(day.windFromDeg()) + " deg"
                : "no wind";
        return day.name() + ": " + Numbers.fixed(day.airTempC(), 1) + " degC, "
                + Numbers.fixed(day.airPressureHpa(), 1) + " hPa, humidity " + Numbers.plain(day.humidityPercent())
                + " %, " + wind + ", grip " + Numbers.plain(day.grip());
    }

    private void figures() {
        LapFigures figures = lap.figures();
        String name = lap.track().isClosed() ? "Lap time" : "Run time";
        Lines.item(
                console,
                name,
                console.bold(Numbers.lapTime(lap.time())) + " (" + Numbers.fixed(lap.time(), 3) + " s), mean speed "
                        + Numbers.kmh(figures.meanSpeed()) + " km/h");
        Lines.item(console, "Sectors", sectors());
        Extreme top = Extreme.greatest(lap, Channel.SPEED);
        // The highest speed lies between stations, its place is told to the nearest one.
        Lines.item(
                console,
                "Top speed",
                Numbers.kmh(figures.topSpeed()) + " km/h at " + Numbers.fixed(top.at(), 0) + " m");
        Lines.item(console, "Lowest speed", lowest());
        Lines.item(console, "Gears used", gears());
        Lines.item(console, "Limited by", shares() + " (share of the time)");
        Extreme front = Extreme.least(lap, Channel.RIDE_HEIGHT_FRONT);
        Extreme rear = Extreme.least(lap, Channel.RIDE_HEIGHT_REAR);
        Lines.item(
                console,
                "Ride height",
                "at least " + Numbers.fixed(front.value(), 1) + " mm front, " + Numbers.fixed(rear.value(), 1)
                        + " mm rear");
    }

    private String sectors() {
        List<String> times = new ArrayList<>();
        for (double time : lap.sectorTimes()) {
            times.add(Numbers.fixed(time, 3));
        }
        return String.join(" + ", times) + " s";
    }

    private String lowest() {
        CornerFigures slowest = null;
        for (CornerFigures corner : lap.corners()) {
            slowest = slowest == null || corner.minimumSpeed() < slowest.minimumSpeed() ? corner : slowest;
        }
        if (slowest == null) {
            Extreme least = Extreme.least(lap, Channel.SPEED);
            return Numbers.kmh(least.value()) + " km/h at " + Numbers.fixed(least.at(), 0) + " m";
        }
        return Numbers.kmh(slowest.minimumSpeed()) + " km/h at " + Numbers.fixed(slowest.minimumSpeedAt(), 0) + " m in "
                + slowest.corner().label();
    }

    private String gears() {
        List<String> gears = new ArrayList<>();
        lap.gearsUsed().forEach(gear -> gears.add(gear.toString()));
        return String.join(", ", gears);
    }

    private String shares() {
        List<Map.Entry<Limit, Double>> shares =
                new ArrayList<>(lap.limitShares().entrySet());
        shares.sort((a, b) -> Double.compare(b.getValue(), a.getValue()));
        List<String> said = new ArrayList<>();
        shares.forEach(share -> said.add(share.getKey().label() + " " + Numbers.percent(share.getValue()) + " %"));
        return String.join(", ", said);
    }

    private void corners() {
        if (lap.corners().isEmpty()) {
            console.line("The track has no corners.");
            return;
        }
        Table table = new Table()
                .words("corner")
                .words("turn")
                .numbers("at", "m")
                .numbers("radius", "m")
                .numbers("entry", "km/h")
                .numbers("minimum", "km/h")
                .numbers("exit", "km/h")
                .numbers("lateral", "g")
                .numbers("gear", "")
                .words("limited by");
        for (CornerFigures figures : lap.corners()) {
            table.row(
                    figures.corner().label(),
                    figures.corner().left() ? "left" : "right",
                    Numbers.fixed(figures.minimumSpeedAt(), 0),
                    Numbers.fixed(figures.corner().minimumRadius(), 0),
                    Numbers.kmh(figures.entrySpeed()),
                    Numbers.kmh(figures.minimumSpeed()),
                    Numbers.kmh(figures.exitSpeed()),
                    Numbers.g(figures.peakLateralAcceleration()),
                    Integer.toString(figures.gear()),
                    figures.limit().label());
        }
        table.printTo(console);
    }

    private void comparison() {
        console.line("Against the setup above (+ is slower):");
        Table table = new Table().words("setup").numbers("time", "m:ss.mmm").numbers("difference", "s");
        double[] ends = lap.track().sectorEnds();
        for (int i = 1; i <= ends.length; i++) {
            table.numbers("sector " + i, "s");
        }
        table.numbers("top speed", "km/h").numbers("slowest", "km/h");
        for (LapResult.Other other : result.others()) {
            List<String> cells = new ArrayList<>();
            cells.add(other.name());
            cells.add(Numbers.lapTime(other.lap().time()));
            cells.add(Numbers.signed(other.slower(lap), 3));
            for (double slower : other.slowerBySector(lap)) {
                cells.add(Numbers.signed(slower, 3));
            }
            LapFigures figures = other.lap().figures();
            cells.add(Numbers.kmh(figures.topSpeed()));
            cells.add(Numbers.kmh(figures.minimumCornerSpeed()));
            table.row(cells, false);
        }
        table.printTo(console);
    }
}
