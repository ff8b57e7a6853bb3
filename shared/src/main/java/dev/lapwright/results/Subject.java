package dev.lapwright.results;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.car.Unit;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.SettingText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.line.LineChoices;
import dev.lapwright.report.Numbers;
import dev.lapwright.report.Report;
import dev.lapwright.track.Track;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.StringJoiner;

/**
 * Car, set up, on a circuit on a day: what a study was asked about, as named by a user, read and checked.
 *
 * @param bare the car as its document describes it
 * @param setup what differs on it
 * @param car the car so set up
 * @param track where; null where a command needs none
 * @param line on which laps of it are driven
 * @param day air, wind and grip
 */
public record Subject(Car bare, Setup setup, Car car, Track track, ChosenLine line, Conditions day) {
    private static final String CONDITIONS = "conditions.";

    /** On the circuit's own path, nothing having been asked of lines. */
    public Subject(Car bare, Setup setup, Car car, Track track, Conditions day) {
        this(bare, setup, car, track, ChosenLine.of(track, "", null, LineChoices.DEFAULT), day);
    }

    /**
     * All documents read and all settings applied.
     *
     * @param car file or name of a demo
     * @param circuit the same; null where there is none
     * @param setup the same; null for the car's standard settings
     * @param settings of the form name=value
     */
    public static Subject of(String car, String circuit, String setup, List<String> settings, Conditions day) {
        Car bare = Documents.car(car);
        Track track = circuit == null ? null : Documents.circuit(circuit);
        Setup read = setup == null ? Setup.STANDARD : Documents.setup(setup, bare);
        return new Subject(bare, read, bare.with(read), track, day).with(settings);
    }

    /** The same with settings of the form name=value. */
    public Subject with(List<String> settings) {
        Setup changed = setup;
        Conditions changedDay = day;
        for (String setting : settings) {
            int equals = setting.indexOf('=');
            String name =
                    equals < 0 ? setting.trim() : setting.substring(0, equals).trim();
            String value = equals < 0 ? "" : setting.substring(equals + 1).trim();
            if (name.isEmpty() || value.isEmpty()) {
                throw new InvalidValueException(
                        "setting '" + setting + "'",
                        name.isEmpty() ? "it has no name" : "it has no value",
                        "write name=value, as in " + example());
            }
            if (name.startsWith(CONDITIONS)) {
                changedDay = changedDay.with(name, read(name, value));
            } else {
                changed = changed.with(name, read(name, value));
            }
        }
        return new Subject(bare, changed, bare.with(changed), track, line, changedDay);
    }

    /**
     * The value of a setting as a person writes it, in the unit of the adjustment, quantity or condition.
     *
     * @throws InvalidValueException if nothing has that name, or the text is no value for it
     */
    public double read(String name, String text) {
        return name.startsWith(CONDITIONS) ? SettingText.value(day, name, text) : SettingText.value(bare, name, text);
    }

    /** What there is to note of the setup: see {@link #notes(Car, Setup)}. */
    public List<String> notes() {
        return notes(bare, setup);
    }

    /** Whole sentences on what of a setup was read otherwise than it was written, and on settings between two steps. */
    public static List<String> notes(Car car, Setup setup) {
        List<String> notes = new ArrayList<>(setup.notes());
        setup.settings().forEach((name, value) -> between(car, name, value).ifPresent(notes::add));
        return notes;
    }

    /** A sentence on a setting between two that the car's document has; empty where it is one of them. */
    public static Optional<String> between(Car car, String name, double value) {
        if (!isAdjustment(car, name)) {
            return Optional.empty();
        }
        List<Double> neighbours = car.adjustment(name).neighbours(value);
        return neighbours.isEmpty()
                ? Optional.empty()
                : Optional.of(said(car, name, value) + " lies between two settings of this car, "
                        + Numbers.plain(neighbours.get(0)) + " and " + Numbers.plain(neighbours.get(1))
                        + ": the model takes it, the car may not.");
    }

