package dev.lapwright.surveys;

import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.TextPlace;
import io.jenetics.jpx.GPX;
import io.jenetics.jpx.Length;
import io.jenetics.jpx.WayPoint;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Reader of the one track or route of a GPX 1.1 text. */
final class GpxSurveyReader {
    private GpxSurveyReader() {}

    static SurveyFile read(DocumentSource source) {
        // GPX is described by a schema and needs none; one could name other files to be read.
        if (source.text().contains("<!DOCTYPE")) {
            throw new DocumentException(source.name(), "it has a document type, as no GPX file does", "remove it");
        }
        GPX gpx;
        try {
            gpx = GPX.Reader.DEFAULT.read(new ByteArrayInputStream(source.text().getBytes(StandardCharsets.UTF_8)));
        } catch (IOException | RuntimeException e) {
            throw new DocumentException(
                    source.name(), "it cannot be read as GPX 1.1", "save it again from the program it comes from");
        }
        List<List<WayPoint>> lines = new ArrayList<>();
        gpx.tracks().forEach(track -> {
            List<WayPoint> points = new ArrayList<>();
            track.segments().forEach(segment -> points.addAll(segment.getPoints()));
            lines.add(points);
        });
        gpx.routes().forEach(route -> lines.add(route.getPoints()));
        lines.removeIf(List::isEmpty);
        if (lines.size() != 1) {
            throw new DocumentException(
                    source.name(),
                    "it holds " + (lines.isEmpty() ? "no track or route" : lines.size() + " tracks and routes"),
                    "keep one, with the points of one lap");
        }
        List<LocalPlane.Position> positions = new ArrayList<>();
        for (WayPoint p : lines.get(0)) {
            positions.add(new LocalPlane.Position(
                    TextPlace.NONE,
                    p.getLongitude().doubleValue(),
                    p.getLatitude().doubleValue(),
                    p.getElevation().map(Length::doubleValue).orElse(Double.NaN)));
        }
        return SurveyFile.ofPoints(LocalPlane.survey(source.name(), positions), times(lines.get(0)));
    }

    /** Seconds since the first point; empty if a point has no time. */
    private static double[] times(List<WayPoint> points) {
        double[] times = new double[points.size()];
        for (int i = 0; i < times.length; i++) {
            Instant time = points.get(i).getTime().orElse(null);
            if (time == null) {
                return new double[0];
            }
            times[i] =
                    Duration.between(points.get(0).getTime().orElse(time), time).toMillis() / 1000.0;
        }
        return times;
    }
}
