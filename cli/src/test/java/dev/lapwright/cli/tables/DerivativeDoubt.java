package dev.lapwright.cli.tables;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineSearch;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.robust.LinearDoubt;
import dev.lapwright.study.robust.Robustness;
import dev.lapwright.study.robust.RobustnessResult;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;

/** Table of intervals by derivatives beside those of drawn cars, for all adjustments of the demo cars on the demo circuits, by kind of question. */
final class DerivativeDoubt {
    private static final int DRAWS = 200;
    private static final long SEED = 1;
    /** A difference none of whose interval is more than this, s, asks nothing. */
    private static final double NOTHING = 0.01;

    private static final StationSpacing SPACING = StationSpacing.DEFAULT.scaled(2);

    /** What is asked of one adjustment. */
    private record Question(Car car, String kind) {}

    /** How both answer. */
    private record Answer(LinearDoubt.Standing linear, RobustnessResult.Standing drawn) {
        double widthRatio() {
            return (linear.high() - linear.low()) / (drawn.high() - drawn.low());
        }

        /** How far the worse of both ends is off, s. */
        double miss() {
            return Math.max(Math.abs(linear.low() - drawn.low()), Math.abs(linear.high() - drawn.high()));
        }

        boolean sameWord() {
            return linear.verdict() == drawn.verdict();
        }
    }

    private DerivativeDoubt() {}

    static void print() {
        Map<String, List<Answer>> byKind = new LinkedHashMap<>();
        for (String kind : List.of("a step of ", "the far end of ")) {
            for (String of : List.of(
                    "wings",
                    "ride heights",
                    "bars",
                    "springs",
                    "gears",
                    "locks",
                    "camber and toe",
                    "pressures",
                    "brakes",
                    "weight")) {
                byKind.put(kind + of, new ArrayList<>());
            }
        }
        double byDerivatives = 0;
        double byDraws = 0;
        for (String circuit : List.of("harrowmere", "castelvane", "skarnfell")) {
            for (String name : List.of("gt-talvex", "touring-merrow", "student-pipit")) {
                Car car = Documents.car(name);
                Track line = LineSearch.of(Documents.circuit(circuit), car, LineChoices.DEFAULT)
                        .smoothest()
                        .driven();
                List<Question> questions = questions(car);
                LinearDoubt linear = LinearDoubt.of(car, line, SPACING, Conditions.STANDARD);
                Robustness drawn = Robustness.of(car, line, SPACING, Conditions.STANDARD)
                        .withDraws(DRAWS)
                        .withSeed(SEED);
                for (Question question : questions) {
                    linear = linear.against(question.car());
                    drawn = drawn.against(question.car());
                }
                long start = System.nanoTime();
                LinearDoubt.Result cheap = linear.run(StudyRun.onAllCores());
                long middle = System.nanoTime();
                RobustnessResult full = drawn.run(StudyRun.onAllCores());
                byDerivatives += middle - start;
                byDraws += System.nanoTime() - middle;
                for (int i = 0; i < questions.size(); i++) {
                    Answer answer = new Answer(
                            cheap.standings().get(i), full.standings().get(i));
                    if (Math.max(
                                    Math.abs(answer.drawn().low()),
                                    Math.abs(answer.drawn().high()))
                            > NOTHING) {
                        byKind.get(questions.get(i).kind()).add(answer);
                    }
                }
            }
        }
        System.out.printf(
                Locale.ROOT,
                "Nine demo laps, %d cars drawn (seed %d) beside derivatives by the same unknowns; time of all derivatives over that of all drawn cars: %.2f.%n%n",
                DRAWS,
                SEED,
                byDerivatives / byDraws);
        System.out.println(
                "| question | asked | width over that of drawn cars: 5 % | middle | 95 % | worse end off by, s: middle | 95 % | another word |");
        System.out.println("|---|---|---|---|---|---|---|---|");
        byKind.values().removeIf(List::isEmpty);
        byKind.forEach(DerivativeDoubt::row);
    }

    private static void row(String kind, List<Answer> answers) {
        double[] ratios = answers.stream().mapToDouble(Answer::widthRatio).toArray();
        double[] misses = answers.stream().mapToDouble(Answer::miss).toArray();
        System.out.printf(
                Locale.ROOT,
                "| %s | %d | %.2f | %.2f | %.2f | %.3f | %.3f | %d |%n",
                kind,
                answers.size(),
                percentile(ratios, 5),
                percentile(ratios, 50),
                percentile(ratios, 95),
                percentile(misses, 50),
                percentile(misses, 95),
                answers.stream().filter(answer -> !answer.sameWord()).count());
    }

    private static double percentile(double[] values, double percent) {
        return new Percentile()
                .withEstimationType(Percentile.EstimationType.R_7)
                .evaluate(values, percent);
    }

    /** The next setting above, or below where there is none, and the end of the range that is farther. */
    private static List<Question> questions(Car car) {
        List<Question> questions = new ArrayList<>();
        for (Adjustment adjustment : car.adjustments()) {
            List<Double> legal = adjustment.legalSettings();
            double now = car.setting(adjustment.name());
            String of = of(adjustment.effects().get(0).quantity());
            if (legal.size() < 2 || of.isEmpty()) {
                continue;
            }
            double step =
                    legal.stream().filter(setting -> setting > now).findFirst().orElse(legal.get(legal.size() - 2));
            double least = legal.get(0);
            double most = legal.get(legal.size() - 1);
            double end = most - now >= now - least ? most : least;
            questions.add(new Question(car.with(adjustment.name(), step), "a step of " + of));
            if (end != step) {
                questions.add(new Question(car.with(adjustment.name(), end), "the far end of " + of));
            }
        }
        return questions;
    }

    /** The kind of thing that moves a quantity; empty for what no lap sees. */
    private static String of(String quantity) {
        if (quantity.startsWith("aero.")) {
            return "wings";
        }
        if (quantity.endsWith("rideHeightMm")) {
            return "ride heights";
        }
        if (quantity.endsWith("antiRollBarNmPerDeg")) {
            return "bars";
        }
        if (quantity.endsWith("springNPerMm")) {
            return "springs";
        }
        if (quantity.startsWith("gearbox.")) {
            return "gears";
        }
        if (quantity.startsWith("drive.")) {
            return "locks";
        }
        if (quantity.contains("amber") || quantity.contains("toe")) {
            return "camber and toe";
        }
        if (quantity.contains("ressure")) {
            return "pressures";
        }
        if (quantity.startsWith("brakes.")) {
            return "brakes";
        }
        return quantity.startsWith("chassis.") ? "weight" : "";
    }
}