    /** The same car in another setup. */
    public Subject in(Setup other) {
        return new Subject(bare, other, bare.with(other), track, line, day);
    }

    /** The same at another circuit, on its own path. */
    public Subject at(Track circuit) {
        return new Subject(bare, setup, car, circuit, day);
    }

    /** The same on a line. */
    public Subject on(ChosenLine driven) {
        return new Subject(bare, setup, car, track, driven, day);
    }

    /** The same on another day. */
    public Subject on(Conditions other) {
        return new Subject(bare, setup, car, track, line, other);
    }

    /** What laps are driven on: the line as a track of its own, or the circuit's own path. */
    public Track driven() {
        return line.driven();
    }

    private String example() {
        return bare.adjustments().isEmpty()
                ? "chassis.massKg=1250"
                : bare.adjustments().get(0).name() + "="
                        + Numbers.plain(bare.adjustments().get(0).standard());
    }

    /** Value that an adjustment, a quantity or one of the conditions has now, in its unit. */
    public double valueOf(String name) {
        if (name.startsWith(CONDITIONS)) {
            return day.value(name);
        }
        return isAdjustment(car, name) ? car.setting(name) : car.value(name);
    }

    /** Unit of an adjustment, a quantity or one of the conditions; those carry theirs in the name. */
    public static Unit unitOf(Car car, String name) {
        return name.startsWith(CONDITIONS) ? unitAtEndOf(name) : car.unitOf(name);
    }

    private static Unit unitAtEndOf(String name) {
        Unit found = Unit.NONE;
        for (Unit unit : Unit.values()) {
            String suffix = unit.fieldSuffix();
            if (name.endsWith(suffix) && suffix.length() > found.fieldSuffix().length()) {
                found = unit;
            }
        }
        return found;
    }

    public static boolean isAdjustment(Car car, String name) {
        return car.adjustments().stream().anyMatch(a -> a.name().equals(name));
    }

    /** A setting as people say it: rear-wing 6 deg. */
    public static String said(Car car, String name, double value) {
        return name + " " + Numbers.with(value, unitOf(car, name));
    }

    /** The setup in one line: its name, and what it sets. */
    public String setupText() {
        return setupText(bare, setup);
    }

    public static String setupText(Car car, Setup setup) {
        return setup.name() + settings(car, setup);
    }

    /** The same for people, its name as written. */
    public String setupTold() {
        return Report.verbatim(setup.name()) + settings(bare, setup);
    }

    private static String settings(Car car, Setup setup) {
        StringJoiner text = new StringJoiner(", ");
        List<String> said = new ArrayList<>();
        for (Map.Entry<String, Double> setting : setup.settings().entrySet()) {
            said.add(said(car, setting.getKey(), setting.getValue()));
        }
        said.forEach(text::add);
        return said.isEmpty() ? "" : " with " + text;
    }

    /** What is driven and where, for a heading. */
    public String title() {
        return car.name() + " at " + track.name();
    }

    /** Begins a report with what is driven, where, and on what day. */
    public Report heading() {
        String kind = track.isClosed() ? "closed circuit" : "open run";
        return line.addTo(new Report()
                .title(Report.verbatim(title()), ", " + kind + " of " + Numbers.fixed(track.length(), 0) + " m")
                .item("Setup", setupTold())
                .item("Conditions", told(day)));
    }

    /** A day in one line, its name as written. */
    public static String told(Conditions day) {
        String wind = day.windSpeedMps() > 0
                ? "wind " + Numbers.kmh(day.windSpeedMps()) + " km/h from " + Numbers.plain(day.windFromDeg()) + " deg"
                : "no wind";
        return Report.verbatim(day.name()) + ": " + Numbers.fixed(day.airTempC(), 1) + " degC, "
                + Numbers.fixed(day.airPressureHpa(), 1) + " hPa, humidity " + Numbers.plain(day.humidityPercent())
                + " %, " + wind + ", grip " + Numbers.plain(day.grip());
    }
}
