package dev.lapwright.results.car;

import dev.lapwright.car.Quantity;
import dev.lapwright.draft.CarAnswers;
import dev.lapwright.draft.CarDraft;
import dev.lapwright.draft.DrivenWheels;
import dev.lapwright.draft.EngineKind;
import dev.lapwright.draft.TyreSize;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.List;

/**
 * Report of a car drafted from ten answers: the answers as they were understood, and every number that was guessed, with its doubt.
 *
 * @param draft answers, guesses and the car
 */
public record CarDraftReport(CarDraft draft) {
    /** What rules over every number. */
    public static final List<String> CAUTIONS = List.of(
            "Nothing here was measured on your car. Pressures, brake balance, springs and ride heights have limits set by the makers of"
                    + " tyre and car and by the rules of the event: those hold, whatever a guess says.");

    private static final double KILO = 1000;
    private static final int DIGITS = 2;
    private static final double LEAST_KG_PER_MM = 0.35;
    private static final double MOST_KG_PER_MM = 2.2;
    private static final double MOST_WATTS_PER_KG = 1000;
    private static final double LEAST_FRONT_DRIVE = 50;
    private static final double MOST_REAR_DRIVE = 58;
    private static final double MOST_UNBALANCED = 0.02;

    private static final Table<CarDraft.Guess> TABLE = Table.<CarDraft.Guess>of("Guesses")
            .words("quantity", "quantity", guess -> guess.quantity().path())
            .number("value", "value", "", Numbers::plain, CarDraft.Guess::value)
            .number("standardDeviation", "off by", "", CarDraftReport::size, CarDraft.Guess::deviation)
            .words("from", "from", CarDraft.Guess::from);

    /** All that is to be said, for people and machines. */
    public Report report() {
        CarAnswers answers = draft.answers();
        Report report = new Report();
        report.title(Report.verbatim(answers.name()), ", drafted from ten answers")
                .gap();
        report.item("1 Mass", Numbers.plain(answers.massKg()) + " kg with driver, without fuel")
                .item("2 Driven", answers.driven().word())
                .item("3 Power", power(answers.power()))
                .item("4 Tyres", tyres(answers.tyres()))
                .item("5 Wheelbase", known(answers.wheelbaseM().isPresent(), Quantity.WHEELBASE))
                .item(
                        "6 Weight",
                        known(answers.frontWeightPercent().isPresent(), Quantity.FRONT_WEIGHT) + " on the front axle")
                .item(
                        "7 Downforce",
                        answers.downforce().word() + ": drag area "
                                + Numbers.fixed(draft.dragArea(), DIGITS) + " m², downforce area "
                                + Numbers.fixed(answers.downforce().liftArea().middle(), 1) + " m²")
                .item("8 Gears", gears())
                .item(
                        "9 Top speed",
                        Numbers.kmh(answers.topSpeed().metresPerSecond()) + " km/h"
                                + (answers.topSpeed().atLimiter() ? ", at the rev limiter" : ", against the air"))
                .item(
                        "10 Brakes",
                        answers.brakingG().isPresent()
                                ? Numbers.plain(answers.brakingG().getAsDouble()) + " g from 100 km/h at the hardest"
                                : "can lock all wheels")
                .gap()
                .paragraph(
                        "Guessed or reckoned from the answers; off by so much, one standard deviation, where the document says so:")
                .rows(TABLE, shown());
        reading().forEach(paragraph -> report.gap().paragraph(paragraph));
        CAUTIONS.forEach(report::caution);
        return report.field("kind", "car-draft/1")
                .field("name", answers.name())
                .field("dragAreaM2", draft.dragArea())
                .field("guesses", TABLE, draft.guesses())
                .field("reading", reading())
                .field("cautions", CAUTIONS)
                .csv("guesses.csv", TABLE, draft.guesses());
    }

    private static String size(double deviation) {
        return deviation == 0 ? "" : Numbers.plain(rounded(deviation, DIGITS));
    }

    private static double rounded(double value, int digits) {
        return new BigDecimal(value).round(new MathContext(digits)).doubleValue();
    }

    /** Guesses that a person wants to see: those whose error the document states. */
    private List<CarDraft.Guess> shown() {
        return draft.guesses().stream().filter(guess -> guess.deviation() > 0).toList();
    }

