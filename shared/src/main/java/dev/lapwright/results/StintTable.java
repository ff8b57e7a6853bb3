package dev.lapwright.results;

import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.stint.Compound;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.StintResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A stint: a table with one row for each lap on each compound, the unit in each name; and as JSON. */
public final class StintTable {
    private StintTable() {}

    /** Comma-separated values under one line of names; numbers to nine digits. */
    public static String csv(StintResult result) {
        CsvText csv = new CsvText();
        csv.row(List.of("compound", "lap", "lapTimeS", "fuelAtStartKg", "fuelUsedKg", "grip"));
        for (StintResult.Run run : result.runs()) {
            for (StintResult.RunLap lap : run.laps()) {
                csv.row(List.of(
                        run.compound().name(),
                        Integer.toString(lap.number()),
                        CsvText.number(lap.time()),
                        CsvText.number(lap.fuelAtStart()),
                        CsvText.number(lap.fuelUsed()),
                        CsvText.number(lap.grip())));
            }
        }
        return csv.text();
    }

    /**
     * The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it.
     *
     * @param kgPerLitre density of the fuel
     */
    public static Map<String, Object> tree(StintResult result, double kgPerLitre) {
        Map<String, Object> tree = ResultHeader.of(
                "stint/1",
                InputHash.of(result.lap()),
                result.lap().vehicle().car(),
                result.lap().track(),
                result.lap().vehicle().conditions());
        RaceLength race = result.race();
        tree.put("raceLaps", race.laps());
        tree.put("raceMinutes", race.seconds() / 60);
        tree.put("formationLaps", race.formationLaps());
        tree.put("formationPercent", 100 * race.formationShare());
        tree.put("reserveLaps", race.reserveLaps());
        tree.put("consumptionRpm", InputHash.list(result.consumption().rpm()));
        tree.put("consumptionGPerKwh", InputHash.list(result.consumption().gramPerKwh()));
        tree.put("fuelDensityKgPerL", kgPerLitre);
        tree.put("engineWorkPerLapJ", result.use().engineWork());
        tree.put("fuelPerLapKg", result.use().fuel());
        tree.put("startFuelKg", result.startFuel());
        tree.put("startFuelL", result.startFuel() / kgPerLitre);
        tree.put("lapTimePerKgS", result.timePerKg());
        tree.put("lapTimePerPercentGripS", result.timePerGrip());
        List<Object> runs = new ArrayList<>();
        for (StintResult.Run run : result.runs()) {
            runs.add(run(result, run, kgPerLitre));
        }
        tree.put("runs", runs);
        return tree;
    }

    private static Map<String, Object> run(StintResult result, StintResult.Run run, double kgPerLitre) {
        Map<String, Object> tree = new LinkedHashMap<>();
        Compound compound = run.compound();
        tree.put("compound", compound.name());
        tree.put("grip", compound.grip());
        tree.put("wearPercentPerLap", 100 * compound.wear());
        tree.put("cliffLap", compound.cliffLap());
        tree.put("cliffWearPercentPerLap", 100 * compound.cliffWear());
        tree.put("timeS", run.time());
        tree.put("formationFuelKg", run.formationFuel());
        tree.put("raceFuelKg", run.raceFuel());
        tree.put("reserveFuelKg", run.reserveFuel());
        tree.put("fuelNeededKg", run.fuelNeeded());
        tree.put("fuelNeededL", run.fuelNeeded() / kgPerLitre);
        StintResult.Run first = result.runs().get(0);
        if (!run.equals(first)) {
            tree.put("fasterThanFirstFromLap", first.fasterFrom(run));
            tree.put("aheadOfFirstAfterLap", first.aheadFrom(run));
        }
        List<Object> laps = new ArrayList<>();
        for (StintResult.RunLap lap : run.laps()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("lap", lap.number());
            one.put("lapTimeS", lap.time());
            one.put("fuelAtStartKg", lap.fuelAtStart());
            one.put("fuelUsedKg", lap.fuelUsed());
            one.put("grip", lap.grip());
            laps.add(one);
        }
        tree.put("laps", laps);
        return tree;
    }
}
