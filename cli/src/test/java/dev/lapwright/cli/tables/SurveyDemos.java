package dev.lapwright.cli.tables;

import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.Locale;
import java.util.Random;

/**
 * Writes the demo surveys of Harrowmere, the invented circuit of that name being the truth that they are drawn from: an outline
 * drawn by hand, a log of a consumer's receiver, and a logger's file with its faults. Uses the public API alone; run from the
 * top of the project, with the command built before, with the folder to write into:
 *
 * <pre>java -cp cli/target/lapwright.jar cli/src/test/java/dev/lapwright/cli/tables/SurveyDemos.java FOLDER</pre>
 */
public final class SurveyDemos {
    /** Middle of a plane that no circuit stands on: the open sea. */
    private static final double LONGITUDE = -31;

    private static final double LATITUDE = 44;
    /** Mean radius of curvature of the ellipsoid there, m; 0.2 % matters to no shape. */
    private static final double RADIUS = 6_378_000;

    private static final double DRAWN_ERROR = 0.5;
    private static final double OWN_ERROR = 0.15;
    private static final double WANDER = 0.5;
    private static final double WANDER_LENGTH = 100;
    private static final double HEIGHT_ERROR = 2.5;
    private static final double HEIGHT_LENGTH = 400;
    private static final double GRAVITY = 9.80665;

    private final Track truth = Documents.circuit("harrowmere");
    private final Stations stations = truth.stations(StationSpacing.DEFAULT);
    private final Lap lap = LapSolver.on(truth).solve(Vehicle.of(Documents.car("gt-talvex"), Conditions.STANDARD));

    private SurveyDemos() {}

    /** Writes them. */
    public static void main(String... arguments) throws IOException {
        SurveyDemos demos = new SurveyDemos();
        Path folder = Path.of(arguments[0]);
        Files.writeString(folder.resolve("harrowmere-drawn.geojson"), demos.drawn(), StandardCharsets.UTF_8);
        Files.writeString(folder.resolve("harrowmere-receiver.gpx"), demos.receiver(), StandardCharsets.UTF_8);
        Files.writeString(folder.resolve("harrowmere-logger.csv"), demos.logger(), StandardCharsets.UTF_8);
    }

    private static String degrees(double x, double y, int digits) {
        double longitude = LONGITUDE + Math.toDegrees(x / (RADIUS * Math.cos(Math.toRadians(LATITUDE))));
        double latitude = LATITUDE + Math.toDegrees(y / RADIUS);
        return String.format(Locale.ROOT, "%." + digits + "f %." + digits + "f", longitude, latitude);
    }

    /** Clicks every 10 m in bends and 40 m on straights, half a metre beside the road's middle, in degrees of six decimals. */
    String drawn() {
        Random random = new Random(11);
        StringBuilder text =
                new StringBuilder("{\n  \"type\": \"Feature\",\n  \"properties\": {\"name\": \"Harrowmere\"},\n"
                        + "  \"geometry\": {\n    \"type\": \"Polygon\",\n    \"coordinates\": [[\n");
        String first = "";
        double s = 0;
        while (s < truth.length() - 5) {
            Stations.Place place = stations.placeAt(s);
            String here = degrees(
                            place.x() + DRAWN_ERROR * random.nextGaussian(),
                            place.y() + DRAWN_ERROR * random.nextGaussian(),
                            6)
                    .replace(" ", ", ");
            first = first.isEmpty() ? here : first;
            text.append("      [").append(here).append("],\n");
            s += (bends(s) ? 10 : 40) * (0.8 + 0.4 * random.nextDouble());
        }
        return text + "      [" + first + "]\n    ]]\n  }\n}\n";
    }

    private boolean bends(double s) {
        for (double ahead = 0; ahead <= 25; ahead += 5) {
            if (Math.abs(truth.pointAt((s + ahead) % truth.length()).curvature()) > 1.0 / 300) {
                return true;
            }
        }
        return false;
    }

