package dev.lapwright.draft;

import dev.lapwright.aero.Areas;
import dev.lapwright.aero.Wing;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Class of a car's body by its downforce: the seventh question. Areas are of the whole car, wings as they stand. Common practice, no source;
 * Katz, Race Car Aerodynamics, gives such orders (from memory).
 */
public enum DownforceClass {
    /** A closed body as for the road: it lifts a little. */
    NONE("none", new Range(0.5, 1), new Range(-0.3, 0.1), new Range(0.46, 0.56), 0, 99, List.of()),
    /** An open car or one with open wheels, without wings. */
    OPEN("open", new Range(0.5, 1), new Range(-0.3, 0.1), new Range(0.3, 0.42), 2, 1.5, List.of()),
    /** A touring car with a small splitter and one wing. */
    SMALL(
            "small",
            new Range(0.6, 1),
            new Range(0.1, 0.9),
            new Range(0.42, 0.48),
            2.4,
            1.5,
            List.of(new Foil("rear", 0.25, 4, 0.3, 0.08, 8, 4, 0.12))),
    /** A closed car with splitter, worked floor and a large wing. */
    LARGE(
            "large",
            new Range(0.8, 1.4),
            new Range(1.6, 3.6),
            new Range(0.4, 0.46),
            2.8,
            0.8,
            List.of(new Foil("rear", 0.6, 5, 1.35, 0.08, 12, 6, 0.12))),
    /** An open-wheeled car with wings at both ends and a worked floor. */
    WINGS(
            "wings",
            new Range(0.7, 1.6),
            new Range(2, 4.4),
            new Range(0.25, 0.32),
            3.5,
            0.6,
            List.of(
                    new Foil("front", 0.5, 4, 1.2, 0.06, 25, 15, -1.25),
                    new Foil("rear", 0.5, 3, 1.2, 0.06, 25, 15, 0.15)));

    /** Lift lost for each square degree as flow begins to part, 1/deg². */
    private static final double STALL_PER_DEG2 = 0.0012;

    private static final double PROFILE_DRAG = 0.02;
    /** Oswald's factor of a wing with end plates. */
    private static final double EFFICIENCY = 0.8;

    private static final int SETTINGS = 5;

    private final String word;
    private final Range dragArea;
    private final Range liftArea;
    private final Range cgHeight;
    private final double frequencyHz;
    private final double rollDegPerG;
    private final List<Foil> foils;

    /**
     * Wing of the class.
     *
     * @param name in the document
     * @param area m²
     * @param aspect span over chord
     * @param liftAtZero lift coefficient at angle 0
     * @param liftPerDeg its growth, 1/deg
     * @param mostDeg steepest setting; the flattest is 0
     * @param standsDeg where it stands
     * @param behindRearAxle how far behind the rear axle its force acts, of the wheelbase; negative ahead
     */
    private record Foil(
            String name,
            double area,
            double aspect,
            double liftAtZero,
            double liftPerDeg,
            double mostDeg,
            double standsDeg,
            double behindRearAxle) {
        /**
         * What it adds at an angle: drag by Prandtl's lifting line, CD = CD0 + CL²/(π e A) (Anderson, Fundamentals of Aerodynamics, chapter
         * 5; from memory), axle loads by its lever.
         */
        Areas at(double deg) {
            double lift = liftAtZero + liftPerDeg * deg - STALL_PER_DEG2 * deg * deg;
            double drag = PROFILE_DRAG + lift * lift / (Math.PI * EFFICIENCY * aspect);
            return new Areas(
                    Digits.rounded(area * drag, 3),
                    Digits.rounded(-area * lift * behindRearAxle, 3),
                    Digits.rounded(area * lift * (1 + behindRearAxle), 3));
        }

        Wing wing() {
            List<Wing.Setting> settings = new ArrayList<>();
            for (int i = 0; i < SETTINGS; i++) {
                double deg = mostDeg * i / (SETTINGS - 1);
                settings.add(new Wing.Setting(deg, at(deg)));
            }
            return new Wing(name, settings);
        }
    }

    DownforceClass(
            String word,
            Range dragArea,
            Range liftArea,
            Range cgHeight,
            double frequencyHz,
            double rollDegPerG,
            List<Foil> foils) {
        this.word = word;
        this.dragArea = dragArea;
        this.liftArea = liftArea;
        this.cgHeight = cgHeight;
        this.frequencyHz = frequencyHz;
        this.rollDegPerG = rollDegPerG;
        this.foils = foils;
    }

    /** As it is answered. */
    public String word() {
        return word;
    }

    /** Drag area CdA, m². */
    public Range dragArea() {
        return dragArea;
    }

    /** Downforce area ClA of both axles, m²; negative lifts. */
    public Range liftArea() {
        return liftArea;
    }

    /** Height of the centre of gravity, m. */
    public Range cgHeight() {
        return cgHeight;
    }

    /** Least frequency of the wheel rate with the tyre, Hz, that keeps the floor off the road. */
    public double frequencyHz() {
        return frequencyHz;
    }

    /** Most roll for each g, deg. */
    public double rollDegPerG() {
        return rollDegPerG;
    }

    /** Whether the body is closed: then it is as wide as a road car. */
    public boolean isClosed() {
        return this != OPEN && this != WINGS;
    }

    /** Whether it is made to press down. */
    public boolean pressesDown() {
        return !foils.isEmpty();
    }

    /** The wings, with tables of a lifting line. */
    List<Wing> wings() {
        return foils.stream().map(Foil::wing).toList();
    }

    /** Where a wing stands, deg. */
    OptionalDouble standsDeg(String wing) {
        return foils.stream()
                .filter(f -> f.name().equals(wing))
                .mapToDouble(Foil::standsDeg)
                .findFirst();
    }
}
