package dev.lapwright.cli;

import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Cautions;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import java.util.ArrayList;
import java.util.List;

/** A balance for people. */
final class BalanceReport {
    private static final String NONE = "-";

    private final Console console;
    private final BalanceOutcome outcome;
    private final BalanceResult balance;

    BalanceReport(Console console, BalanceOutcome outcome) {
        this.console = console;
        this.outcome = outcome;
        this.balance = outcome.balance();
    }

    void print() {
        TerminalReport.print(console, outcome.subject().heading());
        Lines.item(
                console, "Lap time", console.bold(Numbers.lapTime(balance.lap().time())));
        gradient();
        console.line();
        phases();
        if (outcome.remedies().isPresent()) {
            console.line();
            new RemedyReport(
                            console, outcome.subject().car(), outcome.remedies().get())
                    .print();
        } else {
            console.line();
            yaw();
            console.line();
            aero();
        }
        for (String caution : Cautions.of(balance.lap())) {
            console.line();
            Lines.paragraph(console, console.bold("Caution:") + " " + caution);
        }
    }

    private void gradient() {
        UndersteerGradient bare = balance.gradient();
        UndersteerGradient front = new UndersteerGradient(balance.frontToe(), bare.wheelbase());
        UndersteerGradient rear = new UndersteerGradient(balance.rearToe(), bare.wheelbase());
        Lines.item(
                console,
                "Understeer",
                "gradient " + Numbers.signed(bare.degreesPerG(), 3) + " deg/g at rest, far below the limit; toe adds "
                        + Numbers.signed(front.degreesPerG(), 3) + " front, " + Numbers.signed(rear.degreesPerG(), 3)
                        + " rear; " + speed(balance.gradientWithToe()));
    }

    private static String speed(UndersteerGradient gradient) {
        if (Double.isFinite(gradient.characteristicSpeed())) {
            return "characteristic speed " + Numbers.kmh(gradient.characteristicSpeed()) + " km/h";
        }
        return Double.isFinite(gradient.criticalSpeed())
                ? "critical speed " + Numbers.kmh(gradient.criticalSpeed()) + " km/h"
                : "neutral";
    }

    private void phases() {
        Lines.paragraph(
                console,
                "The axle that gives up first, and what the other has left then: lateral acceleration in m/s2, and in"
                        + " percent of the first axle's limit. Front first is understeer, rear first oversteer.");
        Table table = new Table().words("corner").numbers("speed", "km/h");
        for (BalancePhase phase : BalancePhase.values()) {
            table.words(phase.label());
        }
        for (BalanceResult.CornerBalance corner : balance.corners()) {
            List<String> cells = new ArrayList<>();
            cells.add(corner.corner().label());
            cells.add(Numbers.kmh(
                    corner.in(BalancePhase.MIDDLE).orElseThrow().state().speed()));
            for (BalancePhase phase : BalancePhase.values()) {
                cells.add(corner.in(phase)
                        .map(BalanceResult.PhaseBalance::margins)
                        .map(BalanceReport::cell)
                        .orElse(NONE));
            }
            table.row(cells, false);
        }
        List<String> cells = new ArrayList<>(List.of("mean", ""));
        for (BalancePhase phase : BalancePhase.values()) {
            cells.add(cell(balance.understeer(phase), balance.limit(phase)));
        }
        table.row(cells, true);
        table.printTo(console);
        balance.corners().stream()
                .filter(corner -> corner.phases().stream()
                        .anyMatch(phase -> phase.margins().tipsFirst()))
                .forEach(corner -> Lines.paragraph(
                        console,
                        "In " + corner.corner().label() + " the car would roll over before either axle gives up."));
    }

    private static String cell(AxleMargins margins) {
        return cell(margins.understeer(), margins.limit());
    }

    private static String cell(double understeer, double limit) {
        if (!Double.isFinite(understeer)) {
            return NONE;
        }
        double reserve = Math.abs(understeer);
        String size = Numbers.fixed(reserve, 2);
        if (size.equals("0.00")) {
            return "even";
        }
        String percent = limit > 0 ? " (" + Numbers.fixed(100 * reserve / limit, 0) + " %)" : "";
        return (understeer > 0 ? "front " : "rear ") + size + percent;
    }

    private void yaw() {
        Lines.paragraph(
                console,
                "Yaw: the greatest yaw acceleration that the path asks for at the lap's speed, the moment for it (yaw"
                        + " inertia " + Numbers.fixed(balance.yawInertia(), 0)
                        + " kg m2), and how much of an axle's lateral grip that moment takes: of the front turning in, of"
                        + " the rear unwinding.");
        Table table = new Table().words("corner");
        for (String way : List.of("in", "out")) {
            table.numbers("yaw " + way, "rad/s2").numbers("moment " + way, "Nm").numbers("grip " + way, "%");
        }
        boolean steps = false;
        for (BalanceResult.CornerBalance corner : balance.corners()) {
            List<String> cells = new ArrayList<>();
            cells.add(corner.corner().label());
            for (BalanceResult.YawDemand demand : List.of(corner.turningIn(), corner.unwinding())) {
                steps |= demand.isStep();
                cells.add(demand.isStep() ? "step" : Numbers.signed(demand.acceleration(), 2));
                cells.add(demand.isStep() ? NONE : Numbers.signed(demand.moment(), 0));
                cells.add(demand.isStep() ? NONE : Numbers.fixed(100 * demand.gripShare(), 1));
            }
            table.row(cells, false);
        }
        table.printTo(console);
        if (steps) {
            Lines.paragraph(console, "A step: the path's curvature jumps there, which no car can follow.");
        }
    }

    private void aero() {
        Lines.paragraph(console, "Downforce over air speed, and the understeer gradient at those loads, without toe:");
        Table table = new Table()
                .numbers("speed", "km/h")
                .numbers("downforce", "N")
                .numbers("front", "%")
                .numbers("front height", "mm")
                .numbers("rear height", "mm")
                .numbers("gradient", "deg/g");
        for (AeroBalance aero : balance.aero()) {
            table.row(
                    Numbers.kmh(aero.airSpeed()),
                    Numbers.fixed(aero.front() + aero.rear(), 0),
                    Numbers.percent(aero.frontShare()),
                    Numbers.fixed(aero.frontHeightMm(), 1),
                    Numbers.fixed(aero.rearHeightMm(), 1),
                    Numbers.signed(aero.gradient().degreesPerG(), 3));
        }
        table.printTo(console);
    }
}
