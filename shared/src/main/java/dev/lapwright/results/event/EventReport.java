package dev.lapwright.results.event;

import dev.lapwright.car.Car;
import dev.lapwright.car.Unit;
import dev.lapwright.evidence.EvidenceResult;
import dev.lapwright.evidence.NormalMixture;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventChange;
import dev.lapwright.notebook.EventPack;
import dev.lapwright.notebook.EventRun;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.results.EvidenceReport;
import dev.lapwright.results.FitReport;
import dev.lapwright.results.PressuresReport;
import dev.lapwright.study.StudyRun;
import dev.lapwright.tyre.TreadTemperatures;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * Report of an event: its runs, and what all laps so far show of each change, beside what had been expected.
 *
 * @param event as its folder held it
 * @param changes of setup, with what the laps show
 * @param files texts of the folder by name, of which the report's hash is
 * @param pressures what those read in all runs say of the ones to set next; empty where that was not asked, or none were read
 * @param fit of the car to all laps logged with their speeds; empty where that was not asked, or there are none
 */
public record EventReport(
        Event event,
        List<EventChange> changes,
        Map<String, String> files,
        Optional<PressuresReport> pressures,
        Optional<FitReport> fit) {
    /** What rules over every number. */
    public static final List<String> CAUTIONS = List.of(
            "Pressures, brakes, ride heights and wings stay within the maker's limits and the rules of the event, whatever laps or a"
                    + " model say.");

    private static final Table<Event.Numbered> RUNS_FOR_MACHINES = Table.<Event.Numbered>of("Runs")
            .value("number", Event.Numbered::number)
            .value("settings", row -> row.run().settings())
            .value("fuelLitres", row -> orNull(row.run().fuelLitres()))
            .value("coldKpa", row -> row.run().tyres().coldKpa())
            .value("hotKpa", row -> row.run().tyres().hotKpa())
            .value(
                    "lapsS",
                    row -> row.run().laps().stream()
                            .map(EventRun.TimedLap::time)
                            .toList())
            .value("differenceExpectedS", row -> orNull(row.run().expected().difference()))
            .value("expectedDoubtS", row -> orNull(row.run().expected().deviation()))
            .value("driver", row -> row.run().words().driver())
            .value("tyres", row -> row.run().words().tyres())
            .value("remark", row -> row.run().words().remark());

    public EventReport {
        changes = List.copyOf(changes);
        files = Map.copyOf(files);
    }

    /** The report of an event. */
    public static EventReport of(Event event, Map<String, String> files) {
        return new EventReport(event, EventChange.of(event), files, Optional.empty(), Optional.empty());
    }

    /**
     * The same with what takes laps of the model: pressures to set next, and the fit of the car.
     *
     * @throws dev.lapwright.fault.LapwrightException if readings or logs cannot be used
     */
    public EventReport inFull(EventRuns runs, StudyRun how) {
        return new EventReport(event, changes, files, runs.pressuresToSet(), runs.fit(how));
    }

    private static Double orNull(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    /** All that is to be said, for people, machines and files. */
    public Report report() {
        Report report = new Report();
        Car car = event.car();
        report.title(
                Report.verbatim(event.name()),
                ": " + Report.verbatim(car.name()) + " at "
                        + Report.verbatim(event.track().name()) + ", "
                        + count(event.runs().size(), "run"));
        report.gap();
        if (event.runs().isEmpty()) {
            report.paragraph("No run yet: 'lapwright event run' adds one.");
        } else {
            report.rows(runs(), event.runs());
            words(report);
        }
        for (EventChange change : changes) {
            report.gap()
                    .hanging(
                            "Run " + change.run() + ": ",
                            Report.verbatim(change.after()) + " after " + Report.verbatim(change.before()) + ". "
                                    + String.join(" ", said(change)));
        }
        tyres(report);
        pressures.ifPresent(study -> append(report, "Pressures", study.report()));
        fit.ifPresent(study -> append(report, "Fit to all laps with speeds", study.report()));
        report.gap().item("Now", Report.verbatim(now()) + ", to which commands here add what they are told");
        CAUTIONS.forEach(report::caution);
        pressures.ifPresent(study -> report.field("pressures", study.report().fields()));
        fit.ifPresent(study -> report.field("fit", study.report().fields()));
        return report.field("kind", "event/1")
                .field("name", event.name())
                .field("version", version())
                .field("inputsSha256", hash())
                .field("car", car.name())
                .field("circuit", event.track().name())
                .field("runs", RUNS_FOR_MACHINES, event.runs())
                .field("changes", changes.stream().map(EventReport::fields).toList())
                .field("settingsNow", event.settingsNow())
                .field("cautions", CAUTIONS);
    }

    /** Puts a study's report into this one, under a title of its own. */
    private static void append(Report report, String title, Report study) {
        report.gap().title(title, "");
        study.blocks().stream()
                .dropWhile(block -> block instanceof Report.Title)
                .forEach(report::add);
    }

    /** Version of the program that says it. */
    public static String version() {
        String version = EventReport.class.getPackage().getImplementationVersion();
        return version == null ? "unreleased" : version;
    }

    /** SHA-256 of all files of the event, by their names. */
    private String hash() {
        return EventPack.sha256(JsonLayout.text(new TreeMap<>(files)));
    }

    private static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }

    private String now() {
        return event.label(EventRun.of(event.settingsNow()));
    }

    private Table<Event.Numbered> runs() {
        return Table.<Event.Numbered>of("Runs")
                .number("", "run", "", Numbers.fixed(0), Event.Numbered::number)
                .names("", "setup", row -> event.label(row.run()))
                .number("", "laps", "", Numbers.fixed(0), row -> flying(row.run()).length)
                .text("best", "m:ss.mmm", row -> lap(flying(row.run()), 0))
                .text("median", "m:ss.mmm", row -> lap(flying(row.run()), 0.5))
                .text("expected", "s", row -> expected(row.run().expected()))
                .text(
                        "fuel",
                        "l",
                        row -> row.run().fuelLitres().isPresent()
                                ? Numbers.plain(row.run().fuelLitres().getAsDouble())
                                : "");
    }

    /** Flying laps, fastest first. */
    private static double[] flying(EventRun run) {
        return run.laps().stream()
                .filter(lap -> lap.flag() == TimingLog.Flag.NONE)
                .mapToDouble(EventRun.TimedLap::time)
                .sorted()
                .toArray();
    }

    private static String lap(double[] sorted, double share) {
        if (sorted.length == 0) {
            return "";
        }
        double place = share * (sorted.length - 1);
        int below = (int) Math.floor(place);
        int above = (int) Math.ceil(place);
        return Numbers.lapTime(sorted[below] + (place - below) * (sorted[above] - sorted[below]));
    }

    private static String expected(EventRun.Expected expected) {
        return expected.difference().isPresent()
                ? Numbers.signed(expected.difference().getAsDouble(), 2)
                : "";
    }

    private void words(Report report) {
        boolean any = false;
        for (Event.Numbered numbered : event.runs()) {
            EventRun.Words words = numbered.run().words();
            List<String> said = new ArrayList<>();
            if (!words.driver().isEmpty()) {
                said.add("the driver: “" + Report.verbatim(words.driver()) + "”");
            }
            if (!words.tyres().isEmpty()) {
                said.add("tyres: " + Report.verbatim(words.tyres()));
            }
            if (!words.remark().isEmpty()) {
                said.add(Report.verbatim(words.remark()));
            }
            if (!said.isEmpty()) {
                if (!any) {
                    report.gap();
                }
                any = true;
                report.hanging("Run " + numbered.number() + ": ", String.join("; ", said));
            }
        }
    }

    /** Expected, seen, together. */
    private static List<String> said(EventChange change) {
        List<String> said = new ArrayList<>();
        if (change.expected().difference().isPresent()) {
            said.add("Expected " + Numbers.signed(change.expected().difference().getAsDouble(), 2) + " s a lap"
                    + (change.expected().deviation().isPresent()
                            ? ", give or take "
                                    + Numbers.fixed(
                                            1.96 * change.expected().deviation().getAsDouble(), 2)
                            : "")
                    + ".");
        } else {
            said.add("Nothing was expected of it.");
        }
        if (change.seen().isEmpty()) {
            said.add("No laps with both yet.");
            return said;
        }
        EvidenceResult seen = change.seen().get();
        said.add(EvidenceReport.verdict(seen));
        seen.comparison()
                .flatMap(EvidenceResult.Comparison::together)
                .ifPresent(together -> said.add(together(together)));
        return said;
    }

    private static String together(NormalMixture together) {
        return "Together " + Numbers.signed(together.mean(), 2) + " s, give or take "
                + Numbers.fixed(together.interval(0.05).half(), 2) + ".";
    }

    private static Map<String, Object> fields(EventChange change) {
        Optional<EvidenceResult.Comparison> seen = change.seen().flatMap(EvidenceResult::comparison);
        Optional<EvidenceResult.Difference> difference = seen.flatMap(EvidenceResult.Comparison::difference);
        Optional<NormalMixture> together = seen.flatMap(EvidenceResult.Comparison::together);
        return new Report()
                .field("run", change.run())
                .field("before", change.before())
                .field("after", change.after())
                .field("differenceExpectedS", orNull(change.expected().difference()))
                .field(
                        "differenceSeenS",
                        difference.map(EvidenceResult.Difference::mean).orElse(null))
                .field("seenHalfWidthS", difference.map(d -> d.once().half()).orElse(null))
                .field("differenceTogetherS", together.map(NormalMixture::mean).orElse(null))
                .field(
                        "finding",
                        seen.filter(s -> s.difference().isPresent())
                                .map(s -> s.verdict().finding().label())
                                .orElse(null))
                .field("said", String.join(" ", said(change)))
                .fields();
    }

    /** What the last readings say of pressures and treads. */
    private void tyres(Report report) {
        List<Event.Numbered> read = event.runs().stream()
                .filter(one -> !one.run().tyres().hotKpa().isEmpty()
                        || !one.run().tyres().treads().isEmpty())
                .toList();
        if (read.isEmpty()) {
            return;
        }
        Event.Numbered last = read.get(read.size() - 1);
        report.gap();
        EventRun.TyreReadings tyres = last.run().tyres();
        if (!tyres.hotKpa().isEmpty()) {
            report.item(
                    "Hot",
                    tyres.hotKpa().entrySet().stream()
                                    .map(one -> one.getKey() + " " + Numbers.fixed(one.getValue(), 0) + " kPa ("
                                            + Numbers.fixed(Unit.KILOPASCAL.convert(one.getValue(), Unit.PSI), 1)
                                            + " psi)"
                                            + risen(tyres, one.getKey(), one.getValue()))
                                    .collect(Collectors.joining(", "))
                            + " after run " + last.number());
        }
        tyres.treads().forEach((tyre, tread) -> report.item("Tread " + tyre, tread(tread)));
    }

    private static String risen(EventRun.TyreReadings tyres, String tyre, double hot) {
        Double cold = tyres.coldKpa().get(tyre);
        return cold == null ? "" : ", " + Numbers.signed(hot - cold, 0) + " kPa from cold";
    }

    private static String tread(TreadTemperatures tread) {
        return Arrays.stream(new double[] {tread.innerC(), tread.middleC(), tread.outerC()})
                        .mapToObj(t -> Numbers.fixed(t, 0))
                        .collect(Collectors.joining("/"))
                + " degC: camber " + way(tread.negativeCamber(), "negative camber") + ", pressure "
                + way(tread.pressure(), "pressure");
    }

    private static String way(TreadTemperatures.Way way, String what) {
        return switch (way) {
            case KEEP -> "as it is";
            case LESS -> "less " + what;
            case MORE -> "more " + what;
        };
    }
}
