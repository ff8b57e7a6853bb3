package dev.lapwright.results;

import dev.lapwright.brief.AdjustmentVerdicts;
import dev.lapwright.brief.BriefChoices;
import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.Heard;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapTimeDifference;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.study.robust.SettledVerdicts;
import dev.lapwright.study.sensitivity.SensitivityResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/**
 * A brief as JSON: each part as the document of its study holds it, without what all of them begin with. A part that could not
 * be had says why instead. Unrounded, the unit in each name; differences are minus where the car is faster.
 */
public final class BriefSummary {
    private static final double PERCENT = 100;
    private static final double SECONDS_PER_MINUTE = 60;

    private BriefSummary() {}

    /**
     * The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it.
     *
     * @param kgPerLitre density of the fuel
     * @param log the file of the laps driven, if there are any
     */
    public static Map<String, Object> tree(BriefResult brief, double kgPerLitre, Optional<LapLogFile> log) {
        Map<String, Object> tree =
                ResultHeader.of("brief/2", hash(brief), brief.car(), brief.track(), brief.conditions());
        tree.put("asked", asked(brief.choices()));
        tree.put("lap", LapReport.figures(brief.lap()));
        tree.put("map", map(brief.lap()));
        tree.put("places", brief.places().stream().map(BriefSummary::place).toList());
        tree.put("sensitivity", part(brief.sensitivity(), BriefSummary::sensitivity));
        tree.put("verdicts", part(brief.verdicts(), BriefSummary::verdicts));
        tree.put("suggestion", part(brief.suggestion(), BriefChanges::suggestion));
        tree.put("wings", part(brief.wings(), BriefChanges::wings));
        tree.put("exchange", part(brief.exchange(), BriefSummary::exchange));
        tree.put("gearing", part(brief.gearing(), gearing -> headless(GearingReport.fields(gearing))));
        tree.put("balance", part(brief.balance(), balance -> headless(BalanceReport.fields(balance))));
        tree.put("pressures", part(brief.pressures(), BriefSummary::pressures));
        tree.put("stint", part(brief.stint(), stint -> headless(new StintReport(null, stint, kgPerLitre).fields())));
        tree.put("tests", part(brief.tests(), BriefChanges::tests));
        brief.heard().ifPresent(heard -> tree.put("driver", driver(heard)));
        tree.put("proof", part(brief.debrief().proof(), proof -> BriefChanges.proof(proof, log)));
        return tree;
    }

    /** What a driver says, in the units of people. */
    static Map<String, Object> word(DriverWord word) {
        Map<String, Object> tree = new LinkedHashMap<>();
        if (word instanceof DriverWord.OfLimit limit) {
            tree.put("corner", limit.word().corner());
            tree.put("first", limit.word().first().name().toLowerCase(Locale.ROOT));
            tree.put("errorPercent", PERCENT * limit.word().error());
        } else if (word instanceof DriverWord.OfFigure figure) {
            boolean time = figure.reading() == DriverWord.Reading.LAP_TIME;
            tree.put("reading", figure.reading().name().toLowerCase(Locale.ROOT).replace('_', ' '));
            tree.put("corner", figure.corner());
            tree.put(time ? "valueS" : "valueKmh", time ? figure.value() : LapTrace.kmh(figure.value()));
            tree.put(time ? "errorS" : "errorKmh", time ? figure.error() : LapTrace.kmh(figure.error()));
        }
        return tree;
    }

