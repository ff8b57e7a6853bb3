package dev.lapwright.results;

import dev.lapwright.report.CsvText;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.track.Corner;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;

/** A study of gearing as comma-separated tables, the unit in the name of each column; numbers to nine digits. */
public final class GearingTables {
    /** Columns between the final drive and the times in gears. */
    private static final int FIGURES = 13;

    private GearingTables() {}

    /** All gearings in all situations, one row for each lap. */
    public static String choices(GearingResult result) {
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>(List.of(
                "scenario",
                "axis",
                "value",
                "finalDrive",
                "lapTimeS",
                "gainS",
                "topSpeedKmh",
                "topSpeedAtM",
                "topSpeedBefore",
                "gearAtTopSpeed",
                "engineSpeedAtTopSpeedRpm",
                "headroomRpm",
                "gearsUsed",
                "timeOnLimiterS",
                "limiterCostsAtMostS",
                "upshifts",
                "upshiftsInCorners"));
        int gears = result.gears().size();
        for (int gear = 1; gear <= gears; gear++) {
            header.add("timeInGear" + gear + "S");
        }
        header.add("noLapBecause");
        csv.row(header);
        for (GearingResult.Scenario scenario : result.scenarios()) {
            for (GearingResult.Candidate choice : scenario.choices()) {
                csv.row(row(scenario, choice, gears));
            }
        }
        return csv.text();
    }

    private static List<String> row(GearingResult.Scenario scenario, GearingResult.Candidate choice, int gears) {
        List<String> row = new ArrayList<>();
        row.add(GearingSummary.name(scenario.kind()));
        row.add(choice.axis());
        row.add(CsvText.number(choice.value()));
        row.add(CsvText.number(choice.car().value("gearbox.finalDrive")));
        if (choice.lap().isEmpty()) {
            row.addAll(Collections.nCopies(FIGURES + gears, ""));
            row.add(choice.failure());
            return row;
        }
        GearingResult.GearedLap lap = choice.lap().get();
        row.add(CsvText.number(lap.lapTime()));
        row.add(CsvText.number(scenario.gain(choice)));
        row.add(CsvText.number(LapTrace.kmh(lap.top().speed())));
        row.add(CsvText.number(lap.top().at()));
        row.add(lap.top().nextCorner().map(Corner::label).orElse(""));
        row.add(Integer.toString(lap.top().gear()));
        row.add(CsvText.number(lap.top().engineSpeed()));
        row.add(CsvText.number(lap.headroom()));
        row.add(lap.gearsUsed().stream().map(String::valueOf).collect(Collectors.joining(" ")));
        row.add(CsvText.number(lap.limiter().time()));
        row.add(CsvText.number(lap.limiter().cost()));
        row.add(Integer.toString(lap.upshifts().size()));
        row.add(Integer.toString(lap.upshiftsInCorners().size()));
        for (double time : lap.timeInGear()) {
            row.add(CsvText.number(time));
        }
        row.add("");
        return row;
    }

    /** The shifts of the car as it stood, in driving order. */
    public static String shifts(GearingResult result) {
        CsvText csv = new CsvText();
        csv.row(List.of("atM", "timeS", "from", "to", "speedKmh", "rpmBefore", "rpmAfter", "corner", "timeToBrakingS"));
        for (GearingResult.Shift shift : result.asGiven().baseline().shifts()) {
            csv.row(List.of(
                    CsvText.number(shift.at()),
                    CsvText.number(shift.time()),
                    Integer.toString(shift.from()),
                    Integer.toString(shift.to()),
                    CsvText.number(LapTrace.kmh(shift.speed())),
                    CsvText.number(shift.engineSpeedBefore()),
                    CsvText.number(shift.engineSpeedAfter()),
                    shift.corner().map(Corner::label).orElse(""),
                    CsvText.number(shift.timeToBraking())));
        }
        return csv.text();
    }

    /**
     * Over road speed: resistance, and engine speed and force at the wheels in each gear, empty above its rev limit; of the
     * car as it stood.
     */
    public static String traction(GearingResult result) {
        GearingResult.Traction traction = result.traction();
        double[] speeds = traction.speeds();
        double[] resistance = traction.resistance();
        List<double[]> forces = traction.forces();
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>(List.of("speedKmh", "resistanceN"));
        for (GearingResult.Gear gear : result.gears()) {
            header.add("engineSpeedGear" + gear.gear() + "Rpm");
            header.add("forceGear" + gear.gear() + "N");
        }
        csv.row(header);
        for (int i = 0; i < speeds.length; i++) {
            List<String> row = new ArrayList<>();
            row.add(CsvText.number(LapTrace.kmh(speeds[i])));
            row.add(CsvText.number(resistance[i]));
            for (GearingResult.Gear gear : result.gears()) {
                double force = forces.get(gear.gear() - 1)[i];
                row.add(Double.isNaN(force) ? "" : CsvText.number(gear.engineSpeed(speeds[i])));
                row.add(CsvText.number(force));
            }
            csv.row(row);
        }
        return csv.text();
    }
}
