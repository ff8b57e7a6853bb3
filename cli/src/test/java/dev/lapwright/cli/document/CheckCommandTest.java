package dev.lapwright.cli.document;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.cli.Run;
import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.sense.CarOddities;
import dev.lapwright.sense.Oddity;
import dev.lapwright.sense.RoadOddities;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackPoint;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CheckCommandTest {
    @TempDir
    private Path folder;

    private String file(String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.writeString(file, text);
        return file.toString();
    }

    /** Of a car with little downforce, which stands on any springs. */
    private static List<Oddity> oddities(Quantity quantity, double value) {
        Car car = Documents.car("touring-merrow");
        assertThat(CarOddities.of(car, Conditions.STANDARD)).isEmpty();
        return CarOddities.of(car.with(quantity, value), Conditions.STANDARD);
    }

    @Test
    void nothingIsOddAboutDemosButTheLoggersFaults() {
        List<String> names = new ArrayList<>(List.of("check"));
        for (Demos.Document demo : Documents.demos()) {
            if (demo.kind() != DocumentKind.SETUP) {
                names.add(demo.name());
            }
        }
        Run run = Run.of(names.toArray(String[]::new));
        assertThat(run.code()).as(run.err()).isZero();
        assertThat(run.lines()).noneMatch(line -> line.contains("oddit") || line.contains("fault"));
        Run logger = Run.of("check", "harrowmere-logger.csv");
        assertThat(logger.code()).isZero();
        assertThat(logger.out()).contains("the clock jumps by 1.1 s");
    }

    /**
     * Half the track over the height (static stability factor) against friction, √(k/m)/2π against 0.9 Hz, the weight on the front wheels
     * against their brakes: each value lies on the far side of its formula for this car's other figures.
     */
    @ParameterizedTest
    @CsvSource({
        "CG_HEIGHT, 1.1, tip over",
        "SPRING_FRONT, 8, bounce",
        "FRICTION_Y_FRONT, 3, rubber on a dry road",
        "REFERENCE_LOAD_REAR, 20000, carries",
        "WHEEL_RADIUS, 0.65, no diameter",
        "BRAKE_FRONT_SHARE, 40, lock first",
        "FINAL_DRIVE, 9, allow",
        "FINAL_DRIVE, 1.4, allow",
        "POWER_SCALE, 0.05, for each kg",
        "DRAG_AREA, 0.01, times the drag",
        "WHEELBASE, 0.9, of the wheelbase"
    })
    void whatDoesNotGoTogetherIsToldAtItsQuantity(Quantity quantity, double value, String word) {
        assertThat(oddities(quantity, value))
                .anySatisfy(odd -> assertThat(odd.problem() + odd.remedy()).contains(word));
    }

    /** Dive planes that at their flattest are said to push: only there is the whole car's drag below nought. */
    @Test
    void aDragBelowNoughtIsToldWithTheSettingThatMakesIt() throws IOException {
        String text = Documents.demoText(DocumentKind.CAR, "gt-talvex");
        String pushed = text.replaceFirst("\"cdAM2\": 0.012", "\"cdAM2\": -2");
        assertThat(pushed).isNotEqualTo(text);
        Run run = Run.of("check", file("pushed.json", pushed));
        assertThat(run.code()).isZero();
        assertThat(run.out()).contains("aero.cdAM2: the total drag area is", "dive-planes 0 deg", "1 oddity");
    }

    /** Each field as somebody would write it who thinks in another unit; what it would be there is worked out by hand. */
    @ParameterizedTest
    @CsvSource({
        "massKg, 2833, 2833 lb are 1285 kg",
        "wheelbaseM, 2700, 2700 mm are 2.7 m",
        "trackFrontM, 5.5, 5.5 ft are 1.676 m",
        "frontWeightPercent, 0.475, 0.475 as a share is 47.5 %",
        "revLimitRpm, 8.2, 8.2 thousand rpm are 8200 rpm",
        "referenceLoadN, 320, 320 kgf are 3138 N",
        "cdAM2, 8.9, 8.9 ft² are 0.8268 m²"
    })
    void theUnitThatMayHaveBeenMeantIsToldAtTheField(String field, String value, String guess) throws IOException {
        String text = Documents.demoText(DocumentKind.CAR, "gt-talvex");
        String other = text.replaceFirst("\"" + field + "\": [0-9.]+", "\"" + field + "\": " + value);
        assertThat(other).isNotEqualTo(text);
        Run run = Run.of("check", file("other-unit.json", other));
        assertThat(String.join(" ", run.out().split("\\s+"))).contains(field + ": " + value, guess);
    }

    @Test
    void daysAndLogsAreLookedThroughForOtherUnitsToo() throws IOException {
        String day = file(
                "day.json",
                "{\"lapwright\": \"conditions/1\", \"name\": \"x\", \"airTempC\": 59, \"airPressureHpa\": 1013,"
                        + " \"humidityPercent\": 0.5, \"windSpeedMps\": 25}");
        StringBuilder log = new StringBuilder("time (s),speed (km/h),throttle (%),long accel (m/s2)\n");
        for (int i = 0; i < 900; i++) {
            // A car that goes to and fro between 100 and 180 km/h by half a g at most, as (g) would have it.
            log.append(0.1 * i)
                    .append(',')
                    .append(140 + 40 * Math.sin(0.02 * i))
                    .append(',')
                    .append(i % 2)
                    .append(',')
                    .append(0.5 * Math.cos(0.02 * i))
                    .append('\n');
        }
        Run run = Run.of("check", day, file("log.csv", log.toString()), "--as", "log");
        Run first = Run.of("check", day);
        assertThat(String.join(" ", first.out().split("\\s+")))
                .contains("59 degF are 15 degC", "0.5 as a share is 50 %", "25 mph are 11.18 m/s", "3 oddities");
        assertThat(String.join(" ", run.out().split("\\s+")))
                .contains("throttle goes up to no more than 1 % of its travel", "looks like g");
    }

    @Test
    void oddPlacesOfARoadAreToldByDistance() {
        List<TrackPoint> points = new ArrayList<>();
        for (int i = 0; i <= 100; i++) {
            points.add(TrackPoint.flat(10 * i, i == 50 ? 0.5 : 0));
        }
        List<Oddity> odd = RoadOddities.of(Track.open("kinked", 10, points).stations(StationSpacing.DEFAULT));
        assertThat(odd).singleElement().satisfies(kink -> {
            assertThat(kink.place()).isEqualTo("500 m");
            assertThat(kink.problem()).contains("a radius of 2 m");
        });
    }

    @Test
    void whatCannotBeUsedEndsWithTwoAndTheRestIsToldAllTheSame() throws IOException {
        String times = file("times.csv", "lap,time\n1,100.2\n2,55\n3,101\n4,100.4\n");
        Run run = Run.of("check", file("none.json", "{\"a\": 1}"), times, "nowhere.csv", file("empty.csv", ""));
        assertThat(run.code()).isEqualTo(2);
        assertThat(run.err()).isEmpty();
        assertThat(run.out())
                .contains(
                        "not marked as a document", "lap 2: a lap of 55 s", "neither a file nor a demo", "it is empty");
        assertThat(Run.of("check", times, "--as", "nonsense").err()).contains("no such kind of file");
        assertThat(Run.of("check").code()).isEqualTo(2);
        Run setup = Run.of("check", "gt-talvex-low-drag");
        assertThat(setup.code()).isEqualTo(2);
        assertThat(setup.out()).contains("--car");
        assertThat(Run.of("check", "gt-talvex-low-drag", "--car", "gt-talvex").code())
                .isZero();
    }

    @Test
    void machinesGetPlaceProblemAndRemedy() {
        String json = Run.of("check", "harrowmere-logger.csv", "--json").out();
        assertThat(Stream.of("\"place\": \"line ", "\"problem\": ", "\"remedy\": ", "\"usable\": true"))
                .allMatch(json::contains);
    }
}
