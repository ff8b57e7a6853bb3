package dev.lapwright.documents;

import dev.lapwright.fault.Check;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.Excerpt;
import dev.lapwright.text.FaultList;
import dev.lapwright.text.JsonValue;
import dev.lapwright.track.Corner;
import dev.lapwright.track.RoadDoubt;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackLimit;
import dev.lapwright.track.TrackPoint;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Reader of a circuit document, which describes the road by segments or by stations. */
final class CircuitReader {
    private static final double EASE_LENGTH = 40;
    private static final double CLOSURE_TOLERANCE = 1;
    /** A start whose heading is not given points east, which on a map is to the right. */
    private static final double EAST = Math.PI / 2;

    static final String PATH = "path";
    static final String TRACK_LIMITS = "trackLimits";
    static final String LIMIT_CORNER = "corner";
    static final List<String> WORDS = List.of(Track.Path.ROAD.word(), Track.Path.DRIVEN.word());

    private final FaultList faults;
    private final ObjectReader root;

    private CircuitReader(FaultList faults, ObjectReader root) {
        this.faults = faults;
        this.root = root;
    }

    static Track read(DocumentSource source) {
        FaultList faults = new FaultList(source.name());
        return new CircuitReader(faults, DocumentHeader.open(source, DocumentKind.CIRCUIT, faults)).track();
    }

    private Track track() {
        String name = root.name();
        root.description();
        Boolean closedFlag = root.flag("closed", "answer: true where the end joins the start, false for an open run");
        boolean closed = closedFlag == null || closedFlag;
        double heading = root.optional(RoadFields.START_HEADING, EAST);
        double altitude = root.optional(RoadFields.START_ALTITUDE, 0);
        double entrySpeed = root.optional(RoadFields.ENTRY_SPEED, 0);
        double tolerance = root.optional(RoadFields.CLOSURE_TOLERANCE, CLOSURE_TOLERANCE);
        double easeLength = root.optional(RoadFields.EASE_LENGTH, EASE_LENGTH);
        boolean bent = root.has(RoadFields.TRANSITION_LENGTH);
        double transition = root.optional(RoadFields.TRANSITION_LENGTH, SegmentPath.USUAL_TRANSITION);
        OptionalDouble errorLength = root.maybe(RoadFields.CURVATURE_ERROR_LENGTH);
        OptionalDouble curvatureDoubt = root.maybe(RoadFields.CURVATURE_DOUBT);
        OptionalDouble widthDoubt = root.maybe(RoadFields.WIDTH_DOUBT);
        OptionalDouble gripDoubt = root.maybe(RoadFields.GRIP_DOUBT);
        double[] sectorEnds = sectorEnds();
        String kind = root.choice(PATH, WORDS, null);
        refuseWhatDoesNotApply(closedFlag);
        SegmentReader segmentReader = new SegmentReader(faults);
        List<Segment> segments = segmentReader.read(list("segments", 1));
        StationReader stationReader = new StationReader(faults, closed);
        List<TrackPoint> stations = stationReader.read(list("stations", 2));
        List<Track.NamedPlace> corners = corners();
        List<WrittenLimit> limits = limits();
        root.close();
        faults.throwIfAny();
        segmentReader.checkSlopes(segments, root.objects("segments"), closed, easeLength);
        faults.throwIfAny();

        String shape = root.has("segments") ? "segments" : "stations";
        Track track = attempt(shape, () -> {
            if (root.has("segments")) {
                SegmentPath drawn = new SegmentPath(segments, closed, easeLength);
                SegmentPath path = bent ? drawn.withTransitions(transition) : drawn.withUsualTransitions(tolerance);
                return closed ? path.closedTrack(name, tolerance) : path.openTrack(name, entrySpeed);
            }
            Track laid = closed ? Track.closed(name, stations) : Track.open(name, entrySpeed, stations);
            Track known = stationReader.deviation().length == laid.points().size()
                    ? laid.withCurvatureDeviation(stationReader.deviation())
                    : laid;
            Track whole = closed ? known.requireClosed(tolerance) : known;
            return corners.isEmpty() ? whole : whole.withCornerNames(corners);
        });
        if (stationReader.deviation().length > 0 && curvatureDoubt.isPresent()) {
            root.meaning(
                    RoadFields.CURVATURE_DOUBT.name(),
                    "the stations say how far their own curvature may be off",
                    "keep one of the two");
        }
        for (int i = 0; i < corners.size(); i++) {
            if (corners.get(i).s() > track.length()) {
                faults.meaning(
                        root.place("corners"),
                        "corners[" + i + "]",
                        Check.text(corners.get(i).s()) + " m lies beyond the end, " + Check.text(track.length()) + " m",
                        "give a distance within the circuit");
            }
        }
        faults.throwIfAny();
        Track placed = attempt("startAltitudeM", () -> track.laidOut(Math.PI / 2 - heading, altitude))
                .withPath(path(kind))
                .doubting(new RoadDoubt(curvatureDoubt, widthDoubt, gripDoubt, errorLength));
        List<TrackLimit> placedLimits = limits(limits, placed);
        faults.throwIfAny();
        Track limited = attempt(TRACK_LIMITS, () -> placed.withLimits(placedLimits));
        return sectorEnds.length == 0 ? limited : attempt("sectorEndsM", () -> limited.withSectorEnds(sectorEnds));
    }

