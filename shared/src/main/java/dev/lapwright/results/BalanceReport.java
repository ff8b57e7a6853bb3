package dev.lapwright.results;

import dev.lapwright.car.Caution;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.slip.SlipState;
import dev.lapwright.study.advice.AdviceResult;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.SlipBalanceResult;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;

/**
 * Report of a car's balance on a lap: which axle gives up first in each phase of each corner, and what to turn against the
 * driver's complaint.
 *
 * @param subject the car, set up, and where
 * @param result what was found
 * @param advice against what the driver says, if that was asked for
 * @param slip steer, sideslip and stability by the fuller model; empty if it was not asked, or does not stand for the car
 */
public record BalanceReport(
        Subject subject, BalanceResult result, Optional<AdviceResult> advice, Optional<SlipBalanceResult> slip) {
    private static final double PERCENT = 100;
    private static final Set<Limit> AXLES = EnumSet.of(Limit.FRONT_GRIP, Limit.REAR_GRIP);

    /** The same without the fuller model's word. */
    public BalanceReport(Subject subject, BalanceResult result, Optional<AdviceResult> advice) {
        this(subject, result, advice, Optional.empty());
    }

    private static final Table<BalanceResult.PhaseBalance> PHASES = Table.<BalanceResult.PhaseBalance>of("Phases")
            .value("phase", phase -> phase.phase().label())
            .value("distanceM", BalanceResult.PhaseBalance::distance)
            .value("speedKmh", phase -> LapTrace.kmh(phase.state().speed()))
            .value("gear", phase -> phase.state().gear())
            .value("accelerationG", phase -> LapTrace.g(phase.margins().acceleration()))
            .value("wheelForceN", phase -> phase.margins().force())
            .value("lapLateralAccelerationG", phase -> LapTrace.g(phase.lateralAcceleration()))
            .value("frontLimitG", phase -> LapTrace.g(phase.margins().front()))
            .value("rearLimitG", phase -> LapTrace.g(phase.margins().rear()))
            .value("firstAxle", phase -> phase.margins().first().label())
            .value("firstWheel", phase -> phase.margins().firstWheel().label())
            .value("reserveG", phase -> LapTrace.g(phase.margins().reserve()))
            .value("reservePercent", phase -> PERCENT * phase.margins().reserveShare())
            .value("rearLessFrontG", phase -> LapTrace.g(phase.margins().understeer()))
            .value("differentialYawMomentNm", phase -> phase.margins().yawMoment())
            .value("rollOverG", phase -> LapTrace.g(phase.margins().rollOver()))
            .value("frontDownforcePercent", phase -> frontDownforce(phase.margins()));

    /** A phase in its corner. */
    private record CornerPhase(BalanceResult.CornerBalance corner, BalanceResult.PhaseBalance phase) {}

    private static final Table<CornerPhase> CORNER_PHASES = Table.<CornerPhase>of("Phases of all corners")
            .value("corner", row -> row.corner().corner().number())
            .value("cornerName", row -> row.corner().corner().name())
            .all(PHASES, CornerPhase::phase);

    private static final Table<BalanceResult.YawDemand> YAW = Table.<BalanceResult.YawDemand>of("Yaw")
            .value("distanceM", BalanceResult.YawDemand::distance)
            .value("curvatureSteps", BalanceResult.YawDemand::isStep)
            .value("yawAccelerationRadPerS2", BalanceResult.YawDemand::acceleration)
            .value("yawMomentNm", BalanceResult.YawDemand::moment)
            .value("axleGripPercent", demand -> PERCENT * demand.gripShare());

    private static final Table<BalanceResult.CornerBalance> CORNERS = Table.<BalanceResult.CornerBalance>of("Corners")
            .value("number", corner -> corner.corner().number())
            .value("name", corner -> corner.corner().name())
            .value("turn", corner -> corner.corner().left() ? "left" : "right")
            .rows("phases", PHASES, BalanceResult.CornerBalance::phases)
            .value("turningIn", corner -> YAW.map(corner.turningIn()))
            .value("unwinding", corner -> YAW.map(corner.unwinding()));

    private static final Table<AeroBalance> AERO = Table.<AeroBalance>of("Downforce over air speed")
            .number("airSpeedKmh", "speed", "km/h", Numbers.fixed(1), aero -> LapTrace.kmh(aero.airSpeed()))
            .value("frontDownforceN", AeroBalance::front)
            .value("rearDownforceN", AeroBalance::rear)
            .number("", "downforce", "N", Numbers.fixed(0), aero -> aero.front() + aero.rear())
            .number("frontPercent", "front", "%", Numbers.fixed(1), aero -> PERCENT * aero.frontShare())
            .number("frontRideHeightMm", "front height", "mm", Numbers.fixed(1), AeroBalance::frontHeightMm)
            .number("rearRideHeightMm", "rear height", "mm", Numbers.fixed(1), AeroBalance::rearHeightMm)
            .number(
                    "understeerGradientDegPerG",
                    "gradient",
                    "deg/g",
                    Numbers.signed(3),
                    aero -> aero.gradient().degreesPerG());

    private static final Table<SlipState.SlipWheel> WHEEL = Table.<SlipState.SlipWheel>of("Wheel")
            .value("loadN", SlipState.SlipWheel::load)
            .value("slipPercent", wheel -> PERCENT * wheel.slip())
            .value("slipAngleDeg", wheel -> Math.toDegrees(wheel.slipAngle()))
            .value("alongN", SlipState.SlipWheel::along)
            .value("acrossN", SlipState.SlipWheel::across)
            .value("useOfPeakPercent", wheel -> PERCENT * wheel.use());

    private static final Table<SlipBalanceResult.Phase> SLIP_PHASES = Table.<SlipBalanceResult.Phase>of(
                    "Phases by slip")
            .value("phase", phase -> phase.phase().label())
            .value("distanceM", SlipBalanceResult.Phase::distance)
            .value("speedKmh", phase -> LapTrace.kmh(phase.state().speed()))
            .value("accelerationG", phase -> LapTrace.g(phase.state().acceleration()))
            .value("lateralAccelerationG", phase -> LapTrace.g(phase.state().lateral()))
            .value("steerDeg", phase -> Math.toDegrees(phase.state().steer()))
            .value("sideslipDeg", phase -> Math.toDegrees(phase.state().sideslip()))
            .value("staticMarginPercent", phase -> PERCENT * phase.state().staticMargin())
            .value("frontStiffnessLeftPercent", phase -> PERCENT * phase.state().frontStiffness())
            .value("rearStiffnessLeftPercent", phase -> PERCENT * phase.state().rearStiffness())
            .value("differentialYawMomentNm", phase -> phase.state().yawMoment())
            .value("limit", phase -> phase.state().limit().label())
            .rows("inner", WHEEL, phase -> phase.state().inner())
            .rows("outer", WHEEL, phase -> phase.state().outer());

    private static final Table<SlipBalanceResult.Corner> SLIP_CORNERS = Table.<SlipBalanceResult.Corner>of(
                    "Corners by slip")
            .value("number", corner -> corner.corner().number())
            .value("first", corner -> corner.first().map(Limit::label).orElse(null))
            .value("gradientNearLimitDegPerG", corner -> degreesPerG(corner.gradient()))
            .rows("phases", SLIP_PHASES, SlipBalanceResult.Corner::phases);

    /** All that was found, for people, machines and files. */
    public Report report() {
        Report report = subject.heading()
                .item("Lap time", Report.strong(Numbers.lapTime(result.lap().time())))
                .item("Understeer", gradient())
                .gap();
        phases(report);
        report.gap();
        List<String> cautions = Cautions.of(result.lap());
        report.fields(fields(result))
                .field("setup", subject.setup().name())
                .field("line", subject.line().tree())
                .field("cautions", cautions);
        if (advice.isPresent()) {
            advice(report, advice.get());
        } else {
            yaw(report);
            report.gap()
                    .paragraph("Downforce over air speed, and the understeer gradient at those loads, without toe:")
                    .rows(AERO, result.aero());
        }
        slip.ifPresent(found -> {
            slip(report, found);
            disagreement(result, found)
                    .ifPresent(said -> report.gap().paragraph(said).field("balanceInDoubt", said));
        });
        cautions.forEach(report::caution);
        List<CornerPhase> rows = result.corners().stream()
                .flatMap(corner -> corner.phases().stream().map(phase -> new CornerPhase(corner, phase)))
                .toList();
        return report.csv("balance.csv", CORNER_PHASES, rows);
    }

    private void advice(Report report, AdviceResult found) {
        AdviceReport answer = new AdviceReport(found);
        List<RemedyReport> against = found.against().stream()
                .map(one -> new RemedyReport(subject.car(), one))
                .toList();
        against.forEach(one -> one.told(report));
        answer.addTo(report);
        for (RemedyReport one : against) {
            one.addTo(report.gap());
        }
        RemedyReport.table(against, report);
        Set<Caution> dangers = EnumSet.noneOf(Caution.class);
        dangers.addAll(answer.cautions());
        against.forEach(one -> dangers.addAll(one.cautions()));
        dangers.forEach(caution -> report.caution(caution.text()));
        report.field("complaints", against.stream().map(RemedyReport::fields).toList())
                .field("advice", answer.fields());
    }

    /** What was found, for machines. */
    static Map<String, Object> fields(BalanceResult result) {
        UndersteerGradient atRest = result.gradient();
        Report gradient = new Report()
                .field("degPerG", atRest.degreesPerG())
                .field("radPerMps2", atRest.radPerMps2())
                .field("characteristicSpeedKmh", LapTrace.kmh(atRest.characteristicSpeed()))
                .field("criticalSpeedKmh", LapTrace.kmh(atRest.criticalSpeed()))
                .field("frontToeDegPerG", toe(result, result.frontToe()))
                .field("rearToeDegPerG", toe(result, result.rearToe()));
        Table<BalancePhase> mean = Table.<BalancePhase>of("Means over the corners")
                .value("corners", result::count)
                .value("limitG", phase -> LapTrace.g(result.limit(phase)))
                .value("rearLessFrontG", phase -> LapTrace.g(result.understeer(phase)));
        Map<String, Object> means = new LinkedHashMap<>();
        for (BalancePhase phase : BalancePhase.values()) {
            means.put(phase.label(), mean.map(phase));
        }
        return new Report()
                .fields(ResultHeader.later("balance/2", result.lap()))
                .field("lapTimeS", result.lap().time())
                .field("understeerGradientAtRest", gradient.fields())
                .field("yawInertiaKgM2", result.yawInertia())
                .field("means", means)
                .field("corners", CORNERS, result.corners())
                .field("aero", AERO, result.aero())
                .fields();
    }

    /** Understeer gradient that toe adds, degrees per g. */
    private static double toe(BalanceResult result, double radPerMps2) {
        return new UndersteerGradient(radPerMps2, result.gradient().wheelbase()).degreesPerG();
    }

    private static double frontDownforce(AxleMargins margins) {
        double downforce = margins.frontDownforce() + margins.rearDownforce();
        return downforce > 0 ? PERCENT * margins.frontDownforce() / downforce : Table.NOT_KNOWN;
    }

    private String gradient() {
        return "gradient " + Numbers.signed(result.gradient().degreesPerG(), 3)
                + " deg/g at rest, far below the limit; toe adds "
                + Numbers.signed(toe(result, result.frontToe()), 3) + " front, "
                + Numbers.signed(toe(result, result.rearToe()), 3) + " rear; " + speed(result.gradientWithToe());
    }

    private static String speed(UndersteerGradient gradient) {
        if (Double.isFinite(gradient.characteristicSpeed())) {
            return "characteristic speed " + Numbers.kmh(gradient.characteristicSpeed()) + " km/h";
        }
        return Double.isFinite(gradient.criticalSpeed())
                ? "critical speed " + Numbers.kmh(gradient.criticalSpeed()) + " km/h"
                : "neutral";
    }

    /** A corner as people read it, or the mean of all. */
    private record Line(
            String label,
            String speed,
            Function<BalancePhase, String> balance,
            Function<BalancePhase, String> share,
            boolean isMean) {}

    private void phases(Report report) {
        Table<Line> table = Table.<Line>of("The axle that gives up first")
                .names("", "corner", Line::label)
                .text("speed", "km/h", Line::speed);
        for (BalancePhase phase : BalancePhase.values()) {
            table.words("", phase.label(), line -> line.balance().apply(phase))
                    .text("share", "%", line -> line.share().apply(phase))
                    .with(Table.Trait.LESSER);
        }
        List<Line> lines = new ArrayList<>();
        result.corners().forEach(corner -> lines.add(line(corner)));
        lines.add(new Line(
                "mean",
                "",
                phase -> balance(result.understeer(phase)),
                phase -> share(result.understeer(phase), result.limit(phase)),
                true));
        report.paragraph(
                        "The axle that gives up first, and what the other has left then: lateral acceleration in g, and in"
                                + " percent of the first axle's limit (share). Front first is understeer, rear first oversteer.")
                .rows(table.marking(Line::isMean), lines);
        result.corners().stream()
                .filter(corner -> corner.phases().stream()
                        .anyMatch(phase -> phase.margins().tipsFirst()))
                .forEach(corner ->
                        report.paragraph("In " + Report.verbatim(corner.corner().label())
                                + " the car would roll over before either axle gives up."));
    }

    private static Line line(BalanceResult.CornerBalance corner) {
        double speed = corner.in(BalancePhase.MIDDLE).orElseThrow().state().speed();
        return new Line(
                corner.corner().label(),
                Numbers.kmh(speed),
                phase -> corner.in(phase)
                        .map(BalanceResult.PhaseBalance::margins)
                        .map(margins -> balance(margins.understeer()))
                        .orElse("-"),
                phase -> corner.in(phase)
                        .map(BalanceResult.PhaseBalance::margins)
                        .map(margins -> share(margins.understeer(), margins.limit()))
                        .orElse("-"),
                false);
    }

    private static String balance(double understeer) {
        double reserve = Math.abs(understeer);
        String size = Numbers.fixed(LapTrace.g(reserve), 3);
        if (!Double.isFinite(understeer)) {
            return size;
        }
        if (size.equals("0.000")) {
            return "even";
        }
        return (understeer > 0 ? "front " : "rear ") + size;
    }

    /** What the other axle has left, percent of the first one's limit. */
    private static String share(double understeer, double limit) {
        return Double.isFinite(understeer) && limit > 0
                ? Numbers.fixed(PERCENT * Math.abs(understeer) / limit, 0)
                : Numbers.fixed(Double.NaN, 0);
    }

    /** Steer, sideslip and stability by the fuller model. */
    private static void slip(Report report, SlipBalanceResult found) {
        Table<SlipBalanceResult.Corner> table = Table.<SlipBalanceResult.Corner>of("By the fuller model")
                .names("", "corner", corner -> corner.corner().label())
                .words(
                        "",
                        "gives up",
                        corner -> corner.first().map(Limit::label).orElse("-"))
                .text("steer", "deg", corner -> middle(corner, state -> Math.toDegrees(state.steer())))
                .text("sideslip", "deg", corner -> middle(corner, state -> Math.toDegrees(state.sideslip())))
                .text("gradient", "deg/g", corner -> Numbers.signed(degreesPerG(corner.gradient()), 1))
                .with(Table.Trait.LESSER);
        for (BalancePhase phase : BalancePhase.values()) {
            table.text(
                    "margin " + phase.label(),
                    "%",
                    corner -> corner.in(phase)
                            .map(state -> Numbers.signed(PERCENT * state.staticMargin(), 0))
                            .orElse("-"));
        }
        report.gap()
                .paragraph("By the fuller model, lap "
                        + Numbers.lapTime(found.lap().time())
                        + ": what gives up first in the middle, power aside, steer and sideslip there (minus with the tail out), how steer grows with"
                        + " lateral acceleration just below the limit, and the static margin of stability in each phase, percent"
                        + " of the wheelbase (minus: with the steering held the car turns further in by itself).")
                .rows(table, found.corners())
                .field(
                        "fuller",
                        new Report()
                                .field("lapTimeS", found.lap().time())
                                .field("uncheckedAtM", LapModel.unchecked(found.lap()))
                                .field("corners", SLIP_CORNERS, found.corners())
                                .fields());
    }

    /** In how many corners the two models let another axle give up first in the middle, and what to make of it; empty if in none. */
    private static Optional<String> disagreement(BalanceResult fast, SlipBalanceResult found) {
        int told = 0;
        int other = 0;
        double most = 0;
        for (int i = 0; i < found.corners().size(); i++) {
            AxleMargins margins =
                    fast.corners().get(i).in(BalancePhase.MIDDLE).orElseThrow().margins();
            Optional<Limit> first = found.corners().get(i).first().filter(AXLES::contains);
            if (first.isPresent() && Double.isFinite(margins.understeer())) {
                told++;
                if (margins.understeer() > 0 != (first.get() == Limit.FRONT_GRIP)) {
                    other++;
                    most = Math.max(most, margins.reserveShare());
                }
            }
        }
        return other == 0
                ? Optional.empty()
                : Optional.of("In the middle of " + other + " of " + told
                        + " corners the two models let another axle give up first: there"
                        + " balance cannot be told. The fast one gives the other axle at most "
                        + Numbers.fixed(PERCENT * most, 0) + " % more.");
    }

    private static double degreesPerG(double radPerMps2) {
        return Math.toDegrees(radPerMps2) / LapTrace.g(1);
    }

    private static String middle(SlipBalanceResult.Corner corner, ToDoubleFunction<SlipState> figure) {
        return corner.in(BalancePhase.MIDDLE)
                .map(state -> Numbers.signed(figure.applyAsDouble(state), 1))
                .orElse("-");
    }

    private void yaw(Report report) {
        Table<BalanceResult.CornerBalance> table = Table.<BalanceResult.CornerBalance>of("Yaw")
                .names("", "corner", corner -> corner.corner().label());
        yaw(table, "in", BalanceResult.CornerBalance::turningIn);
        yaw(table, "out", BalanceResult.CornerBalance::unwinding);
        report.paragraph(
                        "Yaw: the greatest yaw acceleration that the path asks for at the lap's speed, the moment for it (yaw"
                                + " inertia " + Numbers.fixed(result.yawInertia(), 0)
                                + " kg m2), and how much of an axle's lateral grip that moment takes: of the front turning in, of"
                                + " the rear unwinding.")
                .rows(table, result.corners());
        if (result.corners().stream()
                .anyMatch(corner ->
                        corner.turningIn().isStep() || corner.unwinding().isStep())) {
            report.paragraph("A step: the path's curvature jumps there, which no car can follow.");
        }
    }

    private static void yaw(
            Table<BalanceResult.CornerBalance> table,
            String way,
            Function<BalanceResult.CornerBalance, BalanceResult.YawDemand> demand) {
        table.text("yaw " + way, "rad/s2", corner -> {
                    BalanceResult.YawDemand yaw = demand.apply(corner);
                    return yaw.isStep() ? "step" : Numbers.signed(yaw.acceleration(), 2);
                })
                .number("", "moment " + way, "Nm", Numbers.signed(0), corner -> {
                    BalanceResult.YawDemand yaw = demand.apply(corner);
                    return yaw.isStep() ? null : (Double) yaw.moment();
                })
                .number("", "grip " + way, "%", Numbers.fixed(1), corner -> {
                    BalanceResult.YawDemand yaw = demand.apply(corner);
                    return yaw.isStep() ? null : (Double) (PERCENT * yaw.gripShare());
                });
    }
}