    /** Two laps and the beginning of a third, five positions a second, with errors that neighbours have in common. */
    String receiver() {
        Random random = new Random(12);
        StringBuilder text = new StringBuilder("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<gpx version=\"1.1\""
                + " creator=\"invented\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n  <trk>\n    <name>Harrowmere</name>\n"
                + "    <trkseg>\n");
        double[] wander = {WANDER * random.nextGaussian(), WANDER * random.nextGaussian(), 0};
        Instant start = Instant.parse("2026-05-09T13:20:00Z");
        double before = 0;
        for (int i = 0; i * 0.2 < 2.15 * lap.time(); i++) {
            double s = distanceAt(i * 0.2 % lap.time());
            double moved = (s - before + truth.length()) % truth.length();
            before = s;
            for (int k = 0; k < 3; k++) {
                double kept = Math.exp(-moved / (k == 2 ? HEIGHT_LENGTH : WANDER_LENGTH));
                double size = k == 2 ? HEIGHT_ERROR : WANDER;
                wander[k] = kept * wander[k] + size * Math.sqrt(1 - kept * kept) * random.nextGaussian();
            }
            Stations.Place place = stations.placeAt(Math.min(s, truth.length()));
            String[] at = degrees(
                            place.x() + wander[0] + OWN_ERROR * random.nextGaussian(),
                            place.y() + wander[1] + OWN_ERROR * random.nextGaussian(),
                            7)
                    .split(" ");
            text.append(String.format(
                    Locale.ROOT,
                    "      <trkpt lat=\"%s\" lon=\"%s\"><ele>%.1f</ele><time>%s</time></trkpt>%n",
                    at[1],
                    at[0],
                    place.z() + wander[2],
                    start.plusMillis(200L * i)));
        }
        return text.append("    </trkseg>\n  </trk>\n</gpx>\n").toString().replace("\r", "");
    }

    /**
     * Two laps, ten samples a second, as a logger exports them: lines above the headings, semicolons and decimal commas, a row of
     * units, columns nobody needs, the lateral acceleration 0.02 g and 1.5 % too large, a knock on a kerb, and a second missing.
     */
    String logger() {
        Random random = new Random(13);
        StringBuilder text = new StringBuilder("Export;Session 3\nVenue;Harrowmere\nVehicle;Talvex GT\n\n"
                + "Time;Lap;GPS Speed;G Lat;Battery;Oil temp\ns;;km/h;g;V;degC\n");
        for (int i = 0; i * 0.1 < 2 * lap.time(); i++) {
            double time = i * 0.1;
            int number = 1 + (int) (time / lap.time());
            double s = distanceAt(time % lap.time());
            double speed = at(Channel.SPEED, s);
            double lateral =
                    speed * speed * truth.pointAt(Math.min(s, truth.length())).curvature();
            double g = 0.02 + 1.015 * lateral / GRAVITY + 0.04 * random.nextGaussian();
            boolean knock = i == 200;
            boolean missing = i >= 900 && i < 910;
            if (!missing) {
                text.append(String.format(
                                Locale.ROOT,
                                "%.1f;%d;%.1f;%.3f;%.1f;%.0f%n",
                                time,
                                number,
                                3.6 * speed + 0.3 * random.nextGaussian(),
                                knock ? g + 2.5 : g,
                                13.8,
                                96.0)
                        .replace('.', ','));
            }
        }
        return text.toString().replace("\r", "");
    }

    private double distanceAt(double time) {
        double[] t = lap.column(Channel.TIME);
        int i = cell(t, time);
        double[] s = lap.column(Channel.DISTANCE);
        return t[i + 1] > t[i] ? s[i] + (s[i + 1] - s[i]) * (time - t[i]) / (t[i + 1] - t[i]) : s[i];
    }

    private double at(Channel channel, double distance) {
        double[] s = lap.column(Channel.DISTANCE);
        int i = cell(s, distance);
        double[] values = lap.column(channel);
        double share = s[i + 1] > s[i] ? (distance - s[i]) / (s[i + 1] - s[i]) : 0;
        return values[i] + share * (values[i + 1] - values[i]);
    }

    private static int cell(double[] rising, double value) {
        int found = Arrays.binarySearch(rising, value);
        return Math.max(0, Math.min(rising.length - 2, found >= 0 ? found : -found - 2));
    }
}
