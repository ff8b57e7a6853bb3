package dev.lapwright.results;

import dev.lapwright.chassis.UndersteerGradient;
import dev.lapwright.lap.AxleMargins;
import dev.lapwright.lap.Handling.AeroBalance;
import dev.lapwright.report.CsvText;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.study.balance.BalancePhase;
import dev.lapwright.study.balance.BalanceResult;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The balance of a car on a lap: a table with one row for each phase of each corner, the unit in each name; and as JSON. */
public final class BalanceTable {
    private static final String FIRST = "firstAxle";
    private static final double PERCENT = 100;

    private BalanceTable() {}

    /** Comma-separated values under one line of names; numbers to nine digits. */
    public static String csv(BalanceResult result) {
        CsvText csv = new CsvText();
        List<String> header = new ArrayList<>(List.of("corner", "cornerName"));
        header.addAll(phase(result.corners().get(0).in(BalancePhase.MIDDLE).orElseThrow())
                .keySet());
        csv.row(header);
        for (BalanceResult.CornerBalance corner : result.corners()) {
            for (BalanceResult.PhaseBalance phase : corner.phases()) {
                List<String> row = new ArrayList<>();
                row.add(Integer.toString(corner.corner().number()));
                row.add(corner.corner().name());
                phase(phase).values().forEach(value -> row.add(cell(value)));
                csv.row(row);
            }
        }
        return csv.text();
    }

    private static String cell(Object value) {
        return value instanceof Double number ? CsvText.number(number) : value.toString();
    }

    /** The document as text. */
    public static String json(BalanceResult result) {
        return JsonLayout.text(tree(result));
    }

    /** The document as maps and lists, for {@link JsonLayout}; new each time, so that more may be added to it. */
    public static Map<String, Object> tree(BalanceResult result) {
        Map<String, Object> tree = ResultHeader.of(
                "balance/1",
                InputHash.of(result.lap()),
                result.lap().vehicle().car(),
                result.lap().track(),
                result.lap().vehicle().conditions());
        tree.put("lapTimeS", result.lap().time());
        Map<String, Object> gradient = gradient(result.gradient());
        gradient.put("frontToeDegPerG", degreesPerG(result, result.frontToe()));
        gradient.put("rearToeDegPerG", degreesPerG(result, result.rearToe()));
        tree.put("understeerGradientAtRest", gradient);
        tree.put("yawInertiaKgM2", result.yawInertia());
        Map<String, Object> means = new LinkedHashMap<>();
        for (BalancePhase phase : BalancePhase.values()) {
            Map<String, Object> mean = new LinkedHashMap<>();
            mean.put("corners", result.count(phase));
            mean.put("limitMps2", result.limit(phase));
            mean.put("rearLessFrontMps2", result.understeer(phase));
            means.put(phase.label(), mean);
        }
        tree.put("means", means);
        tree.put("corners", result.corners().stream().map(BalanceTable::corner).toList());
        tree.put("aero", result.aero().stream().map(BalanceTable::aero).toList());
        return tree;
    }

    private static double degreesPerG(BalanceResult result, double radPerMps2) {
        return new UndersteerGradient(radPerMps2, result.gradient().wheelbase()).degreesPerG();
    }

    private static Map<String, Object> gradient(UndersteerGradient gradient) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("degPerG", gradient.degreesPerG());
        tree.put("radPerMps2", gradient.radPerMps2());
        tree.put("characteristicSpeedKmh", LapTrace.kmh(gradient.characteristicSpeed()));
        tree.put("criticalSpeedKmh", LapTrace.kmh(gradient.criticalSpeed()));
        return tree;
    }

    private static Map<String, Object> corner(BalanceResult.CornerBalance corner) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("number", corner.corner().number());
        tree.put("name", corner.corner().name());
        tree.put("turn", corner.corner().left() ? "left" : "right");
        tree.put("phases", corner.phases().stream().map(BalanceTable::phase).toList());
        tree.put("turningIn", yaw(corner.turningIn()));
        tree.put("unwinding", yaw(corner.unwinding()));
        return tree;
    }

    private static Map<String, Object> phase(BalanceResult.PhaseBalance phase) {
        AxleMargins margins = phase.margins();
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("phase", phase.phase().label());
        tree.put("distanceM", phase.distance());
        tree.put("speedKmh", LapTrace.kmh(phase.state().speed()));
        tree.put("gear", phase.state().gear());
        tree.put("accelerationMps2", margins.acceleration());
        tree.put("wheelForceN", margins.force());
        tree.put("lapLateralAccelerationMps2", phase.lateralAcceleration());
        tree.put("frontLimitMps2", margins.front());
        tree.put("rearLimitMps2", margins.rear());
        tree.put(FIRST, margins.first().label());
        tree.put("reserveMps2", margins.reserve());
        tree.put("reservePercent", PERCENT * margins.reserveShare());
        tree.put("rearLessFrontMps2", margins.understeer());
        tree.put("differentialYawMomentNm", margins.yawMoment());
        tree.put("rollOverMps2", margins.rollOver());
        double downforce = margins.frontDownforce() + margins.rearDownforce();
        tree.put("frontDownforcePercent", downforce > 0 ? PERCENT * margins.frontDownforce() / downforce : Double.NaN);
        return tree;
    }

    private static Map<String, Object> yaw(BalanceResult.YawDemand demand) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("distanceM", demand.distance());
        tree.put("curvatureSteps", demand.isStep());
        tree.put("yawAccelerationRadPerS2", demand.acceleration());
        tree.put("yawMomentNm", demand.moment());
        tree.put("axleGripPercent", PERCENT * demand.gripShare());
        return tree;
    }

    private static Map<String, Object> aero(AeroBalance aero) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("airSpeedKmh", LapTrace.kmh(aero.airSpeed()));
        tree.put("frontDownforceN", aero.front());
        tree.put("rearDownforceN", aero.rear());
        tree.put("frontPercent", PERCENT * aero.frontShare());
        tree.put("frontRideHeightMm", aero.frontHeightMm());
        tree.put("rearRideHeightMm", aero.rearHeightMm());
        tree.put("understeerGradientDegPerG", aero.gradient().degreesPerG());
        return tree;
    }
}