    /** Where a document does not say: a road, unless it is a list of stations without a width. */
    private Track.Path path(String word) {
        if (word != null) {
            return Track.Path.DRIVEN.word().equals(word) ? Track.Path.DRIVEN : Track.Path.ROAD;
        }
        List<ObjectReader> stations = root.objects("stations");
        boolean widths = stations.stream()
                .anyMatch(station -> station.has(RoadFields.WIDTH)
                        || station.has(RoadFields.WIDTH_LEFT)
                        || station.has(RoadFields.WIDTH_RIGHT));
        return stations.isEmpty() || widths ? Track.Path.ROAD : Track.Path.DRIVEN;
    }

    private interface Attempt {
        Track make();
    }

    /** Lets the model make a track, and turns its refusal into a fault of a field. */
    private Track attempt(String field, Attempt attempt) {
        try {
            return attempt.make();
        } catch (InvalidValueException e) {
            // What is wrong with "circuit" is wrong with this document; its place is told by the field.
            boolean whole = e.place().equals("circuit");
            faults.meaning(
                    root.place(field), field, whole ? new InvalidValueException("", e.problem(), e.remedy()) : e);
            faults.throwIfAny();
            throw e;
        }
    }

    private double[] sectorEnds() {
        double[] ends = root.numbers(RoadFields.SECTOR_ENDS);
        if (ends.length == 0 && root.node("sectorEndsM") instanceof JsonValue.Arr) {
            root.form("sectorEndsM", "the list is empty", "give the end of each sector, or leave it out for thirds");
        }
        return ends;
    }

    private List<ObjectReader> list(String name, int least) {
        List<ObjectReader> list = root.objects(name);
        if (root.node(name) instanceof JsonValue.Arr array && array.items().size() < least) {
            root.form(name, array.items().size() + " are too few", "give at least " + least);
        }
        return list;
    }

    private void refuseWhatDoesNotApply(Boolean closed) {
        boolean segments = root.has("segments");
        boolean stations = root.has("stations");
        if (segments && stations) {
            root.form("stations", "the road is already given by its segments", "keep one of segments and stations");
        } else if (!segments && !stations) {
            root.missing(List.of("segments", "stations"), "road as one of them");
        }
        if (Boolean.TRUE.equals(closed)) {
            refuse(RoadFields.ENTRY_SPEED, "a closed circuit has no entry speed", "remove it, or make closed false");
        } else if (Boolean.FALSE.equals(closed)) {
            refuse(RoadFields.CLOSURE_TOLERANCE, "an open run does not close", "remove it, or make closed true");
        }
        if (stations && !segments) {
            refuse(RoadFields.EASE_LENGTH, "only segments are eased into each other", "remove it");
            refuse(RoadFields.TRANSITION_LENGTH, "only between segments curvature may jump", "remove it");
        }
        if (segments && !stations) {
            refuse(
                    RoadFields.CURVATURE_ERROR_LENGTH,
                    "segments have no deviation of their curvature",
                    "remove it, or say " + RoadFields.CURVATURE_DOUBT.name());
        }
        if (segments && !stations && root.has("corners")) {
            root.form("corners", "a circuit of segments names its corners there", "put the name into the segment");
        }
    }

    private void refuse(NumberField field, String problem, String remedy) {
        if (root.has(field)) {
            root.form(root.nameGiven(field), problem, remedy);
        }
    }

    /**
     * Track limit as it was written, before it is known where corners lie.
     *
     * @param corner empty where distances are given
     */
    private record WrittenLimit(
            ObjectReader fields, String corner, double from, double to, OptionalDouble left, OptionalDouble right) {}

