package dev.lapwright.draft;

/**
 * Kind of tyre, with what tyres of a kind have in common: half of the fourth question. Common practice, no source, as far as nothing else is
 * said; the demo cars' own numbers and their reasons are in {@code tracks-demo/README.md}.
 */
public enum TyreKind {
    /** With a full tread, for the road. */
    ROAD(
            "road",
            new Rubber(new Range(0.9, 1.1), 16, 240, 0.011),
            new Wearer(1.4, 4, new Range(0.15, 0.45), new Range(0, 30), -1, -1.25)),
    /** Legal on the road, made for the track. */
    TRACK(
            "track",
            new Rubber(new Range(1.05, 1.3), 20, 210, 0.013),
            new Wearer(1.9, 2.8, new Range(0.1, 0.4), new Range(10, 50), -2, -1.75)),
    /** Without tread, as in endurance and one-make classes. */
    SLICK(
            "slick",
            new Rubber(new Range(1.35, 1.7), 24, 185, 0.013),
            new Wearer(2.2, 1.8, new Range(0.04, 0.15), new Range(25, 65), -2.75, -1.75)),
    /** Soft, without tread, as in hillclimbs, sprints and on light cars. */
    SOFT_SLICK(
            "soft-slick",
            new Rubber(new Range(1.5, 1.9), 28, 185, 0.018),
            new Wearer(2.2, 1.8, new Range(0.05, 0.2), new Range(25, 65), -2, -1.25));

    /** Load at which the friction above holds on a tyre 275 mm wide, N: a wider one carries more. */
    static final double LOAD_AT_WIDTH = 3500;

    static final double WIDTH_MM = 275;
    /** Friction along over friction across. */
    static final double ALONG_OVER_ACROSS = 0.93;

    private final String word;
    private final Rubber rubber;
    private final Wearer wearer;

    /** What is of the tyre itself; units as of the methods of the same names. */
    private record Rubber(Range friction, double stiffnessPerRad, double pressureKpa, double rolling) {}

    /** What is of the cars that wear it. */
    private record Wearer(
            double frequencyHz,
            double rollDegPerG,
            Range shiftTime,
            Range lock,
            double camberFront,
            double camberRear) {}

    TyreKind(String word, Rubber rubber, Wearer wearer) {
        this.word = word;
        this.rubber = rubber;
        this.wearer = wearer;
    }

    /** As it is answered. */
    public String word() {
        return word;
    }

    /** Peak friction across, at 3500 N on a tyre 275 mm wide. */
    public Range friction() {
        return rubber.friction();
    }

    /** Peak friction along, at the same load. */
    public Range frictionAlong() {
        return new Range(
                ALONG_OVER_ACROSS * friction().low(),
                ALONG_OVER_ACROSS * friction().high());
    }

    /** Cornering stiffness over load, 1/rad. */
    public double stiffnessPerRad() {
        return rubber.stiffnessPerRad();
    }

    /** Hot pressure with the most grip on a car of a tonne or more, kPa. */
    public double pressureKpa() {
        return rubber.pressureKpa();
    }

    /** Rolling resistance over load (Gillespie, Fundamentals of Vehicle Dynamics: 0.012 to 0.015 on hard roads; from memory). */
    public double rolling() {
        return rubber.rolling();
    }

    /** Frequency of the wheel rate with the tyre on the mass on it, Hz, without much downforce. */
    public double frequencyHz() {
        return wearer.frequencyHz();
    }

    /** Roll of the body for each g across, deg, without much downforce. */
    public double rollDegPerG() {
        return wearer.rollDegPerG();
    }

    /** Time of an upshift in the cars that wear them, s. */
    public Range shiftTime() {
        return wearer.shiftTime();
    }

    /** Locking of the differential under drive in the cars that wear them, percent. */
    public Range lock() {
        return wearer.lock();
    }

    /** Camber of the front wheels, deg. */
    public double camberFront() {
        return wearer.camberFront();
    }

    /** Camber of the rear wheels, deg. */
    public double camberRear() {
        return wearer.camberRear();
    }
}
