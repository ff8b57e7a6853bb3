package dev.lapwright.cli;

import dev.lapwright.results.RideSummary;

/** Which files a study of the ride is written to. */
final class RideFiles {
    private RideFiles() {}

    /** Plans and checks them. */
    static ResultFiles<RideOutcome> plan(RideOutputOptions options) {
        ResultFiles<RideOutcome> files = new ResultFiles<>(options.force);
        if (options.map != null) {
            Outputs.checkEnding("--map", options.map, ".svg", ".png");
            files.picture(options.map, outcome -> RideCharts.map(options.map, outcome, options.rear));
        }
        if (options.pass != null) {
            Outputs.checkEnding("--pass", options.pass, ".svg", ".png");
            files.picture(options.pass, outcome -> RideCharts.pass(options.pass, outcome, options.rear));
        }
        String name = options.out;
        if (name == null) {
            return files;
        }
        if (Outputs.isNamed(name, ".json")) {
            files.text(name, RideJson::text);
        } else if (Outputs.isNamed(name, ".csv")) {
            files.text(name, outcome -> RideSummary.mapCsv(outcome.result()));
        } else {
            Outputs.checkFolder("--out", name, ".json", ".csv");
            files.textIn(name, "ride.json", RideJson::text);
            files.textIn(name, "map.csv", outcome -> RideSummary.mapCsv(outcome.result()));
            files.textIn(name, "pass.csv", outcome -> RideSummary.traceCsv(outcome.result()));
            for (boolean rear : new boolean[] {false, true}) {
                String end = rear ? "rear.svg" : "front.svg";
                files.pictureIn(name, "map-" + end, outcome -> RideCharts.map("map-" + end, outcome, rear));
                files.pictureIn(name, "pass-" + end, outcome -> RideCharts.pass("pass-" + end, outcome, rear));
            }
        }
        return files;
    }
}
