package dev.lapwright.cli.brief;

import dev.lapwright.brief.Brief;
import dev.lapwright.brief.BriefChoices;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Unit;
import dev.lapwright.cli.option.DriverWordText;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.logs.PressureLog;
import dev.lapwright.logs.RunCard;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.pressures.PressureDay;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.stint.RaceLength;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Options of the command {@code brief} beside car, circuit and day. */
public final class BriefOptions {
    private static final int SECONDS_PER_MINUTE = 60;

    @Option(
            names = "--card",
            paramLabel = "FILE",
            description =
                    "The JSON beside the page whose card was driven: then logs that name no setups hold its runs, in"
                            + " their order.")
    public String card;

    @Option(
            names = "--runs-of",
            paramLabel = "EVENT",
            description =
                    "After driving: counts all runs of an event's notebook so far, their lap times, laps with speeds and"
                            + " pressures. In an event's folder, or with --event, that is so without it.")
    public String runsOf;

    @Option(
            names = "--pressures",
            paramLabel = "LOG",
            description =
                    "A log of cold and hot pressures, as 'lapwright pressures' reads it: then the cold ones to start"
                            + " from are by what these rose.")
    public String pressures;

    @Option(
            names = "--test-laps",
            paramLabel = "N",
            description = "Clean laps there are to test with, all setups together; 30 if left out.")
    public int testLaps = BriefChoices.DEFAULT.testing().laps();

    @Option(
            names = "--scatter-s",
            paramLabel = "S",
            description =
                    "Standard deviation of the driver's lap times in one setup, s. If left out that of the log given"
                            + " by --after, and 0.3 where there is none, or too short a one.")
    public Double scatterS;

    @Option(names = "--minutes", paramLabel = "M", description = "A timed race; 20 minutes if left out.")
    public Double minutes;

    @Option(names = "--race-laps", paramLabel = "N", description = "A counted race instead.")
    public Integer raceLaps;

    @Option(
            names = "--vary",
            paramLabel = "NAMES",
            split = ",",
            description = "Adjustments that the suggested setup may turn: rear-wing,rake,…. Without it those that are"
                    + " found to be worth it.")
    public List<String> vary = new ArrayList<>();

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "How many laps are computed at the same time; one for each processor core if left out.")
    public Integer threads;

    @Option(
            names = "--draws",
            paramLabel = "N",
            description =
                    "Cars drawn, by what is known of this one, to tell each gain of the plan with its interval of nine in"
                            + " ten and its chance; 40 if left out, 0 for none.")
    public int draws = BriefChoices.DRAWS;

    @Option(
            names = {DriverWordText.DRIVER},
            paramLabel = "WORD",
            description =
                    "What the driver says of the car as it stands, as 'lapwright compare' takes it: T6=rear, neutral at T5,"
                            + " T3=92km/h, top=251km/h, lap=1:36.4, +-ERROR behind it. May be repeated. Only drawn cars that go"
                            + " with it count.")
    public List<String> said = new ArrayList<>();

    /** The question with these choices, which go before what runs tell. */
    Brief of(Brief asked, Subject subject) {
        Check.inRange("--test-laps", testLaps, 4, 100_000);
        if (draws != 0) {
            Robustness.checkedDraws("--draws", draws);
        }
        if (draws == 0 && !said.isEmpty()) {
            throw new InvalidValueException(
                    DriverWordText.DRIVER, "no cars are drawn", "leave --draws 0 out, or what the driver says");
        }
        Brief brief = asked.withLaps(testLaps)
                .withDraws(draws)
                .withRace(race())
                .hearing(said.stream().map(DriverWordText::read).toList());
        if (scatterS != null) {
            brief = brief.withScatter(Check.inRange("--scatter-s", scatterS, 0.001, 60));
        }
        if (pressures != null) {
            Conditions day = subject.day();
            PressureDay run = new PressureDay(day.airTempC(), day.airTempC(), day.airPressureHpa());
            DocumentSource log = DocumentSource.ofFile(SafeFile.path(pressures));
            brief = brief.withPressures(
                    PressureLog.read(log, run, Double.NaN, Unit.KILOPASCAL).pairs());
        }
        if (!vary.isEmpty()) {
            brief = brief.turning(vary.stream().map(String::trim).toList());
        }
        return brief;
    }

    /** What its answers depend on, but for the day and for what was driven, in words. */
    List<String> inputs() {
        List<String> inputs = new ArrayList<>(said);
        inputs.add(testLaps + " " + scatterS + " " + race() + " " + vary + " " + draws);
        if (pressures != null) {
            inputs.add(DocumentSource.ofFile(SafeFile.path(pressures)).text());
        }
        return inputs;
    }

    /** The card that was driven, if it was given. */
    Optional<RunCard> card() {
        return Optional.ofNullable(card).map(file -> RunCard.read(DocumentSource.ofFile(SafeFile.path(file))));
    }

    public StudyRun run() {
        return threads == null ? StudyRun.onAllCores() : StudyRun.onThreads(threads);
    }

    private RaceLength race() {
        if (minutes != null && raceLaps != null) {
            throw new InvalidValueException(
                    "race", "it is both counted and timed", "give --race-laps N or --minutes M");
        }
        RaceLength standard = BriefChoices.DEFAULT.racing().length();
        int laps = raceLaps == null ? 0 : (int) Check.inRange("--race-laps", raceLaps, 1, 300);
        double seconds = raceLaps != null
                ? 0
                : minutes == null
                        ? standard.seconds()
                        : SECONDS_PER_MINUTE * Check.inRange("--minutes", minutes, 0.1, 360);
        return new RaceLength(
                laps, seconds, standard.formationLaps(), standard.formationShare(), standard.reserveLaps());
    }
}
