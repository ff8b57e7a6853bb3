package dev.lapwright.cli.bench;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Caution;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.Subject;
import dev.lapwright.ride.AxleEnd;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Knob of the page: an adjustment of the car, its fuel where no adjustment moves that, or one of the conditions of the day.
 *
 * @param name by which it is set
 * @param label for people
 * @param group under which it stands
 * @param unit of its settings
 * @param settings to which it clicks, rising
 * @param standard where it stands if nobody has turned it
 * @param traits what else there is to know of it
 */
record Knob(String name, String label, String group, Unit unit, List<Double> settings, double standard, Traits traits) {
    private static final Set<String> UNSEEN = Stream.of(AxleEnd.values())
            .flatMap(end -> end.dampers().stream())
            .map(Quantity::path)
            .collect(Collectors.toUnmodifiableSet());

    /** What its quantity's name begins with, and under which words it stands. */
    private static final Map<String, String> GROUPS = groups();

    private static final String DAY = "The day";

    /**
     * What else there is to know of a knob.
     *
     * @param moves quantities
     * @param seen whether the lap model sees it at all
     * @param air whether it moves wings or areas
     * @param caution what to mind, empty if nothing
     */
    record Traits(List<String> moves, boolean seen, boolean air, String caution) {}

    private static Map<String, String> groups() {
        Map<String, String> groups = new LinkedHashMap<>();
        groups.put("aero.", "Air");
        groups.put("suspension.", "Springs, heights and wheels");
        groups.put("gearbox.", "Gears and differential");
        groups.put("drive.", "Gears and differential");
        groups.put("brakes.", "Brakes");
        groups.put("tyres.", "Tyres");
        groups.put("chassis.", "Fuel and weight");
        groups.put("engine.", "Engine");
        return groups;
    }

    /** All knobs of a car: its adjustments, fuel, the day. */
    static List<Knob> of(Car car) {
        List<Knob> knobs = new ArrayList<>();
        boolean fuel = false;
        for (Adjustment adjustment : car.adjustments()) {
            knobs.add(of(adjustment));
            fuel |= adjustment.effects().stream()
                    .anyMatch(effect -> effect.quantity().equals(Quantity.FUEL_MASS.path()));
        }
        if (!fuel) {
            knobs.add(fuel(car));
        }
        knobs.sort((a, b) -> Integer.compare(place(a.group), place(b.group)));
        for (String name : Conditions.NAMES) {
            knobs.add(day(name));
        }
        return knobs;
    }

    private static int place(String group) {
        return new ArrayList<>(GROUPS.values()).indexOf(group);
    }

    private static Knob of(Adjustment adjustment) {
        List<String> moves =
                adjustment.effects().stream().map(effect -> effect.quantity()).toList();
        String label = adjustment.label().isBlank() ? adjustment.name() : adjustment.label();
        return new Knob(
                adjustment.name(),
                label,
                group(moves.get(0)),
                adjustment.unit(),
                adjustment.legalSettings(),
                adjustment.standard(),
                new Traits(
                        moves,
                        !UNSEEN.containsAll(moves),
                        moves.stream().anyMatch(quantity -> quantity.startsWith("aero.")),
                        adjustment.cautions().stream().map(Caution::text).collect(Collectors.joining(" "))));
    }

    private static String group(String quantity) {
        return GROUPS.entrySet().stream()
                .filter(entry -> quantity.startsWith(entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst()
                .orElse("Other");
    }

    /** Fuel from none to twice what the document has, in kilograms, and to 20 kg at least: a range to look at, no limit. */
    private static Knob fuel(Car car) {
        double fuel = car.value(Quantity.FUEL_MASS);
        String path = Quantity.FUEL_MASS.path();
        return new Knob(
                path,
                "Fuel",
                group(path),
                Unit.KILOGRAM,
                steps(0, Math.max(20, 2 * fuel), 1),
                fuel,
                new Traits(List.of(path), true, false, ""));
    }

    /** One of the conditions, over a range worth looking at; what the model takes reaches further. */
    private static Knob day(String name) {
        Unit unit = Subject.unitOf(null, name);
        double standard = Conditions.STANDARD.value(name);
        Traits traits = new Traits(List.of(name), true, false, "");
        return switch (name) {
            case "conditions.airTempC" ->
                new Knob(name, "Air temperature", DAY, unit, steps(-10, 45, 1), standard, traits);
            case "conditions.airPressureHpa" ->
                new Knob(name, "Air pressure", DAY, unit, steps(800, 1045, 5), standard, traits);
            case "conditions.humidityPercent" ->
                new Knob(name, "Humidity", DAY, unit, steps(0, 100, 5), standard, traits);
            case "conditions.windSpeedMps" -> new Knob(name, "Wind", DAY, unit, steps(0, 15, 1), standard, traits);
            case "conditions.windFromDeg" ->
                new Knob(name, "Wind comes from", DAY, unit, steps(0, 345, 15), standard, traits);
            default -> new Knob(name, "Grip of the road", DAY, unit, steps(0.5, 1.1, 0.01), standard, traits);
        };
    }

    private static List<Double> steps(double from, double to, double step) {
        List<Double> steps = new ArrayList<>();
        int count = (int) Math.floor((to - from) / step + 1e-9);
        for (int i = 0; i <= count; i++) {
            // Nine decimals: 0.57 is written as it is typed.
            steps.add(Math.rint((from + i * step) * 1e9) / 1e9);
        }
        return steps;
    }

    /** Whether it is one of the conditions of the day. */
    boolean isOfTheDay() {
        return Conditions.isMeantBy(name);
    }

    /** A setting as people write it, with its unit. */
    String told(double setting) {
        return Numbers.with(setting, unit);
    }

    /** Settings to look at for a landscape, at most so many, its ends and where it stands among them. */
    List<Double> lookedAt(int most, double standing) {
        List<Double> some = new ArrayList<>();
        int n = settings.size();
        int count = Math.min(most, n);
        for (int k = 0; k < count; k++) {
            some.add(settings.get(count == 1 ? 0 : (int) Math.round(k * (n - 1) / (count - 1.0))));
        }
        if (!some.contains(standing)) {
            some.add(standing);
            some.sort(Double::compare);
        }
        return some.stream().distinct().toList();
    }

    Map<String, Object> tree() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("name", name);
        tree.put("label", label);
        tree.put("group", group);
        tree.put("unit", ReportBlocks.told(unit.symbol()));
        tree.put("settings", settings);
        tree.put(
                "told",
                settings.stream().map(this::told).map(ReportBlocks::told).toList());
        tree.put("standard", standard);
        tree.put("moves", traits.moves());
        tree.put("seen", traits.seen());
        tree.put("air", traits.air());
        tree.put("day", isOfTheDay());
        tree.put("caution", traits.caution());
        return tree;
    }
}
