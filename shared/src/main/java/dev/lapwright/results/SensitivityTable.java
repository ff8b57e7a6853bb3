package dev.lapwright.results;

import dev.lapwright.report.CsvText;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.List;

/**
 * What matters at a circuit as a comma-separated table: a row for each adjustment, the one worth most first, the unit in the
 * name of each column; numbers to nine digits, empty where there is none.
 */
public final class SensitivityTable {
    private SensitivityTable() {}

    /** The table under one line of names. */
    public static String csv(SensitivityResult result) {
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>(List.of(
                "adjustment",
                "unit",
                "setting",
                "stepDownTo",
                "stepDownGainS",
                "stepUpTo",
                "stepUpGainS",
                "best",
                "bestGainS",
                "worst",
                "worstGainS",
                "rangeS",
                "curvatureS",
                "lapsToSeeWithEach",
                "canBeSeen",
                "sectorsAt"));
        int sectors = result.gains().get(0).sectorGains().size();
        for (int sector = 1; sector <= sectors; sector++) {
            header.add("sector" + sector + "GainS");
        }
        csv.row(header);
        for (SensitivityResult.Gain gain : result.gains()) {
            csv.row(row(gain, result));
        }
        return csv.text();
    }

    private static List<String> row(SensitivityResult.Gain gain, SensitivityResult result) {
        List<String> row = new ArrayList<>();
        row.add(gain.adjustment().name());
        row.add(gain.adjustment().unit().symbol());
        double[] numbers = {
            gain.setting(),
            gain.lower().setting(),
            gain.lower().gain(),
            gain.higher().setting(),
            gain.higher().gain(),
            gain.best().setting(),
            gain.best().gain(),
            gain.worst().setting(),
            gain.worst().gain(),
            gain.range(),
            gain.curvature()
        };
        for (double number : numbers) {
            row.add(CsvText.number(number));
        }
        row.add(gain.isEverSeen() ? Integer.toString(gain.lapsToSee()) : "");
        row.add(Boolean.toString(result.canBeSeen(gain)));
        row.add(CsvText.number(gain.shown().setting()));
        for (double sector : gain.sectorGains()) {
            row.add(CsvText.number(sector));
        }
        return row;
    }
}
