package dev.lapwright.cli.brief;

import dev.lapwright.cli.page.PageBlock;
import dev.lapwright.cli.page.PageFact;
import dev.lapwright.cli.page.PageSection;
import dev.lapwright.results.DifferenceWords;
import java.util.List;

/** Glossary of a brief: the words it uses, for somebody new to the trade. */
public final class BriefGlossary {
    private BriefGlossary() {}

    public static PageSection section() {
        return new PageSection(
                "words",
                "Words used here",
                "What the words on this page mean, and what the numbers behind them can and cannot do.",
                List.of(
                        PageBlock.terms(List.of(
                                new PageFact(
                                        "Apex, way in, way out",
                                        "The innermost part of a corner, what comes before it and what after; the slowest"
                                                + " speed is near the apex."),
                                new PageFact(
                                        "Understeer, oversteer",
                                        "The front tyres run out of grip first and the car pushes wide; the rear tyres do and"
                                                + " the tail comes round."),
                                new PageFact(
                                        "Downforce area (ClA), drag area (CdA)",
                                        "How hard the air presses the car down and holds it back, as areas in square metres:"
                                                + " force over the pressure of the moving air."),
                                new PageFact(
                                        "g",
                                        "Acceleration in units of free fall, 9.81 m/s². 1.5 g in a corner presses the driver"
                                                + " sideways with one and a half times their weight."),
                                new PageFact(
                                        "Final drive",
                                        "The last gear ratio, between gearbox and wheels: a larger number is shorter gearing."),
                                new PageFact(
                                        "Limited by",
                                        "What keeps the car from going faster there: grip of an axle, power, brakes, or the rev"
                                                + " limit."),
                                new PageFact(
                                        "Rake, ride height",
                                        "How much higher the car stands behind than in front; how high its floor is above the"
                                                + " road."),
                                new PageFact(
                                        "Scatter",
                                        "How much a driver's lap times differ in one and the same setup, as a standard"
                                                + " deviation: two laps in three lie within it either side of their mean."),
                                new PageFact(
                                        "Can be seen",
                                        "A difference so large that a test of the laps there are shows it four times in five, and"
                                                + " shows one that is not there no more than once in twenty."),
                                new PageFact(
                                        "Delta, difference",
                                        "Of a lap time to that of the car as it stands: minus is faster. Less than "
                                                + DifferenceWords.least()
                                                + " does not count: more laps than anybody drives would be needed to see it."),
                                new PageFact("Sector", "A stretch of the circuit that is timed by itself."))),
                        PageBlock.paragraph(
                                "The lap is that of a quasi-steady model: a point with four wheel loads, downforce and drag on"
                                        + " sprung axles, tyres whose grip falls with load, gears and differential, on a road"
                                        + " given by its curvature, slope, bank and grip. It knows no driver, no transients"
                                        + " and no bumps. It compares settings well, and predicts lap times only as well as"
                                        + " the car's document describes the car.")));
    }
}
