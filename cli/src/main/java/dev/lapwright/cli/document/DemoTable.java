package dev.lapwright.cli.document;

import dev.lapwright.logs.LapLogs;
import dev.lapwright.surveys.Surveys;
import java.util.ArrayList;
import java.util.List;

/**
 * A demo file that is no document: a survey or a lap log.
 *
 * @param group under which it is listed
 * @param text of the file
 */
public record DemoTable(String group, String fileName, String title, String description, String text) {
    public static final String SURVEYS = "surveys";
    public static final String LOGS = "lap logs";

    public static List<DemoTable> all() {
        List<DemoTable> all = new ArrayList<>();
        Surveys.demos()
                .forEach(survey -> all.add(new DemoTable(
                        SURVEYS, survey.fileName(), survey.title(), survey.description(), survey.text())));
        LapLogs.demos()
                .forEach(log ->
                        all.add(new DemoTable(LOGS, log.fileName(), log.title(), log.description(), log.text())));
        return all;
    }
}
