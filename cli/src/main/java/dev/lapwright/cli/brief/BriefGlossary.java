package dev.lapwright.cli.brief;

import dev.lapwright.cli.page.Page;
import dev.lapwright.results.DifferenceWords;
import java.util.List;

/** Glossary of a brief: the words it uses, for somebody new to the trade. */
public final class BriefGlossary {
    private BriefGlossary() {}

    public static Page.Section section() {
        return new Page.Section(
                "words",
                "Words used here",
                "What the words on this page mean, and what the numbers behind them can and cannot do.",
                List.of(
                        Page.Block.terms(List.of(
                                new Page.Fact(
                                        "Apex, way in, way out",
                                        "The innermost part of a corner, what comes before it and what after; the slowest"
                                                + " speed is near the apex."),
                                new Page.Fact(
                                        "Understeer, oversteer",
                                        "The front tyres run out of grip first and the car pushes wide; the rear tyres do and"
                                                + " the tail comes round."),
                                new Page.Fact(
                                        "Downforce area (ClA), drag area (CdA)",
                                        "How hard the air presses the car down and holds it back, as areas in square metres:"
                                                + " force over the pressure of the moving air."),
                                new Page.Fact(
                                        "g",
                                        "Acceleration in units of free fall, 9.81 m/s². 1.5 g in a corner presses the driver"
                                                + " sideways with one and a half times their weight."),
                                new Page.Fact(
                                        "Final drive",
                                        "The last gear ratio, between gearbox and wheels: a larger number is shorter gearing."),
                                new Page.Fact(
                                        "Limited by",
                                        "What keeps the car from going faster there: grip of an axle, power, brakes, or the rev"
                                                + " limit."),
                                new Page.Fact(
                                        "Rake, ride height",
                                        "How much higher the car stands behind than in front; how high its floor is above the"
                                                + " road."),
                                new Page.Fact(
                                        "Scatter",
                                        "How much a driver's lap times differ in one and the same setup, as a standard"
                                                + " deviation: two laps in three lie within it either side of their mean."),
                                new Page.Fact(
                                        "Can be seen",
                                        "A difference so large that a test of the laps there are shows it four times in five, and"
                                                + " shows one that is not there no more than once in twenty."),
                                new Page.Fact(
                                        "Delta, difference",
                                        "Of a lap time to that of the car as it stands: minus is faster. Less than "
                                                + DifferenceWords.least()
                                                + " does not count: more laps than anybody drives would be needed to see it."),
                                new Page.Fact("Sector", "A stretch of the circuit that is timed by itself."))),
                        Page.Block.paragraph(
                                "The lap is that of a quasi-steady model: a point with four wheel loads, downforce and drag on"
                                        + " sprung axles, tyres whose grip falls with load, gears and differential, on a road"
                                        + " given by its curvature, slope, bank and grip. It knows no driver, no transients"
                                        + " and no bumps. It compares settings well, and predicts lap times only as well as"
                                        + " the car's document describes the car.")));
    }
}
