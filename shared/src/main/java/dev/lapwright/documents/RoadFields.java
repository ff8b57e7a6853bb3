package dev.lapwright.documents;

import dev.lapwright.car.Unit;
import dev.lapwright.track.TrackLimit;
import java.util.List;

/** Number fields of a circuit document. Lengths of a road are in metres; angles and speeds in any unit for them. */
final class RoadFields {
    /** What a point of a track takes, 1/m. */
    static final double MAX_VERTICAL_CURVATURE = 0.2;

    private static final double MAX_LENGTH = 200_000;

    // the circuit
    static final NumberField START_HEADING = new NumberField(
            "startHeading",
            UnitScale.of(Unit.DEGREE, Unit.RADIAN),
            -360,
            360,
            "direction of travel at the start, clockwise from north");
    static final NumberField START_ALTITUDE =
            NumberField.only("startAltitude", Unit.METRE, -500, 6000, "altitude of the start");
    static final NumberField ENTRY_SPEED = new NumberField(
            "entrySpeed",
            UnitScale.of(Unit.KILOMETRE_PER_HOUR, Unit.METRE_PER_SECOND),
            0,
            540,
            "speed at the start of an open run");
    static final NumberField EASE_LENGTH = NumberField.only(
            "easeLength", Unit.METRE, 1, 500, "length over which slope, bank, grip and width change between segments");
    static final NumberField TRANSITION_LENGTH = NumberField.only(
            "transitionLength",
            Unit.METRE,
            0,
            200,
            "length over which curvature changes between segments where it would jump; 0 lets it jump");
    static final NumberField CLOSURE_TOLERANCE = NumberField.only(
            "closureTolerance", Unit.METRE, 1e-6, 50, "gap allowed between the end and the start of a closed circuit");
    static final NumberField CURVATURE_DOUBT = NumberField.only(
            "curvatureDoubt",
            Unit.PERCENT,
            1e-6,
            100,
            "how far each corner's curvature may be off, one standard deviation; not where stations have one of their own");
    static final NumberField WIDTH_DOUBT = NumberField.only(
            "widthDoubt",
            Unit.METRE,
            1e-6,
            100,
            "how far the width that is used may be off, both sides together, one standard deviation");
    static final NumberField GRIP_DOUBT = NumberField.only(
            "gripDoubt",
            Unit.PERCENT,
            1e-6,
            100,
            "how far each corner's grip may be off that of the whole, one standard deviation");
    static final NumberField CURVATURE_ERROR_LENGTH = NumberField.only(
            "curvatureErrorLength",
            Unit.METRE,
            1e-3,
            10_000,
            "length over which errors of the stations' curvature go together: a mean over four times as much is known twice as well");
    static final NumberField SECTOR_ENDS =
            NumberField.only("sectorEnds", Unit.METRE, 0, MAX_LENGTH, "distance at which a timing sector ends");
    static final NumberField CORNER_AT =
            NumberField.only("at", Unit.METRE, 0, MAX_LENGTH, "distance of a place in the corner");

    // its track limits
    static final NumberField LIMIT_FROM =
            NumberField.only("from", Unit.METRE, 0, MAX_LENGTH, "distance at which the limit begins");
    static final NumberField LIMIT_TO = NumberField.only(
            "to",
            Unit.METRE,
            0,
            MAX_LENGTH,
            "distance at which it ends; on a closed circuit before its start if it runs over the start line");
    static final NumberField LIMIT_BEFORE = NumberField.only(
            "before", Unit.METRE, -500, 500, "how far before the corner's entry it begins, 0 if left out");
    static final NumberField LIMIT_AFTER =
            NumberField.only("after", Unit.METRE, -500, 500, "how far behind the corner's exit it ends, 0 if left out");
    static final NumberField BEYOND_LEFT = NumberField.only(
            "beyondLeft",
            Unit.METRE,
            -TrackLimit.MOST_BEYOND,
            TrackLimit.MOST_BEYOND,
            "how far beyond the left edge the car's side may lie, below zero how far inside it must stay; in place of a margin");
    static final NumberField BEYOND_RIGHT = NumberField.only(
            "beyondRight", Unit.METRE, -TrackLimit.MOST_BEYOND, TrackLimit.MOST_BEYOND, "the same on the right");

    // its segments
    static final NumberField LENGTH =
            NumberField.only("length", Unit.METRE, 0.01, 50_000, "length along the road surface");
    static final NumberField RADIUS = NumberField.only("radius", Unit.METRE, 2, 1e6, "radius of the arc");
    static final NumberField ANGLE = new NumberField(
            "angle", UnitScale.of(Unit.DEGREE, Unit.RADIAN), 0.01, 3600, "angle through which the arc turns");
    static final NumberField START_RADIUS = NumberField.only(
            "startRadius", Unit.METRE, 2, 1e6, "radius at the start of the clothoid; left out where it is straight");
    static final NumberField END_RADIUS = NumberField.only(
            "endRadius", Unit.METRE, 2, 1e6, "radius at the end of the clothoid; left out where it is straight");

    // its stations
    static final NumberField DISTANCE =
            NumberField.only("s", Unit.METRE, 0, MAX_LENGTH, "distance from the start along the road surface");
    static final NumberField CURVATURE = new NumberField(
            "curvature", List.of(UnitScale.identity("PerM", "1/m")), -0.5, 0.5, "curvature, positive to the left");
    static final NumberField CURVATURE_DEVIATION = new NumberField(
            "curvatureDeviation",
            List.of(UnitScale.identity("PerM", "1/m")),
            0,
            1,
            "standard deviation of what is not known of the curvature; at all stations or at none");
    static final NumberField VERTICAL_CURVATURE = new NumberField(
            "verticalCurvature",
            List.of(UnitScale.identity("PerM", "1/m")),
            -MAX_VERTICAL_CURVATURE,
            MAX_VERTICAL_CURVATURE,
            "change of slope with distance, positive in a dip; by default from the slopes");

    // both
    static final NumberField SLOPE =
            new NumberField("slope", UnitScale.SLOPE, -65, 65, "slope along the road, positive uphill");
    static final NumberField BANK =
            new NumberField("bank", UnitScale.BANK, -65, 65, "slope across the road, positive lowers the left side");
    static final NumberField GRIP =
            NumberField.only("grip", Unit.NONE, 0.05, 3, "friction relative to the reference surface");
    static final NumberField WIDTH =
            NumberField.only("width", Unit.METRE, 0, 200, "width of the road, the path in its middle");
    static final NumberField WIDTH_LEFT =
            NumberField.only("widthLeft", Unit.METRE, 0, 100, "width of the road to the left of the path");
    static final NumberField WIDTH_RIGHT =
            NumberField.only("widthRight", Unit.METRE, 0, 100, "width of the road to the right of the path");
    static final NumberField SPEED_LIMIT = new NumberField(
            "speedLimit",
            UnitScale.of(Unit.KILOMETRE_PER_HOUR, Unit.METRE_PER_SECOND),
            1,
            1000,
            "speed that must not be exceeded here");

    /** What segments and stations share. */
    static final List<NumberField> SURFACE = List.of(SLOPE, BANK, GRIP, WIDTH, WIDTH_LEFT, WIDTH_RIGHT, SPEED_LIMIT);

    private RoadFields() {}
}
