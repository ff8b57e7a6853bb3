package dev.lapwright.surveys;

import dev.lapwright.fault.DecimalText;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.TextPlace;
import java.io.StringReader;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reader of the one track or route of a GPX text, 1.1 or 1.0 (topografix.com/GPX/1/1). Faults are told with their line and the
 * value that stands there.
 */
final class GpxSurveyReader {
    private final DocumentSource source;
    private final FaultList faults;
    private final LocalPlane.Origin about;
    private final List<List<LocalPlane.Position>> lines = new ArrayList<>();
    private final List<List<Instant>> times = new ArrayList<>();

    private GpxSurveyReader(DocumentSource source, LocalPlane.Origin about) {
        this.source = source;
        this.about = about;
        faults = new FaultList(source.name());
    }

    /** @param about the origin of the plane; null for the middle of the points */
    static SurveyFile read(DocumentSource source, LocalPlane.Origin about) {
        // GPX is described by a schema and needs none; one could name other files to be read.
        if (source.text().contains("<!DOCTYPE")) {
            throw new DocumentException(source.name(), "it has a document type, as no GPX file does", "remove it");
        }
        return new GpxSurveyReader(source, about).file();
    }

    private SurveyFile file() {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        try {
            // What stands before the first element is no XML: a mark of the byte order, or space.
            String text = source.text();
            XMLStreamReader xml =
                    factory.createXMLStreamReader(new StringReader(text.substring(Math.max(0, text.indexOf('<')))));
            while (xml.hasNext()) {
                if (xml.next() == XMLStreamConstants.START_ELEMENT) {
                    element(xml);
                }
            }
        } catch (XMLStreamException e) {
            int line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNumber());
            faults.form(
                    new TextPlace(line, 0),
                    "",
                    "it cannot be read as GPX: the XML breaks off or is damaged here",
                    "save it again from the program it comes from");
        }
        faults.throwIfAny();
        for (int i = lines.size() - 1; i >= 0; i--) {
            if (lines.get(i).isEmpty()) {
                lines.remove(i);
                times.remove(i);
            }
        }
        if (lines.size() != 1) {
            throw new DocumentException(
                    source.name(),
                    "it holds " + (lines.isEmpty() ? "no track or route" : lines.size() + " tracks and routes"),
                    "keep one, with the points of one lap");
        }
        return SurveyFile.ofPoints(LocalPlane.survey(source.name(), lines.get(0), about), seconds(times.get(0)));
    }

    private void element(XMLStreamReader xml) throws XMLStreamException {
        switch (xml.getLocalName()) {
            case "trk", "rte" -> {
                lines.add(new ArrayList<>());
                times.add(new ArrayList<>());
            }
            case "trkpt", "rtept" -> point(xml);
            default -> {
                // Names, marks and extensions are not needed.
            }
        }
    }

    private void point(XMLStreamReader xml) throws XMLStreamException {
        TextPlace place = new TextPlace(xml.getLocation().getLineNumber(), 0);
        String kind = xml.getLocalName();
        double latitude = number(place, "lat", xml.getAttributeValue(null, "lat"));
        double longitude = number(place, "lon", xml.getAttributeValue(null, "lon"));
        double altitude = Double.NaN;
        Instant time = null;
        int depth = 1;
        while (depth > 0 && xml.hasNext()) {
            int event = xml.next();
            if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            } else if (event == XMLStreamConstants.START_ELEMENT) {
                TextPlace here = new TextPlace(xml.getLocation().getLineNumber(), 0);
                String name = xml.getLocalName();
                if (depth == 1 && name.equals("ele")) {
                    altitude = number(here, name, xml.getElementText());
                } else if (depth == 1 && name.equals("time")) {
                    time = time(here, xml.getElementText());
                } else {
                    depth++;
                }
            }
        }
        if (lines.isEmpty()) {
            faults.form(place, kind, "the point stands outside a track or route", "put it into a trk or rte");
            return;
        }
        lines.get(lines.size() - 1).add(new LocalPlane.Position(place, longitude, latitude, altitude));
        times.get(times.size() - 1).add(time);
    }

    private double number(TextPlace place, String name, String text) {
        OptionalDouble number = DecimalText.number(text == null ? "" : text);
        if (number.isEmpty()) {
            String shown = text == null ? "" : text.strip();
            faults.form(
                    place,
                    name,
                    shown.isEmpty() ? "there is no value" : "'" + Excerpt.of(shown) + "' is not a number",
                    shown.matches("[-+]?[0-9]+,[0-9]+")
                            ? "write it with a decimal point: " + shown.replace(',', '.')
                            : "correct the point or take it out");
        }
        return number.orElse(0);
    }

    private Instant time(TextPlace place, String text) {
        String stated = text.strip();
        try {
            return OffsetDateTime.parse(stated).toInstant();
        } catch (DateTimeException e) {
            try {
                // A time without a zone: only differences matter.
                return LocalDateTime.parse(stated).toInstant(ZoneOffset.UTC);
            } catch (DateTimeException again) {
                faults.form(
                        place,
                        "time",
                        "'" + Excerpt.of(stated) + "' is no time",
                        "write it like 2026-05-01T14:02:31.5Z, or take all times out");
                return null;
            }
        }
    }

    /** Seconds since the first point; empty if a point has no time. */
    private static double[] seconds(List<Instant> points) {
        double[] times = new double[points.size()];
        for (int i = 0; i < times.length; i++) {
            if (points.get(i) == null) {
                return new double[0];
            }
            times[i] = Duration.between(points.get(0), points.get(i)).toMillis() / 1000.0;
        }
        return times;
    }
}
