package dev.lapwright.surveys;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.track.survey.LoggedLap;
import dev.lapwright.track.survey.SurveyPoint;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LoggedLapReaderTest {
    private static SurveyFile read(String text, String... columns) {
        return Surveys.readFile(
                new DocumentSource("log.csv", text),
                Arrays.stream(columns).map(Surveys::column).toList(),
                false);
    }

    private static void refuses(String text, String problem) {
        assertThatThrownBy(() -> read(text))
                .isInstanceOf(DocumentException.class)
                .hasMessageContaining(problem);
    }

    /** 90 km/h is 25 m/s; 1 g is 9.80665 m/s² (ISO 80000-3); a mile per hour 0.44704 m/s (NIST SP 811). */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "distance,speed,lateral_acceleration\n0,25,9.80665\n10,25,9.80665\n",
                "Lat Acc (g);Speed [km/h];Dist (km)\n1;90;0\n1;90;0.01\n",
                "distanceM,speedKmh,lateralAccelerationMps2\n0,90,9.80665\n10,90,9.80665\n",
                "speed_kmh\tdistance_m\tay_g\n90\t0\t1\n90\t10\t1\n",
                "Venue,somewhere\nDate,today\n\nDistance,GPS Speed,G Lat\nm,km/h,g\n0,90,1\n10,90,1\n",
                "Rpm,Distance (ft),Speed (mph),Lateral Acceleration (m/s2)\n1,0,55.9234073,9.80665\n"
                        + "1,32.8083990,55.9234073,9.80665\n",
            })
    void unitsAreTakenFromTheHeadingsInAnyOrder(String text) {
        LoggedLap log = read(text).laps().get(0).log();
        // Nine digits of the last text.
        assertThat(log.distance()[1]).isCloseTo(10, within(1e-7));
        assertThat(log.speed()[0]).isCloseTo(25, within(1e-7));
        assertThat(log.lateralAcceleration()[1]).isCloseTo(9.80665, within(1e-7));
    }

    @Test
    void whatWasTakenForWhatIsSaid() {
        assertThat(read("t,Speed (km/h),ay\n0,90,1\n0.1,90,1\n").columns())
                .isEqualTo("time from 't' in s (assumed); speed from 'Speed (km/h)' in km/h; lateral_acceleration from"
                        + " 'ay' in m/s² (assumed)");
    }

    @Test
    void distancesComeFromTimesWhereTheyAreNotGiven() {
        // 0.1 s at 20 m/s on average.
        assertThat(read("t,v,ay\n0,19,1\n0.1,21,1\n").laps().get(0).log().distance()[1])
                .isCloseTo(2, within(1e-12));
    }

    @Test
    void aTimeOfDayIsATimeAndMayPassMidnight() {
        SurveyFile file = read("time,v,ay\n23:59:59.5,20,1\n00:00:00.5,20,1\n");
        assertThat(file.laps().get(0).duration()).isCloseTo(1, within(1e-9));
    }

    @Test
    void aColumnThatIsNotKnownCanBeNamed() {
        String text = "Weg,Tempo,Quer\n0,90,1\n10,90,1\n";
        refuses(text, "does not name the columns x and y");
        LoggedLap log = read(text, "distance=weg", "speed=Tempo:km/h", "lateral_acceleration=Quer:g")
                .laps()
                .get(0)
                .log();
        assertThat(log.speed()[0]).isCloseTo(25, within(1e-12));
        assertThat(log.lateralAcceleration()[0]).isCloseTo(9.80665, within(1e-12));
    }

    @Test
    void ofTwoColumnsOfOneKindOneCanBeChosen() {
        String text = "distance,speed,GPS speed,ay\n0,20,90,1\n10,20,90,1\n";
        refuses(text, "two columns have this name");
        assertThat(read(text, "speed=speed").laps().get(0).log().speed()[0]).isEqualTo(20);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "speed | names no column",
                "pace=x | is nothing that a column may hold",
                "speed=Tempo:furlongs | is no unit of speed",
            })
    void aFaultyChoiceOfAColumnIsRefused(String choice, String problem) {
        assertThatThrownBy(() -> Surveys.column(choice))
                .isInstanceOf(InvalidValueException.class)
                .hasMessageContaining(problem);
    }

    @Test
    void aNewLapBeginsWithItsNumberOrWhereDistanceStartsAnew() {
        assertThat(read("lap,distance,v,ay\n1,0,20,1\n1,20,20,1\n2,40,20,1\n2,60,20,1\n")
                        .laps())
                .hasSize(2);
        assertThat(read("distance,v,ay\n0,20,1\n900,20,1\n0,20,1\n900,20,1\n0,20,1\n")
                        .laps())
                .hasSize(3);
    }

    /** Ratios of units by definition: 3.6 km/h to 1 m/s, 1/0.44704 mph to 1 m/s. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0,0,72,1/1,20,72,1 | speeds look like km/h taken for m/s",
                "0,0,44.74,1/1,20,44.74,1 | speeds look like mph taken for m/s",
                "0,0,20,1/1,0.02,20,1 | distances look like km taken for m",
                "0,0,20,1/50,1,20,1 | looks like milliseconds",
                "0,0,2000,1/1,2000,2000,1 | sample 1: speed (m/s)",
                "0,0,20,1/1,20,NaN,1 | line 3, speed: 'NaN' is not a number",
                "0,0,20,1/1,20,20 | line 3, lateral_acceleration: there is no value",
            })
    void faultyLogsAreRefusedWithTheReason(String rows, String problem) {
        refuses("time,distance,speed,ay\n" + rows.replace('/', '\n') + "\n", problem);
    }

    @Test
    void aLogWithoutLateralAccelerationIsRefusedByName() {
        refuses("distance,speed\n0,1\n", "no heading is known for lateral_acceleration");
    }

    @Test
    void positionsGoBeforeALogUnlessTheLogIsAskedFor() {
        String text = "x,y,distance,speed,ay\n1,2,0,20,1\n3,4,5,20,1\n";
        assertThat(read(text).isLog()).isFalse();
        assertThat(Surveys.readFile(new DocumentSource("log.csv", text), List.of(), true)
                        .isLog())
                .isTrue();
    }

    @Test
    void degreesInColumnsGoToThePlaneLikeThoseOfGeoJson() {
        SurveyFile csv = read("lon,lat,ele (ft),time\n9,45,100,0\n9.01,45,200,1\n");
        SurveyPoint there = Surveys.read(new DocumentSource(
                        "a.geojson", "{\"type\": \"LineString\", \"coordinates\": [[9,45,30.48],[9.01,45,60.96]]}"))
                .points()
                .get(1);
        SurveyPoint here = csv.survey().points().get(1);
        assertThat(here.x()).isEqualTo(there.x());
        assertThat(here.z()).isCloseTo(there.z(), within(1e-9));
        assertThat(csv.times()).containsExactly(0, 1);
    }
}
