package dev.lapwright.cli.bench;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.line.LineFinder;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.landscape.Landscape;
import dev.lapwright.study.landscape.Landscapes;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a landscape shows of a knob, from a few of its settings, against laps at all of them. */
class LandscapeAnswerTest {
    /** Settings of a knob that are driven one by one; of one with more, so many over its range. */
    private static final int ALL = 61;

    /** Heights of the strip in pixels, and what it spans at least, s: as strip.js draws it for a driver within 0.3 s. */
    private static final double HEIGHT = 21;

    private static final double LEAST_SPAN = 0.6;

    @ParameterizedTest
    @CsvSource("touring-merrow,harrowmere")
    void aFewSettingsShowTheWholeRange(String car, String circuit) {
        held(car, circuit);
    }

    @ParameterizedTest
    @Tag("long")
    @CsvSource({
        "gt-talvex,castelvane",
        "gt-talvex,harrowmere",
        "student-pipit,castelvane",
        "student-pipit,harrowmere",
        "touring-merrow,castelvane"
    })
    void aFewSettingsShowTheWholeRangeOfOthers(String car, String circuit) {
        held(car, circuit);
    }

    private static void held(String car, String circuit) {
        Question question = BenchRoom.question(car, circuit, 20);
        Sheet sheet = new Sheets(new Catalogue(car, circuit, "", ""), LineFinder.SEARCH)
                .of(question, (steps, difference) -> {});
        LapAnswer lap = new LapAnswer(question, sheet);
        StudyRun how = StudyRun.onThreads(2);
        Landscapes all = Landscapes.about(lap.lap());
        for (Knob knob : LandscapeAnswer.order(sheet.knobs(), "")) {
            all = all.over(knob.name(), knob.lookedAt(ALL, Sheet.standing(knob, lap.subject())));
        }
        Map<String, Landscape> whole = all.run(how).stream().collect(Collectors.toMap(Landscape::name, found -> found));
        List<String> wrong = new ArrayList<>();
        for (Landscape shown : new LandscapeAnswer(question, sheet, lap).tell(how, told -> {})) {
            TreeMap<Double, Double> curve = new TreeMap<>();
            shown.points().forEach(point -> curve.put(point.setting(), shown.difference(point)));
            Landscape range = whole.get(shown.name());
            // Less than the hundredth of a second to which a gain is told.
            double missed = shown.difference(shown.fastest().orElseThrow())
                    - range.difference(range.fastest().orElseThrow());
            if (missed > 5e-3) {
                wrong.add(shown.name() + ": the fastest is missed by " + missed + " s");
            }
            double pixel = Math.max(range.range(), LEAST_SPAN) / HEIGHT;
            for (Landscape.Point point : range.points()) {
                double off = Math.abs(between(curve, point.setting()) - range.difference(point));
                // A pixel cannot be seen beside a line of two.
                if (off > pixel) {
                    wrong.add(shown.name() + " at " + point.setting() + ": off by " + off / pixel + " px");
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** As the strip draws it, straight from point to point; not a number where there is no lap. */
    private static double between(TreeMap<Double, Double> curve, double setting) {
        Map.Entry<Double, Double> low = curve.floorEntry(setting);
        Map.Entry<Double, Double> high = curve.ceilingEntry(setting);
        double share = high.getKey() > low.getKey() ? (setting - low.getKey()) / (high.getKey() - low.getKey()) : 0;
        return low.getValue() + share * (high.getValue() - low.getValue());
    }
}