    private List<WrittenLimit> limits() {
        List<WrittenLimit> limits = new ArrayList<>();
        for (ObjectReader fields : root.objects(TRACK_LIMITS)) {
            String corner = "";
            double from;
            double to;
            if (fields.has(LIMIT_CORNER)) {
                corner = fields.name(LIMIT_CORNER, "number or name of a corner");
                from = fields.optional(RoadFields.LIMIT_BEFORE, 0);
                to = fields.optional(RoadFields.LIMIT_AFTER, 0);
                refuseBesideCorner(fields, RoadFields.LIMIT_FROM);
                refuseBesideCorner(fields, RoadFields.LIMIT_TO);
            } else {
                from = fields.required(RoadFields.LIMIT_FROM);
                to = fields.required(RoadFields.LIMIT_TO);
            }
            OptionalDouble left = fields.maybe(RoadFields.BEYOND_LEFT);
            OptionalDouble right = fields.maybe(RoadFields.BEYOND_RIGHT);
            if (!fields.has(RoadFields.BEYOND_LEFT) && !fields.has(RoadFields.BEYOND_RIGHT)) {
                fields.missing(
                        List.of(RoadFields.BEYOND_LEFT.name(), RoadFields.BEYOND_RIGHT.name()),
                        "limit of a side at least");
            }
            fields.close();
            boolean sided = left.isPresent() || right.isPresent();
            if (corner != null && Double.isFinite(from) && Double.isFinite(to) && sided) {
                limits.add(new WrittenLimit(fields, corner, from, to, left, right));
            }
        }
        return limits;
    }

    private static void refuseBesideCorner(ObjectReader fields, NumberField field) {
        if (fields.has(field)) {
            fields.optional(field, 0);
            fields.form(
                    fields.nameGiven(field),
                    "a corner is given already",
                    "keep one of the two; beforeM and afterM say how far the limit reaches beyond the corner");
        }
    }

    private List<TrackLimit> limits(List<WrittenLimit> written, Track track) {
        List<TrackLimit> limits = new ArrayList<>();
        List<Corner> corners = List.of();
        for (WrittenLimit limit : written) {
            if (limit.corner().isEmpty()) {
                limits.add(new TrackLimit(limit.from(), limit.to(), limit.left(), limit.right()));
                continue;
            }
            corners = corners.isEmpty() ? track.stations(StationSpacing.DEFAULT).corners() : corners;
            Optional<Corner> found = Corner.find(corners, limit.corner());
            if (found.isPresent()) {
                limits.add(limit(limit, found.get(), track));
            } else {
                String all = corners.isEmpty()
                        ? "the circuit has none"
                        : "corners are numbered from T1 to T" + corners.size() + " in driving order";
                limit.fields()
                        .meaning(
                                LIMIT_CORNER,
                                "there is no corner " + Excerpt.of(limit.corner()) + ", " + all,
                                "give the number or the name that 'lapwright circuit show' lists");
            }
        }
        return limits;
    }

    private static TrackLimit limit(WrittenLimit limit, Corner corner, Track track) {
        double length = track.length();
        double inside = corner.exit() - corner.entry() + (corner.exit() < corner.entry() ? length : 0);
        double reach = inside + limit.from() + limit.to();
        if (reach >= length) {
            return new TrackLimit(0, length, limit.left(), limit.right());
        }
        return new TrackLimit(
                within(corner.entry() - limit.from(), track),
                within(corner.exit() + limit.to(), track),
                limit.left(),
                limit.right());
    }

    /** A distance on a circuit beyond its start line is one of the lap before or after; on an open run it is cut off. */
    private static double within(double distance, Track track) {
        double length = track.length();
        return track.isClosed() ? (distance + length) % length : Math.max(0, Math.min(length, distance));
    }

    /** Field of a corner's place, and its words. */
    static final String MARK = "mark";

    static final Map<String, Track.NamedPlace.Mark> MARKS =
            new TreeMap<>(Map.of("join", Track.NamedPlace.Mark.JOIN, "split", Track.NamedPlace.Mark.SPLIT));

    private List<Track.NamedPlace> corners() {
        List<Track.NamedPlace> corners = new ArrayList<>();
        for (ObjectReader fields : root.objects("corners")) {
            double at = fields.required(RoadFields.CORNER_AT);
            boolean marked = fields.has(MARK);
            String mark = fields.choice(MARK, MARKS.keySet(), "");
            String name = marked ? fields.text("name", "", ObjectReader.MAX_NAME_LENGTH) : fields.name();
            fields.close();
            if (name != null && mark != null && Double.isFinite(at)) {
                corners.add(new Track.NamedPlace(at, name, marked ? MARKS.get(mark) : Track.NamedPlace.Mark.NONE));
            }
        }
        return corners;
    }
}
