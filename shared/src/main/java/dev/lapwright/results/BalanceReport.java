package dev.lapwright.results;

import dev.lapwright.car.Caution;
import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.Channel;
import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.Limit;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.report.Table;
import dev.lapwright.slip.SlipState;
import dev.lapwright.study.advice.AdviceResult;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import dev.lapwright.study.balance.SlipBalanceResult;
import dev.lapwright.track.Corner;
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
 * @param freeBody corner in whose middle every force is told, by both models
 */
public record BalanceReport(
        Subject subject,
        BalanceResult result,
        Optional<AdviceResult> advice,
        Optional<SlipBalanceResult> slip,
        Optional<Corner> freeBody) {
    private static final double PERCENT = 100;
    private static final Set<Limit> AXLES = EnumSet.of(Limit.FRONT_GRIP, Limit.REAR_GRIP);

    /** The same without the fuller model's word. */
    public BalanceReport(Subject subject, BalanceResult result, Optional<AdviceResult> advice) {
        this(subject, result, advice, Optional.empty(), Optional.empty());
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
            .number("rearRideHeightMm", "rear height", "mm", Numbers.fixed(1), AeroBalance::rearHeightMm);

    /** By two wheels, where the fuller model has no word. */
    private static final Table<AeroBalance> TWO_WHEELS = Table.<AeroBalance>of("Downforce over air speed")
            .all(AERO, aero -> aero)
            .number(
                    "understeerGradientDegPerG",
                    "gradient",
                    "deg/g",
                    Numbers.signed(3),
                    aero -> aero.gradient().degreesPerG());

    private static final Table<SlipBalanceResult.Steering> STEERING = Table.<SlipBalanceResult.Steering>of(
                    "Steering over speed")
            .all(AERO, SlipBalanceResult.Steering::aero)
            .number(
                    "greatestLateralAccelerationG",
                    "most lateral",
                    "g",
                    Numbers.fixed(2),
                    steering -> LapTrace.g(steering.most()))
            .number(
                    "understeerGradientDegPerG",
                    "gradient",
                    "deg/g",
                    Numbers.signed(2),
                    steering -> degreesPerG(steering.gradient()))
            .number(
                    "understeerGradientAtHalfDegPerG",
                    "at half",
                    "deg/g",
                    Numbers.signed(2),
                    steering -> degreesPerG(steering.half()));

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

    /** A term of the free body. */
    private record Term(String name, String unit, String fast, String fuller) {}

    private static final Table<Term> TERMS = Table.<Term>of("Terms")
            .names("term", "term", Term::name)
            .words("unit", "unit", Term::unit)
            .text("fast", "", Term::fast)
            .text("fuller", "", Term::fuller);

    /** A wheel of the free body: its load by the fast model, and all of it by the fuller one. */
    private record BodyWheel(String name, double load, SlipState.SlipWheel state) {}

    private static final Table<BodyWheel> BODY_WHEELS = Table.<BodyWheel>of("Wheels")
            .names("wheel", "wheel", BodyWheel::name)
            .number("loadFastN", "load fast", "N", Numbers.fixed(0), BodyWheel::load)
            .number(
                    "loadFullerN",
                    "load fuller",
                    "N",
                    Numbers.fixed(0),
                    wheel -> wheel.state().load())
            .number(
                    "slipPercent",
                    "slip",
                    "%",
                    Numbers.signed(1),
                    wheel -> PERCENT * wheel.state().slip())
            .number(
                    "slipAngleDeg",
                    "slip angle",
                    "deg",
                    Numbers.signed(1),
                    wheel -> Math.toDegrees(wheel.state().slipAngle()))
            .number(
                    "alongN",
                    "along",
                    "N",
                    Numbers.signed(0),
                    wheel -> wheel.state().along())
            .number(
                    "acrossN",
                    "across",
                    "N",
                    Numbers.signed(0),
                    wheel -> wheel.state().across())
            .number(
                    "useOfPeakPercent",
                    "of peak slip",
                    "%",
                    Numbers.fixed(0),
                    wheel -> PERCENT * wheel.state().use());

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
            aero(report.gap());
        }
        slip.ifPresent(found -> {
            slip(report, found);
            disagreement(result, found)
                    .ifPresent(said -> report.gap().paragraph(said).field("balanceInDoubt", said));
        });
        freeBody.ifPresent(at -> freeBody(report.gap(), at));
        cautions.forEach(report::caution);
        List<CornerPhase> rows = result.corners().stream()
                .flatMap(corner -> corner.phases().stream().map(phase -> new CornerPhase(corner, phase)))
                .toList();
        return report.csv("balance.csv", CORNER_PHASES, rows);
    }

    private void aero(Report report) {
        List<SlipBalanceResult.Steering> steering = steering();
        if (steering.isEmpty()) {
            report.paragraph(
                            "Downforce over air speed, and the understeer gradient at those loads by two wheels, without toe:")
                    .rows(TWO_WHEELS, result.aero());
            return;
        }
        report.paragraph(
                        "Downforce over air speed, and by the fuller model at constant speed on a level road the most lateral acceleration, and the"
                                + " understeer gradient far below it and at half of it, with toe, load transfer and the differential's friction:")
                .rows(STEERING, steering);
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
                .field("aero", TWO_WHEELS, result.aero())
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
        List<SlipBalanceResult.Steering> steering = steering();
        if (!steering.isEmpty()) {
            return "gradient " + slightly(steering.get(0)) + ", " + slightly(steering.get(steering.size() - 1))
                    + ", far below the limit, by the fuller model";
        }
        return "gradient " + Numbers.signed(result.gradient().degreesPerG(), 3)
                + " deg/g at rest by two wheels, far below the limit; toe adds "
                + Numbers.signed(toe(result, result.frontToe()), 3) + " front, "
                + Numbers.signed(toe(result, result.rearToe()), 3) + " rear; " + speed(result.gradientWithToe());
    }

    private List<SlipBalanceResult.Steering> steering() {
        return slip.map(SlipBalanceResult::steering).orElse(List.of());
    }

    private static String slightly(SlipBalanceResult.Steering steering) {
        return Numbers.signed(degreesPerG(steering.gradient()), 2) + " deg/g at "
                + Numbers.kmh(steering.aero().airSpeed()) + " km/h";
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
                                .field("steering", STEERING, found.steering())
                                .fields());
    }

    /** Every force where a corner is slowest by both models, each on its own lap. */
    private void freeBody(Report report, Corner at) {
        Optional<SlipBalanceResult.Corner> corner = slip.flatMap(found -> found.corners().stream()
                .filter(one -> one.corner().number() == at.number())
                .findFirst());
        Optional<SlipState> there = corner.flatMap(SlipBalanceResult.Corner::there);
        if (there.isEmpty()) {
            report.paragraph(
                    "The fuller model has no equilibrium where " + Report.verbatim(at.label()) + " is slowest.");
            return;
        }
        Lap fast = result.lap();
        Lap fuller = slip.get().lap();
        int station = corner.get().slowest();
        double distance = fuller.value(Channel.DISTANCE, station);
        SlipState state = there.get();
        List<Term> terms = new ArrayList<>();
        Both both = new Both(fast, fuller, station);
        terms.add(both.term("speed", "km/h", Channel.SPEED, LapTrace.kmh(1), 1));
        terms.add(both.term("acceleration along the path", "g", Channel.ACCELERATION, LapTrace.g(1), 3));
        double inwards = state.left() ? 1 : -1;
        terms.add(both.term("acceleration across it", "g", Channel.LATERAL_ACCELERATION, inwards * LapTrace.g(1), 3));
        terms.add(both.term("drag", "N", Channel.DRAG, 1, 0));
        terms.add(both.term("front downforce", "N", Channel.DOWNFORCE_FRONT, 1, 0));
        terms.add(both.term("rear downforce", "N", Channel.DOWNFORCE_REAR, 1, 0));
        terms.add(new Term(
                "drive less brakes",
                "N",
                Numbers.fixed(fast.value(Channel.DRIVE_FORCE, station) - fast.value(Channel.BRAKE_FORCE, station), 0),
                Numbers.fixed(state.force(), 0)));
        terms.add(new Term(
                "drag of cornering",
                "N",
                Numbers.fixed(fast.value(Channel.CORNERING_DRAG, station), 0),
                "in the wheels"));
        terms.add(new Term(
                "use of the front axle",
                "%",
                Numbers.fixed(PERCENT * fast.value(Channel.UTILISATION_FRONT, station), 1),
                "by wheel"));
        terms.add(new Term(
                "use of the rear axle",
                "%",
                Numbers.fixed(PERCENT * fast.value(Channel.UTILISATION_REAR, station), 1),
                "by wheel"));
        terms.add(new Term("steer", "deg", "none", Numbers.signed(Math.toDegrees(state.steer()), 1)));
        terms.add(new Term("sideslip", "deg", "none", Numbers.signed(Math.toDegrees(state.sideslip()), 1)));
        terms.add(new Term("yaw moment of forces along the wheels", "Nm", "", Numbers.signed(state.yawMoment(), 0)));
        boolean left = state.left();
        List<BodyWheel> wheels = List.of(
                both.wheel(
                        "front inner",
                        left ? Channel.LOAD_FRONT_LEFT : Channel.LOAD_FRONT_RIGHT,
                        state.inner().get(0)),
                both.wheel(
                        "front outer",
                        left ? Channel.LOAD_FRONT_RIGHT : Channel.LOAD_FRONT_LEFT,
                        state.outer().get(0)),
                both.wheel(
                        "rear inner",
                        left ? Channel.LOAD_REAR_LEFT : Channel.LOAD_REAR_RIGHT,
                        state.inner().get(1)),
                both.wheel(
                        "rear outer",
                        left ? Channel.LOAD_REAR_RIGHT : Channel.LOAD_REAR_LEFT,
                        state.outer().get(1)));
        report.paragraph("The car where " + Report.verbatim(at.label()) + " is slowest, at "
                        + Numbers.fixed(distance, 0) + " m, on each model's own lap:")
                .rows(TERMS, terms)
                .gap()
                .paragraph("Its wheels; slip, angles and forces by the fuller model, along and across each wheel:")
                .rows(BODY_WHEELS, wheels)
                .field(
                        "freeBody",
                        new Report()
                                .field("corner", at.number())
                                .field("distanceM", distance)
                                .field("terms", both.tree(state))
                                .field("wheels", BODY_WHEELS, wheels)
                                .fields());
    }

    /** Both laps at one station. */
    private record Both(Lap fast, Lap fuller, int station) {
        Term term(String name, String unit, Channel channel, double factor, int digits) {
            return new Term(
                    name,
                    unit,
                    Numbers.fixed(factor * fast.value(channel, station), digits),
                    Numbers.fixed(factor * fuller.value(channel, station), digits));
        }

        Map<String, Object> tree(SlipState state) {
            Report tree = new Report();
            for (Lap lap : List.of(fast, fuller)) {
                String model = lap == fast ? "Fast" : "Fuller";
                tree.field("speed" + model + "Kmh", LapTrace.kmh(lap.value(Channel.SPEED, station)))
                        .field("acceleration" + model + "G", LapTrace.g(lap.value(Channel.ACCELERATION, station)))
                        .field(
                                "lateralAcceleration" + model + "G",
                                LapTrace.g(lap.value(Channel.LATERAL_ACCELERATION, station)))
                        .field("drag" + model + "N", lap.value(Channel.DRAG, station))
                        .field("frontDownforce" + model + "N", lap.value(Channel.DOWNFORCE_FRONT, station))
                        .field("rearDownforce" + model + "N", lap.value(Channel.DOWNFORCE_REAR, station));
            }
            return tree.field("steerDeg", Math.toDegrees(state.steer()))
                    .field("sideslipDeg", Math.toDegrees(state.sideslip()))
                    .fields();
        }

        BodyWheel wheel(String name, Channel load, SlipState.SlipWheel state) {
            return new BodyWheel(name, fast.value(load, station), state);
        }
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
