package dev.lapwright.cli;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.SweepTable;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.nio.file.Path;

/** Which files a sweep is written to. */
final class SweepFiles {
    private static final String TABLE = "sweep.csv";
    private static final String TRADE_OFF = "trade-off.svg";

    private SweepFiles() {}

    /** Plans and checks them. */
    static ResultFiles<SweepOutcome> plan(SweepOutputOptions options) {
        ResultFiles<SweepOutcome> files = new ResultFiles<>(options.force);
        if (options.chart != null) {
            String name = Outputs.checkEnding("--chart", options.chart, ".svg", ".png");
            files.picture(name, outcome -> SweepCharts.lapTime(name, outcome));
        }
        if (options.tradeOff != null) {
            String name = Outputs.checkEnding("--trade-off", options.tradeOff, ".svg", ".png");
            files.picture(name, outcome -> SweepCharts.tradeOff(name, outcome));
        }
        if (options.out != null) {
            out(files, options.out);
        }
        return files;
    }

    private static void out(ResultFiles<SweepOutcome> files, String name) {
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, SweepJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> SweepTable.csv(outcome.result()));
        } else if (Outputs.isNamed(name, ".svg") || Outputs.isNamed(name, ".png")) {
            files.picture(name, outcome -> SweepCharts.lapTime(name, outcome));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv", ".svg", ".png");
            files.textIn(name, "sweep.json", SweepJson::text);
            files.textIn(name, TABLE, outcome -> SweepTable.csv(outcome.result()));
            files.pictureIn(name, "lap-time.svg", outcome -> SweepCharts.lapTime("lap-time.svg", outcome));
            files.pictureIn(
                    name,
                    TRADE_OFF,
                    outcome ->
                            hasTradeOff(outcome.subject().track()) ? SweepCharts.tradeOff(TRADE_OFF, outcome) : null);
        }
    }

    /** Whether there are corners to trade top speed against. */
    private static boolean hasTradeOff(Track track) {
        return !track.stations(StationSpacing.DEFAULT).corners().isEmpty();
    }

    /** Refuses a chart that is asked for by name and could not be drawn, before any lap is driven. */
    static void check(SweepOutputOptions options, Track track) {
        if (options.tradeOff != null && !hasTradeOff(track)) {
            throw new InvalidValueException(
                    "--trade-off",
                    track.name() + " has no corners to trade top speed against",
                    "leave it out, or take a track with corners");
        }
    }

    /** Where the whole table goes; empty if nowhere. */
    static String tableFile(SweepOutputOptions options) {
        String name = options.out;
        if (name == null
                || Outputs.isNamed(name, ".json")
                || Outputs.isNamed(name, ".svg")
                || Outputs.isNamed(name, ".png")) {
            return "";
        }
        return Outputs.isNamed(name, ".csv")
                ? name
                : Path.of(name).resolve(TABLE).toString();
    }
}