    private static Map<String, Object> driver(Heard heard) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("drawn", heard.drawn());
        tree.put("goingWithIt", heard.left());
        heard.before().ifPresent(before -> {
            tree.put("planWithoutItLowS", before.low());
            tree.put("planWithoutItHighS", before.high());
            tree.put("planWithoutItGainPercent", PERCENT * before.gains() / before.laps());
        });
        return tree;
    }

    /** What a part holds, or why it is missing and what to do. */
    static <T> Object part(BriefResult.Part<T> part, Function<T, Object> written) {
        return part.value().map(written).orElseGet(() -> {
            Map<String, Object> missing = new LinkedHashMap<>();
            missing.put("missing", part.problem());
            missing.put("remedy", part.remedy());
            return missing;
        });
    }

    /** The document of a study without what the brief's own says already. */
    static Map<String, Object> headless(Map<String, Object> study) {
        List.of("version", "inputsSha256", "car", "circuit", "circuitLengthM", "settings", "conditions")
                .forEach(study::remove);
        return study;
    }

    /** Of what was asked, and the laps driven among it. */
    private static String hash(BriefResult brief) {
        Map<String, Object> inputs = new LinkedHashMap<>();
        inputs.put("lap", InputHash.of(brief.lap()));
        inputs.put("asked", asked(brief.choices()));
        BriefChoices.Logged logged = brief.choices().logged();
        inputs.put("pairs", logged.pressures().toString());
        inputs.put("evidence", logged.evidence().toString());
        brief.debrief().fit().value().ifPresent(fit -> inputs.put("fit", FitReport.hash(fit)));
        logged.times()
                .ifPresent(laps -> inputs.put(
                        "laps", laps.laps().stream().map(lap -> "Timed" + lap).toList()));
        return InputHash.sha256(JsonLayout.text(inputs));
    }

    private static Map<String, Object> asked(BriefChoices choices) {
        Map<String, Object> tree = new LinkedHashMap<>();
        BriefChoices.Racing race = choices.racing();
        tree.put(
                "scatterS",
                choices.testing().scatter().isPresent()
                        ? choices.testing().scatter().getAsDouble()
                        : null);
        tree.put("laps", choices.testing().laps());
        tree.put("vary", choices.vary());
        tree.put("raceLaps", race.length().laps());
        tree.put("raceMinutes", race.length().seconds() / SECONDS_PER_MINUTE);
        tree.put("formationLaps", race.length().formationLaps());
        tree.put("formationPercent", PERCENT * race.length().formationShare());
        tree.put("reserveLaps", race.length().reserveLaps());
        tree.put("consumptionRpm", InputHash.list(race.consumption().rpm()));
        tree.put("consumptionGPerKwh", InputHash.list(race.consumption().gramPerKwh()));
        tree.put("compound", race.compound().name());
        tree.put("grip", race.compound().grip());
        tree.put("wearPercentPerLap", PERCENT * race.compound().wear());
        tree.put("cliffLap", race.compound().cliffLap());
        tree.put("cliffWearPercentPerLap", PERCENT * race.compound().cliffWear());
        tree.put("draws", choices.draws());
        if (!choices.words().isEmpty()) {
            tree.put("driver", choices.words().stream().map(BriefSummary::word).toList());
        }
        tree.put("pressurePairs", choices.logged().pressures().size());
        tree.put("runsWithSpeeds", choices.logged().runs().size());
        tree.put(
                "lapsLogged",
                choices.logged().times().map(log -> log.laps().size()).orElse(0));
        return tree;
    }

    /** Where the car is and how fast, one value for each station; to nine digits. */
    private static Map<String, Object> map(Lap lap) {
        Map<String, double[]> columns = LapTrace.columns(lap);
        Map<String, Object> tree = new LinkedHashMap<>();
        for (String name : List.of("distanceM", "eastM", "northM", "speedKmh")) {
            List<Double> values = new ArrayList<>();
            for (double value : columns.get(name)) {
                values.add(CsvText.rounded(value));
            }
            tree.put(name, values);
        }
        return tree;
    }

    private static Map<String, Object> place(BriefResult.PlaceShare place) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", place.label());
        tree.put("kind", place.isCorner() ? "corner" : "straight");
        tree.put("fromM", place.from());
        tree.put("toM", place.to());
        tree.put("timeS", place.drive().time());
        tree.put("lapPercent", PERCENT * place.share());
        tree.put("entrySpeedKmh", LapTrace.kmh(place.drive().entrySpeed()));
        tree.put("minimumSpeedKmh", LapTrace.kmh(place.drive().minimumSpeed()));
        tree.put("topSpeedKmh", LapTrace.kmh(place.drive().topSpeed()));
        tree.put("exitSpeedKmh", LapTrace.kmh(place.drive().exitSpeed()));
        Map<String, Object> limits = new LinkedHashMap<>();
        place.limits().forEach((limit, share) -> limits.put(limit.label(), PERCENT * share));
        tree.put("limitedByPercentOfTime", limits);
        return tree;
    }

    private static Map<String, Object> sensitivity(BriefResult.Priorities found) {
        Map<String, Object> tree = headless(SensitivityReport.fields(found.study()));
        tree.put("differenceCountsFromS", LapTimeDifference.COUNTS);
        tree.put("worthChanging", names(found.worthChanging()));
        tree.put("notWorthChanging", names(found.notWorthChanging()));
        Map<String, Object> alone = new LinkedHashMap<>();
        found.reasons().forEach(kept -> alone.put(kept.name(), kept.reason()));
        tree.put("leftAlone", alone);
        return tree;
    }

    private static List<String> names(List<SensitivityResult.Worth> worths) {
        return worths.stream().map(worth -> worth.adjustment().name()).toList();
    }

    private static Map<String, Object> verdicts(AdjustmentVerdicts found) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("inThePlan", names(found.planned()));
        tree.put("gains", names(found.gains()));
        tree.put("alreadyRight", names(found.right()));
        tree.put("noDifference", names(found.alike()));
        tree.put("notInThisModel", names(found.unseen()));
        tree.put("cannotBeTold", names(found.untold()));
        tree.put("doubt", part(found.doubt(), BriefSummary::drawn));
        return tree;
    }

    private static Map<String, Object> drawn(SettledVerdicts.Result found) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("draws", found.draws());
        tree.put("seed", found.seed());
        tree.put("lapsDriven", found.laps());
        return tree;
    }

    private static Map<String, Object> exchange(BriefResult.AeroExchange exchange) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("dragAreaM2", exchange.dragArea());
        tree.put("downforceAreaM2", exchange.downforceArea());
        tree.put("differenceOnePercentLessDragS", exchange.lessDrag());
        tree.put("differenceOnePercentMoreDownforceS", exchange.moreDownforce());
        tree.put("differenceOnePercentMoreGripS", exchange.moreGrip());
        tree.put("dragForDownforce", exchange.dragForDownforce());
        return tree;
    }

    private static Map<String, Object> pressures(BriefResult.StartPressures start) {
        Map<String, Object> tree = headless(PressuresReport.fields(start.study()));
        tree.put("logged", start.logged());
        tree.put("supposedGasC", start.gasTempC());
        tree.put("frontHotStandsAtKpaGauge", start.hotFrontKpa());
        tree.put("rearHotStandsAtKpaGauge", start.hotRearKpa());
        start.worth().ifPresent(worth -> {
            Map<String, Object> wanted = new LinkedHashMap<>();
            wanted.put("differenceS", worth.difference());
            wanted.put("differenceLowS", worth.doubt().map(one -> one.low()).orElse(null));
            wanted.put("differenceHighS", worth.doubt().map(one -> one.high()).orElse(null));
            wanted.put("beforeAllRuns", worth.isGain());
            tree.put("setAsWanted", wanted);
        });
        return tree;
    }
}
