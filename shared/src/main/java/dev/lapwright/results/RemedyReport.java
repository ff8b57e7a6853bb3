package dev.lapwright.results;

import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.study.balance.BalanceComplaint;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.Remedies;
import dev.lapwright.study.balance.RemedyResult;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Part of a report on balance that says what to turn against the driver's complaint, best first.
 *
 * @param car as it stands
 * @param result what was found
 */
record RemedyReport(Car car, RemedyResult result) {
    /** Name of the table's file. */
    static final String TABLE = "remedies.csv";

    private static final int MOST_ROWS = 15;

    /** Adds what the model says of the complaint. */
    void told(Report report) {
        BalanceComplaint complaint = result.complaint();
        String against = "Against " + complaint.label() + ", " + complaint.where() + ".";
        String verdict = result.isConfirmed()
                ? "The model agrees: "
                : "The model does not see it, so look first for a cause that it does not know: ";
        report.paragraph(Report.strong(against) + " " + verdict + "the " + (result.understeer() > 0 ? "front" : "rear")
                        + " axle gives up first there, by "
                        + Numbers.fixed(Math.abs(LapTrace.g(result.understeer())), 3) + " g"
                        + (complaint.isOfSeveral() ? " in the mean." : "."))
                .gap();
    }

    /** Adds what people read of all steps. */
    void addTo(Report report) {
        remedies(report);
        belowTheLimit(report);
        result.failures().forEach(failure -> report.paragraph("Not looked at: " + failure + "."));
    }

    /** Where its steps can hurt. */
    Set<Caution> cautions() {
        Set<Caution> cautions = EnumSet.noneOf(Caution.class);
        result.remedies().forEach(remedy -> cautions.addAll(remedy.cautions()));
        return cautions;
    }

    /** Declares the table of all steps against all complaints. */
    static void table(List<RemedyReport> against, Report report) {
        if (against.isEmpty()) {
            return;
        }
        List<RemedyResult.Remedy> all = against.stream()
                .flatMap(one -> Stream.concat(one.result().remedies().stream(), one.result().belowTheLimit().stream()))
                .toList();
        report.csv(TABLE, against.get(0).table(), all);
    }

    /** What was found, for machines. */
    Map<String, Object> fields() {
        Table<RemedyResult.Remedy> table = steps().value("rearLessFrontShiftG", RemedyReport::shifts)
                .value("disturbs", RemedyReport::disturbed)
                .value(
                        "cautions",
                        remedy -> remedy.cautions().stream()
                                .sorted()
                                .map(Caution::text)
                                .toList());
        return new Report()
                .field("tendency", result.complaint().tendency())
                .field("phase", result.complaint().phase().label())
                .field("corner", corner())
                .field("rearLessFrontG", LapTrace.g(result.understeer()))
                .field("confirmed", result.isConfirmed())
                .field("remedies", table, result.remedies())
                .field("belowTheLimit", table, result.belowTheLimit())
                .field("failures", result.failures())
                .fields();
    }

    private String corner() {
        BalanceComplaint complaint = result.complaint();
        return complaint.corner() > 0
                ? complaint.where()
                : complaint.kind().name().toLowerCase(Locale.ROOT);
    }

    private Table<RemedyResult.Remedy> steps() {
        return Table.<RemedyResult.Remedy>of("Remedies")
                .value("adjustment", RemedyResult.Remedy::adjustment)
                .value("from", RemedyResult.Remedy::from)
                .value("to", RemedyResult.Remedy::to)
                .words("", "change", this::change)
                .number("gainG", "gain", "g", Numbers.signed(3), remedy -> LapTrace.g(remedy.gain()))
                .number("differenceS", "lap time", "s", Numbers.signed(3), RemedyResult.Remedy::difference)
                .number(
                        "gainPerTenthG",
                        "gain per tenth",
                        "g",
                        Numbers.fixed(3),
                        remedy -> LapTrace.g(remedy.gainPerTenth()))
                .value("gradientShiftDegPerG", RemedyReport::gradient);
    }

    private Table<RemedyResult.Remedy> table() {
        Table<RemedyResult.Remedy> table = steps();
        for (BalancePhase phase : BalancePhase.values()) {
            table.number(phase.label() + "G", phase.label(), "g", Numbers.signed(3), remedy -> shift(remedy, phase))
                    .with(Table.Trait.LESSER);
        }
        return table.value("disturbs", remedy -> String.join(" ", disturbed(remedy)))
                .words("", "disturbs", remedy -> String.join(", ", disturbed(remedy)));
    }

    private static Map<String, Double> shifts(RemedyResult.Remedy remedy) {
        Map<String, Double> shifts = new LinkedHashMap<>();
        for (BalancePhase phase : BalancePhase.values()) {
            shifts.put(phase.label(), shift(remedy, phase));
        }
        return shifts;
    }

    private static Double shift(RemedyResult.Remedy remedy, BalancePhase phase) {
        return LapTrace.g(remedy.shifts().getOrDefault(phase, Table.NOT_KNOWN));
    }

    private static List<String> disturbed(RemedyResult.Remedy remedy) {
        return remedy.disturbed().stream().map(BalancePhase::label).toList();
    }

    private static double gradient(RemedyResult.Remedy remedy) {
        // Degrees per g do not ask for the wheelbase.
        return new UndersteerGradient(remedy.gradientShift(), 1).degreesPerG();
    }

    private void remedies(Report report) {
        int count = result.remedies().size();
        if (count == 0) {
            report.line("No step of any adjustment of this car moves that limit by "
                    + Numbers.fixed(LapTrace.g(Remedies.NOTHING), 3) + " g.");
            return;
        }
        report.paragraph("Against " + result.complaint().label()
                        + ", one step each, best first: steps that cost no time that counts (less than "
                        + DifferenceWords.least() + ") by their gain of balance, then the others by"
                        + " gain per tenth of a second. Under the phases: the change, + is towards understeer.")
                .rows(table(), result.remedies().subList(0, Math.min(MOST_ROWS, count)));
        if (count > MOST_ROWS) {
            report.line((count - MOST_ROWS) + " more are in the result: --json, or --out.");
        }
    }

    private String change(RemedyResult.Remedy remedy) {
        return remedy.adjustment() + " " + Numbers.plain(remedy.from()) + " -> "
                + Numbers.with(remedy.to(), car.unitOf(remedy.adjustment()));
    }

    private void belowTheLimit(Report report) {
        if (result.belowTheLimit().isEmpty()) {
            return;
        }
        List<String> said = new ArrayList<>();
        for (RemedyResult.Remedy remedy : result.belowTheLimit()) {
            said.add(change(remedy) + " (" + Numbers.signed(gradient(remedy), 3) + " deg/g)");
        }
        report.gap().paragraph("Below the limit only, by the understeer gradient: " + String.join(", ", said) + ".");
    }
}
