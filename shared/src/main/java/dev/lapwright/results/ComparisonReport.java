package dev.lapwright.results;

import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.compare.Comparison;
import dev.lapwright.study.robust.ModelChoices;
import dev.lapwright.study.robust.RobustnessResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Report of two laps side by side. Differences are the second lap less the first: minus where the second is faster.
 *
 * @param subject what is compared with
 * @param name of the other, for people
 * @param other what is compared
 * @param comparison what was found
 * @param doubt how the other setup stands on drawn cars; empty if none were drawn, and for two cars
 * @param choices what the difference becomes as the model chooses otherwise; empty as well then
 */
public record ComparisonReport(
        Subject subject,
        String name,
        Subject other,
        Comparison comparison,
        Optional<Standings> doubt,
        Optional<ModelChoices> choices) {
    /** Name of the trace's file. */
    public static final String TRACE = "trace.csv";

    private static final String HANGS = "The difference";

    private static final Table<Comparison.Part.Drive> DRIVE = Table.<Comparison.Part.Drive>of("How a part was driven")
            .value("timeS", Comparison.Part.Drive::time)
            .value("entrySpeedKmh", drive -> LapTrace.kmh(drive.entrySpeed()))
            .value("minimumSpeedKmh", drive -> LapTrace.kmh(drive.minimumSpeed()))
            .value("topSpeedKmh", drive -> LapTrace.kmh(drive.topSpeed()))
            .value("exitSpeedKmh", drive -> LapTrace.kmh(drive.exitSpeed()));

    private static final Table<ModelChoices.Alternative> CHOICES = Table.<ModelChoices.Alternative>of(
                    "Choices of the model")
            .value("choice", ModelChoices.Alternative::choice)
            .value("taken", ModelChoices.Alternative::taken)
            .value("weight", ModelChoices.Alternative::weight)
            .value("differenceS", ModelChoices.Alternative::difference);

    private static final Table<Comparison.Part> PARTS = Table.<Comparison.Part>of("Parts of the lap")
            .names("name", "part", Comparison.Part::label)
            .value("kind", part -> part.isCorner() ? "corner" : "straight")
            .number("fromM", "from", "m", Numbers.fixed(0), Comparison.Part::from)
            .value("toM", Comparison.Part::to)
            .number("", "time", "s", Numbers.fixed(3), part -> part.first().time())
            .with(Table.Trait.LESSER)
            .number("differenceS", "delta", "s", Numbers.signed(3), Comparison.Part::difference)
            .value("differenceByCauseS", part -> causes(part.byCause()))
            .text("slowest", "km/h", part -> Numbers.kmh(part.first().minimumSpeed()))
            .text("other slowest", "km/h", part -> Numbers.kmh(part.second().minimumSpeed()))
            .text("fastest", "km/h", part -> Numbers.kmh(part.first().topSpeed()))
            .with(Table.Trait.LESSER)
            .text("other fastest", "km/h", part -> Numbers.kmh(part.second().topSpeed()))
            .with(Table.Trait.LESSER)
            .words("", "mostly by", part -> part.mainCause().map(Limit::label).orElse(""))
            .value("drive", part -> DRIVE.map(part.first()))
            .value("otherDrive", part -> DRIVE.map(part.second()));

    /** The same of two laps that no cars were drawn for. */
    public ComparisonReport(Subject subject, String name, Subject other, Comparison comparison) {
        this(subject, name, other, comparison, Optional.empty(), Optional.empty());
    }

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading().item("Against", against()).gap();
        items(report);
        report.gap()
                .line("By part of the lap (minus is faster than the setup above):")
                .rows(PARTS, comparison.parts())
                .gap()
                .paragraph(reading());
        lessIsSlower().ifPresent(why -> report.gap().paragraph(why));
        if (!isSame()) {
            doubt.ifPresent(drawn -> {
                drawn.said(HANGS).forEach(sentence -> report.gap().paragraph(sentence));
                choices.ifPresent(made -> report.gap().paragraph(chosen(made)));
                report.gap().paragraph(drawn.drawn());
            });
        }
        Cautions.of(comparison.first()).forEach(report::caution);
        Cautions.of(comparison.second())
                .forEach(caution -> report.caution("Caution with " + Report.verbatim(name) + ":", caution));
        fields(report);
        return report.csv(TRACE, table(), places());
    }

    /** Both laps station by station: a list for each column. */
    public Report trace() {
        return new Report()
                .fields(ResultHeader.of("comparison-trace/1", hash(), comparison.first()))
                .field("otherCar", other.car().name())
                .field("otherSettings", other.car().settings())
                .columns(table(), places());
    }

    /** Whether the two cars come from two documents. */
    private boolean isOfTwoCars() {
        return !subject.bare().name().equals(other.bare().name());
    }

    /** What is compared with, in a chart. */
    public String firstName() {
        return isOfTwoCars() ? subject.car().name() : subject.setupText();
    }

    private void fields(Report report) {
        report.fields(ResultHeader.of("comparison/1", hash(), comparison.first()))
                .field("model", LapModel.of(comparison.first()).word())
                .field("otherModel", LapModel.of(comparison.second()).word())
                .field("otherUncheckedAtM", LapModel.unchecked(comparison.second()))
                .field("otherCar", other.car().name())
                .field("otherSettings", other.car().settings())
                .field("otherConditions", ResultHeader.day(other.day()))
                .field("lapTimeS", comparison.first().time())
                .field("otherLapTimeS", comparison.second().time())
                .field("differenceS", comparison.difference())
                .field("sectorEndsM", InputHash.list(comparison.first().track().sectorEnds()))
                .field("differenceBySectorS", InputHash.list(comparison.bySector()))
                .field("differenceInCornersS", comparison.inCorners())
                .field("differenceOnStraightsS", comparison.onStraights())
                .field("differenceByCauseS", causes(comparison.byCause()))
                .field("parts", PARTS, comparison.parts())
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("other", name)
                .field("otherSetup", other.setup().name())
                .field("cautions", Cautions.of(comparison.first()))
                .field("otherCautions", Cautions.of(comparison.second()))
                .field("reading", reading());
        lessIsSlower().ifPresent(why -> report.field("lessIsSlower", why));
        doubt.ifPresent(drawn -> report.fields(drawn.fields(standing()))
                .field("doubt", drawn.tree())
                .field("doubtReading", drawn.said(HANGS)));
        choices.ifPresent(made -> report.field("modelChoices", CHOICES, made.alternatives())
                .field("modelChoicesDeviationS", made.deviation()));
    }

    /** What the difference becomes as the model chooses otherwise, apart from what is not known of the car. */
    private String chosen(ModelChoices made) {
        List<String> said = new ArrayList<>();
        made.byChoice().forEach((choice, ways) -> {
            List<String> taken = new ArrayList<>();
            for (ModelChoices.Alternative way : ways) {
                taken.add(way.taken() + " "
                        + (Double.isNaN(way.difference())
                                ? "no lap"
                                : Numbers.signed(way.difference(), digits()) + " s"));
            }
            said.add(choice + ": " + String.join(", ", taken));
        });
        return "Apart from that, by choices of the model's own (of even weight, ours): " + String.join("; ", said)
                + ". Together they make a standard deviation of " + Numbers.fixed(made.deviation(), digits()) + " s.";
    }

    /** Decimals of a difference that its doubt leaves. */
    private int digits() {
        return standing() == null
                ? Standings.decimals(0)
                : Standings.decimals(standing().halfWidth());
    }

    private String hash() {
        InputHash hash = new InputHash()
                .with("first", InputHash.of(comparison.first()))
                .with("second", InputHash.of(comparison.second()));
        doubt.ifPresent(drawn -> drawn.addTo(hash));
        return hash.sha256();
    }

    /** How the other setup stands on drawn cars; null where none were drawn. */
    private RobustnessResult.Standing standing() {
        return doubt.map(drawn -> drawn.result().standings().get(0)).orElse(null);
    }

    private static Map<String, Object> causes(Map<Limit, Double> byCause) {
        Map<String, Object> tree = new LinkedHashMap<>();
        byCause.forEach((limit, seconds) -> tree.put(limit.label(), seconds));
        return tree;
    }

    private Table<Integer> table() {
        Lap first = comparison.first();
        Lap second = comparison.second();
        Map<String, double[]> columns = new LinkedHashMap<>();
        columns.put("distanceM", first.column(Channel.DISTANCE));
        columns.put("differenceS", comparison.behind());
        columns.put("speedKmh", speeds(first));
        columns.put("otherSpeedKmh", speeds(second));
        return Table.of("Two laps station by station", columns)
                .value("limitedBy", station -> first.limit(station).label())
                .value("otherLimitedBy", station -> second.limit(station).label());
    }

    private Iterable<Integer> places() {
        return Table.places(comparison.first().count());
    }

    private static double[] speeds(Lap lap) {
        double[] speeds = lap.column(Channel.SPEED);
        for (int i = 0; i < speeds.length; i++) {
            speeds[i] = LapTrace.kmh(speeds[i]);
        }
        return speeds;
    }

    private String against() {
        String car = isOfTwoCars() ? Report.verbatim(other.car().name()) + ", " : "";
        boolean otherDay = !other.day().equals(subject.day());
        String model = comparison.second().isByAnotherModel() ? ", by the fuller model" : "";
        return car + other.setupTold() + model + (otherDay ? "; on another day: " + Subject.told(other.day()) : "");
    }

    private void items(Report report) {
        List<String> sectors = new ArrayList<>();
        for (double sector : comparison.bySector()) {
            sectors.add(Numbers.signed(sector, digits()));
        }
        report.item(
                comparison.first().track().isClosed() ? "Lap time" : "Run time",
                Numbers.lapTime(comparison.first().time()) + " against "
                        + Report.strong(Numbers.lapTime(comparison.second().time()))
                        + ": " + Standings.signed(comparison.difference(), standing()) + " s");
        if (!isSame()) {
            doubt.ifPresent(drawn -> report.item("In doubt", drawn.told(standing())));
        }
        report.item("Sectors", String.join(", ", sectors) + " s")
                .item("Corners", Numbers.signed(comparison.inCorners(), digits()) + " s")
                .item("Straights", Numbers.signed(comparison.onStraights(), digits()) + " s")
                .item("By cause", causes() + " s");
    }

    private String causes() {
        List<Map.Entry<Limit, Double>> causes =
                new ArrayList<>(comparison.byCause().entrySet());
        causes.sort((a, b) -> Double.compare(Math.abs(b.getValue()), Math.abs(a.getValue())));
        List<String> said = new ArrayList<>();
        causes.forEach(cause -> said.add(cause.getKey().label() + " " + Numbers.signed(cause.getValue(), digits())));
        return String.join(", ", said);
    }

    /** Where the lap is won and lost, in a sentence or two. */
    private String reading() {
        if (isSame()) {
            return Report.verbatim(name) + " drives the same lap.";
        }
        String split = split();
        return Report.verbatim(name) + " is " + Standings.said(comparison.difference(), standing())
                + (split.isEmpty() ? "" : ": " + split) + "." + most();
    }

    /** The difference in words, with the digits that its doubt leaves. */
    public String than(String what) {
        return Standings.than(comparison.difference(), standing(), what);
    }

    /** How sure the difference is, and what to measure first, a sentence each; empty if no cars were drawn. */
    public List<String> inDoubt() {
        List<String> said = new ArrayList<>();
        doubt.ifPresent(drawn -> {
            said.add(drawn.told(standing()) + ".");
            said.addAll(drawn.said(HANGS));
        });
        return said;
    }

    /** The same without the difference itself: what corners and straights make of it, and where most of it arises; empty for the same lap. */
    public String where() {
        String split = split();
        return isSame() ? "" : ((split.isEmpty() ? "" : split + ".") + most()).strip();
    }

    /** The parts of the lap alone. */
    public Report parts() {
        return new Report().rows(PARTS, comparison.parts());
    }

    private Comparison.Part lost() {
        return comparison.parts().stream()
                .max(Comparator.comparingDouble(Comparison.Part::difference))
                .orElseThrow();
    }

    private Comparison.Part gained() {
        return comparison.parts().stream()
                .min(Comparator.comparingDouble(Comparison.Part::difference))
                .orElseThrow();
    }

    private boolean isSame() {
        return LapTimeDifference.isNone(lost().difference()) && LapTimeDifference.isNone(gained().difference());
    }

    private Optional<String> lessIsSlower() {
        return LessIsSlower.told(comparison, digits());
    }

    private String split() {
        List<Comparison.Part> parts = comparison.parts();
        boolean both = parts.stream().anyMatch(Comparison.Part::isCorner)
                && parts.stream().anyMatch(part -> !part.isCorner());
        return both
                ? moved("in corners", comparison.inCorners()) + ", " + moved("on straights", comparison.onStraights())
                : "";
    }

    private String most() {
        StringBuilder text = new StringBuilder();
        if (LapTimeDifference.isSlower(lost().difference())) {
            text.append(" It loses most in ").append(place(lost())).append('.');
        }
        if (LapTimeDifference.isFaster(gained().difference())) {
            text.append(" It gains most in ").append(place(gained())).append('.');
        }
        return text.toString();
    }

    private String moved(String where, double difference) {
        if (LapTimeDifference.isNone(difference)) {
            return "nothing " + where;
        }
        return size(difference) + (difference > 0 ? " lost " : " gained ") + where;
    }

    private String size(double difference) {
        return Numbers.fixed(Math.abs(difference), digits()) + " s";
    }

    private String place(Comparison.Part part) {
        String cause = part.mainCause().map(Limit::label).orElse("");
        return Report.verbatim(part.label()) + ", " + size(part.difference())
                + (cause.isEmpty() ? "" : ", limited by " + cause);
    }
}