    private static String power(CarAnswers.Power power) {
        return Numbers.plain(rounded(power.watts() / KILO, 4)) + " kW at " + Numbers.plain(rounded(power.rpm(), 5))
                + " rpm"
                + (power.kind() == EngineKind.ASPIRATED
                        ? ""
                        : ", " + power.kind().word());
    }

    private static String tyres(CarAnswers.Tyres tyres) {
        String front = size(tyres.front());
        String rear = size(tyres.rear());
        return (front.equals(rear) ? front : front + " front, " + rear + " rear") + ", of kind '"
                + tyres.kind().word() + "'";
    }

    private static String size(TyreSize size) {
        return Numbers.plain(rounded(size.widthMm(), 3)) + " mm wide"
                + (size.diameterMm().isPresent()
                        ? ", " + Numbers.plain(rounded(size.diameterMm().getAsDouble(), 3)) + " mm high"
                        : "");
    }

    private String known(boolean answered, Quantity quantity) {
        return Numbers.with(draft.car().value(quantity), quantity.unit())
                + (answered ? "" : " (not answered: guessed)");
    }

    private String gears() {
        List<String> ratios = new ArrayList<>();
        for (double ratio : draft.car().gearRatios()) {
            ratios.add(Numbers.plain(ratio));
        }
        CarAnswers.Gears gears = draft.answers().gears();
        return String.join(", ", ratios) + (gears.ratios().isEmpty() ? " (guessed)" : "") + "; final drive "
                + Numbers.plain(draft.car().value(Quantity.FINAL_DRIVE))
                + (gears.finalDrive().isPresent() ? "" : " (guessed)");
    }

    /** What it means, in plain words. */
    private List<String> reading() {
        CarAnswers answers = draft.answers();
        List<String> said = new ArrayList<>();
        said.add(
                answers.topSpeed().atLimiter()
                        ? "The rev limiter stops it, so that power and top speed say only what the drag is not: it is that of such"
                                + " cars that get there."
                        : "Power and drag are known together: were one off, so would be the other, and the top speed would stand. So"
                                + " straights are told better than either.");
        unusual(said);
        said.add(
                "Not in it, because nobody could guess it: what ride heights do to downforce, dampers, toe, what is not the same left"
                        + " and right. Each has a field in the document. What can be turned, and how far, is what is usual: put your"
                        + " car's own in its place.");
        said.add(
                "Ask it questions with --draws, as in 'lapwright sensitivity FILE CIRCUIT --draws 60': the answer then says for how many"
                        + " of 100 such cars it holds, and what to measure first.");
        return said;
    }

    /** Answers that cars seldom have together, though they may. */
    private void unusual(List<String> said) {
        CarAnswers answers = draft.answers();
        double understeer = draft.understeer();
        if (Math.abs(understeer) > MOST_UNBALANCED) {
            said.add(
                    "Bars alone do not balance it: in a medium corner the " + (understeer < 0 ? "rear" : "front")
                            + " gives up first, " + Numbers.fixed(100 * Math.abs(understeer), 0)
                            + " % before the other end. A real one may have other tyres at each end, or another share of the weight.");
        }
        double width =
                2 * (answers.tyres().front().widthMm() + answers.tyres().rear().widthMm());
        double perWidth = answers.massKg() / width;
        if (perWidth > MOST_KG_PER_MM || perWidth < LEAST_KG_PER_MM) {
            said.add("Unusual: " + Numbers.fixed(perWidth, DIGITS) + " kg on each millimetre of tyre; cars have "
                    + LEAST_KG_PER_MM + " to " + MOST_KG_PER_MM + ". Is the mass, or the width, what was meant?");
        }
        double perKg = answers.power().watts() / answers.massKg();
        if (perKg > MOST_WATTS_PER_KG) {
            said.add("Unusual: " + Numbers.fixed(perKg, 0) + " W for each kilogram. Is the power what was meant?");
        }
        double front = draft.car().value(Quantity.FRONT_WEIGHT);
        if ((answers.driven() == DrivenWheels.FRONT && front < LEAST_FRONT_DRIVE)
                || (answers.driven() == DrivenWheels.REAR && front > MOST_REAR_DRIVE)) {
            said.add("Unusual: " + Numbers.plain(front) + " % of the weight in front with "
                    + answers.driven().word() + "-wheel drive.");
        }
    }
}
