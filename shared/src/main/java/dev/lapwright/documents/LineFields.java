package dev.lapwright.documents;

import dev.lapwright.car.Unit;

/** The numbers of a line document; all in one unit, as the lists would be hard to read otherwise. */
final class LineFields {
    private static final double MAX_LENGTH = 200_000;

    static final NumberField ROAD_LENGTH =
            NumberField.only("roadLength", Unit.METRE, 10, MAX_LENGTH, "length of the road's own path");
    static final NumberField MARGIN =
            NumberField.only("margin", Unit.METRE, 0, 20, "free road kept between the car's side and the road's edge");
    static final NumberField LAP_TIME =
            NumberField.only("lapTime", Unit.SECOND, 0, 1e5, "lap time of the car for which it was found");
    static final NumberField DISTANCES = NumberField.only(
            "distances", Unit.METRE, 0, MAX_LENGTH, "distance along the road's own path, from 0 to its length");
    static final NumberField OFFSETS = NumberField.only(
            "offsets", Unit.METRE, -100, 100, "offset of the car's middle from that path, positive to the left");

    private LineFields() {}
}
