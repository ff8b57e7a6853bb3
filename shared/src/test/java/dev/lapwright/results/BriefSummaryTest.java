package dev.lapwright.results;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import dev.lapwright.brief.Brief;
import dev.lapwright.brief.BriefResult;
import dev.lapwright.brief.SuggestedSetup;
import dev.lapwright.brief.TestPlan;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.evidence.TimingLog;
import dev.lapwright.fit.LimitWord;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.logs.LapLogFile;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.robust.DriverWord;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** A brief as JSON holds what was found, and says of each part that is missing why. */
@Tag("heavy")
class BriefSummaryTest {
    private static final Car CAR =
            Documents.car(TestDocuments.source("valid/car/complete.json")).with("rear-wing", 0);
    private static final Track TRACK = Documents.circuit(TestDocuments.source("valid/circuit/segments.json"));
    private static final Conditions DAY = Conditions.STANDARD;
    private static final BriefResult BEFORE = brief(Brief.of(CAR, TRACK, DAY));
    private static final LapLogFile LOG = log();
    private static final BriefResult AFTER = brief(Brief.of(CAR, TRACK, DAY).after(LOG.log()));

    private static BriefResult brief(Brief question) {
        return question.turning(List.of("rear-wing")).run();
    }

    private static JsonNode json(BriefResult brief, Optional<LapLogFile> log) {
        try {
            return new ObjectMapper().readTree(JsonLayout.text(BriefSummary.tree(brief, 0.75, log)));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static JsonNode before() {
        return json(BEFORE, Optional.empty());
    }

    /** Laps of two wings, to and fro by hundredths about the model's own. */
    private static LapLogFile log() {
        List<TimingLog.Lap> laps = new ArrayList<>();
        for (int wing : new int[] {1, 6}) {
            double time = LapSolver.lap(CAR.with("rear-wing", wing), TRACK, DAY).time();
            for (double shift : new double[] {0.02, -0.03, 0.01, 0.03, -0.02, -0.01}) {
                laps.add(
                        new TimingLog.Lap(laps.size() + 1, time + shift, "rear-wing=" + wing, "", TimingLog.Flag.NONE));
            }
        }
        return new LapLogFile("wings.csv", TimingLog.of(laps), "time, setup");
    }

    @Test
    void itSaysWhatItIsAndOfWhat() {
        JsonNode tree = before();
        assertThat(tree.get("lapwright").textValue()).isEqualTo("brief/2");
        assertThat(tree.get("car").textValue()).isEqualTo(CAR.name());
        assertThat(tree.get("circuit").textValue()).isEqualTo(TRACK.name());
        assertThat(tree.get("lap").get("lapTimeS").doubleValue())
                .isEqualTo(BEFORE.lap().time());
    }

    @Test
    void thePlacesTakeTheWholeLap() {
        double sum = 0;
        for (JsonNode place : before().get("places")) {
            sum += place.get("timeS").doubleValue();
        }
        // Sums of double precision.
        assertThat(sum).isCloseTo(BEFORE.lap().time(), within(1e-9));
    }

    @Test
    void theMapHasAPlaceAndASpeedForEachStation() {
        JsonNode map = before().get("map");
        for (String column : List.of("distanceM", "eastM", "northM", "speedKmh")) {
            assertThat(map.get(column)).hasSize(BEFORE.lap().count());
        }
    }

    @Test
    void theSuggestionHoldsItsDifferenceAndTheReasonOfEachChange() {
        SuggestedSetup suggested = BEFORE.suggestion().value().orElseThrow();
        JsonNode tree = before().get("suggestion");
        assertThat(tree.get("together").get("differenceS").doubleValue())
                .isEqualTo(suggested.effect().difference());
        assertThat(suggested.changes()).isNotEmpty();
        for (int i = 0; i < suggested.changes().size(); i++) {
            JsonNode change = tree.get("changes").get(i);
            assertThat(change.get("name").textValue())
                    .isEqualTo(suggested.changes().get(i).change().adjustment().name());
            assertThat(change.get("undone").get("differenceS").doubleValue())
                    .isEqualTo(suggested
                            .changes()
                            .get(i)
                            .undone()
                            .value()
                            .orElseThrow()
                            .difference());
            assertThat(change.get("undone").get("places")).isNotEmpty();
        }
    }

    @Test
    void everyTestHasItsFateAndItsLaps() {
        List<TestPlan.Run> runs = BEFORE.tests().value().orElseThrow().runs();
        JsonNode tree = before().get("tests").get("runs");
        assertThat(tree).hasSameSizeAs(runs);
        for (int i = 0; i < runs.size(); i++) {
            assertThat(tree.get(i).get("lapsToSeeWithEach").intValue())
                    .isEqualTo(runs.get(i).lapsToSee());
            assertThat(tree.get(i).get("runningTotal").intValue())
                    .isEqualTo(runs.get(i).total());
            assertThat(tree.get(i).get("fate").textValue()).isIn("drive", "laps used up", "not seen");
        }
    }

    @Test
    void theStudiesHoldWhatTheirOwnDocumentsHoldWithoutTheirHeads() {
        JsonNode tree = before();
        for (String part : List.of("gearing", "balance", "pressures", "stint", "sensitivity")) {
            assertThat(tree.get(part).get("lapwright").textValue()).startsWith(part);
            assertThat(tree.get(part).has("inputsSha256")).isFalse();
        }
        assertThat(tree.get("stint").get("startFuelL").doubleValue())
                .isEqualTo(BEFORE.stint().value().orElseThrow().startFuel() / 0.75);
    }

    @Test
    void aPartThatIsMissingSaysWhyAndWhatToDo() {
        JsonNode proof = before().get("proof");
        assertThat(proof.get("missing").textValue())
                .isEqualTo(BEFORE.debrief().proof().problem());
        assertThat(proof.get("remedy").textValue())
                .isEqualTo(BEFORE.debrief().proof().remedy());
    }

    @Test
    void afterDrivingItHoldsWhatWasExpectedBesideWhatWasSeen() {
        JsonNode proof = json(AFTER, Optional.of(LOG)).get("proof");
        assertThat(AFTER.debrief().proof().problem()).isEmpty();
        assertThat(proof.get("log").textValue()).isEqualTo("wings.csv");
        assertThat(proof.get("setups")).hasSize(2);
        JsonNode change = proof.get("changes").get(0);
        assertThat(change.get("before").textValue()).isEqualTo("rear-wing=1");
        double expected = change.get("expected").get("differenceS").doubleValue();
        assertThat(change.get("seen")
                        .get("comparison")
                        .get("differencePredictedS")
                        .doubleValue())
                .isEqualTo(expected);
        assertThat(change.get("agrees").isBoolean()).isTrue();
    }

    @Test
    void theHashOfTheInputsKnowsTheLapsDriven() {
        assertThat(json(AFTER, Optional.of(LOG)).get("inputsSha256")).isNotEqualTo(before().get("inputsSha256"));
    }

    @Test
    void theSameQuestionGivesTheSameText() {
        String again = JsonLayout.text(BriefSummary.tree(brief(Brief.of(CAR, TRACK, DAY)), 0.75, Optional.empty()));
        assertThat(JsonLayout.text(BriefSummary.tree(BEFORE, 0.75, Optional.empty())))
                .isEqualTo(again);
    }

    /** In km/h and percent, as they are said. */
    @Test
    void whatTheDriverSaysIsWrittenInTheUnitsOfPeople() {
        assertThat(BriefSummary.word(new DriverWord.OfLimit(new LimitWord("T6", LimitWord.End.REAR, 0.03))))
                .isEqualTo(Map.of("corner", "T6", "first", "rear", "errorPercent", 3.0));
        Map<String, Object> speed =
                BriefSummary.word(new DriverWord.OfFigure(DriverWord.Reading.MINIMUM_SPEED, "T3", 25, 1));
        assertThat(speed).containsEntry("reading", "minimum speed").containsEntry("corner", "T3");
        // To rounding.
        assertThat((double) speed.get("valueKmh")).isCloseTo(90, within(1e-12));
        assertThat((double) speed.get("errorKmh")).isCloseTo(3.6, within(1e-12));
        assertThat(BriefSummary.word(new DriverWord.OfFigure(DriverWord.Reading.LAP_TIME, "", 96, 0.5)))
                .isEqualTo(Map.of("reading", "lap time", "corner", "", "valueS", 96.0, "errorS", 0.5));
    }
}
