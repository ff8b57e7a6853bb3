package dev.lapwright.cli.bench;

import dev.lapwright.brief.BriefChoices;
import dev.lapwright.cli.brief.BriefTyresAndFuel;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.lap.Lap;
import dev.lapwright.report.Report;
import dev.lapwright.results.BalanceReport;
import dev.lapwright.results.GearingReport;
import dev.lapwright.results.LapTrace;
import dev.lapwright.results.StintReport;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.study.balance.Balance;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.gearing.Gearing;
import dev.lapwright.study.gearing.GearingResult;
import dev.lapwright.study.pressures.TyreEnergy;
import dev.lapwright.study.stint.RaceLength;
import dev.lapwright.study.stint.Stint;
import dev.lapwright.tyre.Wheel;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Answers of the views beside the lap: a report, and what is drawn above it for the setup in hand and for the reference. */
final class ViewAnswer {
    /** Views there are, in the order in which the page shows them. */
    static final List<String> VIEWS = List.of("lap", "balance", "gears", "air", "tyres");

    private static final int SECONDS_PER_MINUTE = 60;

    /** An upshift so short a time before braking is pointed out, s; as the command has it. */
    private static final double BEFORE_BRAKING = 1;

    private final Question question;
    private final Sheet sheet;
    private final LapAnswer now;

    ViewAnswer(Question question, Sheet sheet, LapAnswer now) {
        this.question = question;
        this.sheet = sheet;
        this.now = now;
    }

    /** The answer; empty for the lap, which has been told. */
    Optional<Map<String, Object>> tree(String view, StudyRun how) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "view");
        tree.put("view", view);
        try {
            switch (view) {
                case "balance" -> balance(tree);
                case "gears" -> gears(tree, how);
                case "air" -> air(tree);
                case "tyres" -> tyres(tree, how);
                default -> {
                    return Optional.empty();
                }
            }
        } catch (StudyStoppedException stopped) {
            throw stopped;
        } catch (LapwrightException none) {
            tree.put("failure", ReportBlocks.told(none.getMessage()));
        }
        return Optional.of(tree);
    }

    /** The reference's lap, if there is one and it is another. */
    private Optional<Lap> held() {
        if (question.pins().isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(sheet.lap(question.reference()));
        } catch (LapwrightException none) {
            return Optional.empty();
        }
    }

    private void balance(Map<String, Object> tree) {
        BalanceResult result = Balance.of(now.lap()).run();
        tree.put("now", phases(result));
        held().ifPresent(lap -> tree.put("reference", phases(Balance.of(lap).run())));
        tree.put("blocks", ReportBlocks.of(new BalanceReport(now.subject(), result, Optional.empty()).report()));
    }

    private static List<Map<String, Object>> phases(BalanceResult result) {
        List<Map<String, Object>> corners = new ArrayList<>();
        for (BalanceResult.CornerBalance corner : result.corners()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("label", corner.corner().label());
            for (BalancePhase phase : BalancePhase.values()) {
                double rearLessFront = corner.in(phase)
                        .map(found -> LapTrace.g(found.margins().understeer()))
                        .orElse(Double.NaN);
                one.put(phase.label(), rearLessFront);
            }
            corners.add(one);
        }
        return corners;
    }

    private void gears(Map<String, Object> tree, StudyRun how) {
        GearingResult result = Gearing.of(
                        now.subject().car(),
                        now.subject().driven(),
                        now.subject().day())
                .run(how);
        tree.put("now", gears(result));
        held().ifPresent(lap -> tree.put(
                "reference",
                gears(Gearing.of(lap.vehicle().car(), lap.track(), lap.vehicle().conditions())
                        .run(how))));
        tree.put("blocks", ReportBlocks.of(new GearingReport(now.subject(), BEFORE_BRAKING, result).report()));
    }

    private static Map<String, Object> gears(GearingResult result) {
        Map<String, Object> tree = new LinkedHashMap<>();
        List<Map<String, Object>> gears = new ArrayList<>();
        double[] time = result.asGiven().baseline().timeInGear();
        for (GearingResult.Gear gear : result.gears()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("gear", gear.gear());
            one.put("fromKmh", LapTrace.kmh(gear.fromSpeed()));
            one.put("toKmh", LapTrace.kmh(gear.toSpeed()));
            one.put("limitKmh", LapTrace.kmh(gear.limitSpeed()));
            one.put("rpmPerKmh", gear.engineSpeedPerSpeed() / LapTrace.kmh(1));
            one.put("timeS", time[gear.gear() - 1]);
            gears.add(one);
        }
        tree.put("gears", gears);
        tree.put("topKmh", LapTrace.kmh(result.asGiven().baseline().top().speed()));
        double[] speeds = result.traction().speeds();
        double[] kmh = Arrays.stream(speeds).map(LapTrace::kmh).toArray();
        int[] all = new int[speeds.length];
        Arrays.setAll(all, i -> i);
        tree.put("speedKmh", new Wire.Column(kmh, all, 1));
        tree.put("resistanceN", new Wire.Column(result.traction().resistance(), all, 0));
        tree.put(
                "forceN",
                result.traction().forces().stream()
                        .map(force -> new Wire.Column(force, all, 0))
                        .toList());
        return tree;
    }

    /** What the air does; how top speed trades against cornering is drawn from the landscapes. */
    private void air(Map<String, Object> tree) {
        tree.put("now", trade(now.lap()));
        held().ifPresent(lap -> tree.put("reference", trade(lap)));
        Report balance = new BalanceReport(now.subject(), Balance.of(now.lap()).run(), Optional.empty()).report();
        tree.put("blocks", ReportBlocks.tables(balance, "Downforce over air speed"));
    }

    private static Map<String, Object> trade(Lap lap) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("topKmh", LapTrace.kmh(lap.figures().topSpeed()));
        tree.put("cornerKmh", LapTrace.kmh(lap.figures().meanCornerSpeed()));
        return tree;
    }

    private void tyres(Map<String, Object> tree, StudyRun how) {
        tree.put("now", energy(now.lap()));
        held().ifPresent(lap -> tree.put("reference", energy(lap)));
        RaceLength usual = BriefChoices.DEFAULT.racing().length();
        RaceLength race = new RaceLength(
                0,
                question.minutes() * SECONDS_PER_MINUTE,
                usual.formationLaps(),
                usual.formationShare(),
                usual.reserveLaps());
        Stint stint = Stint.of(
                now.subject().car(), now.subject().driven(), now.subject().day(), race);
        tree.put(
                "blocks",
                ReportBlocks.of(
                        new StintReport(now.subject(), stint.run(how), BriefTyresAndFuel.KG_PER_LITRE).report()));
    }

    private static Map<String, Object> energy(Lap lap) {
        TyreEnergy energy = TyreEnergy.of(lap);
        Map<String, Object> tree = new LinkedHashMap<>();
        for (Wheel wheel : Wheel.values()) {
            tree.put(wheel.code(), energy.of(wheel) / 1000);
        }
        return tree;
    }
}
