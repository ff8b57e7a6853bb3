package dev.lapwright.car;

import dev.lapwright.aero.AeroMap;
import dev.lapwright.aero.Wing;
import dev.lapwright.air.PowerCorrection;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.powertrain.Engine;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.tyre.LoadSensitiveTyre;
import dev.lapwright.tyre.LoadSensitivity;
import dev.lapwright.tyre.TyreModel;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * A car as data: its {@link Quantity quantities}, wings with their angles, gear ratios, torque curve and adjustments.
 * Immutable; a change is a new car that shares what did not change.
 *
 * <p>A car is symmetric left to right.
 */
public final class Car {
    private static final String WINGS = "aero.wings.";
    private static final String ANGLE = ".angleDeg";
    static final String RATIOS = "gearbox.ratios.";

    private final Fixed fixed;
    private final double[] values;
    private final double[] wingAngles;
    private final double[] gearRatios;
    private final Models models;
    /** What was set since the car was made from its document, in order; and that car, null if this is it. */
    private final Map<String, Double> settings;

    private final Car document;

    /** What of its document no setting changes. */
    private record Fixed(
            String name,
            String description,
            List<Wing> wings,
            TorqueCurve torqueCurve,
            PowerCorrection powerCorrection,
            List<Adjustment> adjustments,
            CarDoubt doubt,
            boolean deviates) {
        Fixed doubting(CarDoubt other) {
            return new Fixed(name, description, wings, torqueCurve, powerCorrection, adjustments, other, deviates);
        }

        Fixed deviating(List<Wing> others) {
            return new Fixed(
                    name, description, List.copyOf(others), torqueCurve, powerCorrection, adjustments, doubt, true);
        }
    }

    /** Models in place of what the document holds; null where that serves. */
    private record Models(Engine engine, AeroMap aeroMap, TyreModel front, TyreModel rear) {
        private static final Models NONE = new Models(null, null, null, null);

        boolean any() {
            return engine != null || aeroMap != null || hasTyres();
        }

        boolean hasTyres() {
            return front != null;
        }
    }

    private Car(
            Fixed fixed,
            double[] values,
            double[] wingAngles,
            double[] gearRatios,
            Models models,
            Map<String, Double> settings,
            Car document) {
        this.fixed = fixed;
        this.values = values;
        this.wingAngles = wingAngles;
        this.gearRatios = gearRatios;
        this.models = models;
        this.settings = settings;
        this.document = document;
    }

    /**
     * @param name for people
     * @param description what kind of car it is; may be empty
     * @param given quantities; those left out take their standard value
     * @param wings with the angle (degrees) at which each stands
     * @param gearRatios first gear first, falling; at least one
     * @param adjustments what can be turned on it; their quantities must exist
     * @throws InvalidValueException naming the first quantity that is missing or out of range
     */
    public static Car of(
            String name,
            String description,
            Map<Quantity, Double> given,
            Map<Wing, Double> wings,
            double[] gearRatios,
            TorqueCurve torqueCurve,
            PowerCorrection powerCorrection,
            List<Adjustment> adjustments) {
        double[] values = CarValues.complete(given);
        CarValues.checkRatios(gearRatios);
        CarValues.checkLowestGear(values[Quantity.LOWEST_GEAR.ordinal()], gearRatios.length);
        List<Wing> wingList = new ArrayList<>();
        double[] angles = new double[wings.size()];
        Set<String> names = new HashSet<>();
        for (Map.Entry<Wing, Double> entry : new LinkedHashMap<>(wings).entrySet()) {
            if (!names.add(entry.getKey().name())) {
                throw new InvalidValueException(
                        "aero.wings", "two wings are called " + entry.getKey().name(), "give each its own name");
            }
            entry.getKey().at(entry.getValue());
            angles[wingList.size()] = entry.getValue();
            wingList.add(entry.getKey());
        }
        Car car = new Car(
                new Fixed(
                        name,
                        description,
                        List.copyOf(wingList),
                        torqueCurve,
                        powerCorrection,
                        List.copyOf(adjustments),
                        CarDoubt.NONE,
                        false),
                values,
                angles,
                gearRatios.clone(),
                Models.NONE,
                Map.of(),
                null);
        car.checkAdjustments();
        return car;
    }

    private void checkAdjustments() {
        Set<String> names = new HashSet<>();
        for (Adjustment adjustment : fixed.adjustments()) {
            if (!names.add(adjustment.name())) {
                throw new InvalidValueException(
                        "adjustments", "two are called " + adjustment.name(), "give each its own name");
            }
            // Each end of the range must give a car, or a sweep would stop half-way.
            with(adjustment.name(), adjustment.min());
            with(adjustment.name(), adjustment.max());
        }
    }

    /** Value of a quantity in its unit. */
    public double value(Quantity quantity) {
        return values[quantity.ordinal()];
    }

    /** Value under any of {@link #quantityNames()}, in that quantity's unit. */
    public double value(String quantity) {
        Quantity known = Quantity.ofPath(quantity);
        if (known != null) {
            return value(known);
        }
        int wing = wingIndex(quantity);
        if (wing >= 0) {
            return wingAngles[wing];
        }
        int gear = gearIndex(quantity);
        if (gear >= 0) {
            return gearRatios[gear];
        }
        throw unknown(quantity);
    }

    /** The same car with one quantity changed. */
    public Car with(Quantity quantity, double value) {
        return with(quantity.path(), value);
    }

    /**
     * The same car with one adjustment set, or one of {@link #quantityNames()} changed. Setting a thing again replaces its
     * former setting, so the order of two different settings matters only where both move one quantity: the first set acts
     * first.
     *
     * @param adjustmentOrQuantity its name
     * @param value in the adjustment's or quantity's unit
     */
    public Car with(String adjustmentOrQuantity, double value) {
        Map<String, Double> all = new LinkedHashMap<>(settings);
        all.put(adjustmentOrQuantity, value);
        return set(all);
    }

    /** The document's car with settings applied in their order. */
    private Car set(Map<String, Double> all) {
        if (fixed.deviates()) {
            throw new IllegalStateException("this car deviates from its document: set it up first");
        }
        Car from = document();
        Car car = from;
        for (Map.Entry<String, Double> setting : all.entrySet()) {
            car = car.apply(setting.getKey(), setting.getValue());
        }
        return new Car(
                fixed, car.values, car.wingAngles, car.gearRatios, models, Collections.unmodifiableMap(all), from);
    }

    private Car apply(String setting, double value) {
        for (Adjustment adjustment : fixed.adjustments()) {
            if (adjustment.name().equals(setting)) {
                return adjusted(adjustment, value);
            }
        }
        return withQuantity(setting, value);
    }

    private Car adjusted(Adjustment adjustment, double value) {
        double setting = adjustment.checked(value);
        Car car = this;
        for (Effect effect : adjustment.effects()) {
            double before = car.value(effect.quantity());
            car = car.withQuantity(effect.quantity(), effect.apply(before, setting, adjustment.standard()));
        }
        return car;
    }

    private Car withQuantity(String quantity, double value) {
        Quantity known = Quantity.ofPath(quantity);
        if (known != null) {
            double[] changed = values.clone();
            changed[known.ordinal()] = known.checked(value);
            CarValues.checkLowestGear(changed[Quantity.LOWEST_GEAR.ordinal()], gearRatios.length);
            return copy(changed, wingAngles, gearRatios);
        }
        int wing = wingIndex(quantity);
        if (wing >= 0) {
            fixed.wings().get(wing).at(value);
            double[] changed = wingAngles.clone();
            changed[wing] = value;
            return copy(values, changed, gearRatios);
        }
        int gear = gearIndex(quantity);
        if (gear >= 0) {
            double[] changed = gearRatios.clone();
            changed[gear] = value;
            CarValues.checkRatios(changed);
            return copy(values, wingAngles, changed);
        }
        throw unknown(quantity);
    }

    /** The same car with a whole setup, its settings applied in their order. */
    public Car with(Setup setup) {
        Map<String, Double> all = new LinkedHashMap<>(settings);
        all.putAll(setup.settings());
        return set(all);
    }

    /** What has been set since the car was made from its document, by name, in the order it acts; unmodifiable. */
    public Map<String, Double> settings() {
        return settings;
    }

    /** The car as its document describes it, nothing set. */
    public Car document() {
        return document == null ? this : document;
    }

    /** Where an adjustment stands: as last set, or at its standard. */
    public double setting(String adjustmentName) {
        Double set = settings.get(adjustmentName);
        return set != null ? set : adjustment(adjustmentName).standard();
    }

    /**
     * The same car with an engine model in place of its document's torque curve; no document can be written of it. Rev limit, power scale
     * and inertia stay the car's.
     */
    public Car with(Engine engine) {
        return with(
                new Models(Objects.requireNonNull(engine, "engine"), models.aeroMap(), models.front(), models.rear()));
    }

    /** The same car with a model of what ride heights do to its areas, in place of its document's map. */
    public Car with(AeroMap aeroMap) {
        return with(new Models(
                models.engine(), Objects.requireNonNull(aeroMap, "aero map"), models.front(), models.rear()));
    }

    /**
     * The same car on tyre models in place of its document's frictions, their load sensitivities and cornering stiffness; no document can be
     * written of it. What pressure, temperature, compound, lean and the day do to grip stays the car's.
     *
     * @param front of each front tyre
     * @param rear of each rear tyre
     */
    public Car with(TyreModel front, TyreModel rear) {
        return with(new Models(
                models.engine(),
                models.aeroMap(),
                Objects.requireNonNull(front, "front tyre"),
                Objects.requireNonNull(rear, "rear tyre")));
    }

    /** The same car with another's models of its own, if that has any. */
    public Car withModelsOf(Car other) {
        return other.hasOwnModels() ? with(other.models) : this;
    }

    /** Whether a model of one's own stands in place of what its document holds. */
    public boolean hasOwnModels() {
        return models.any();
    }

    /** Whether it stands on tyre models of one's own: then the document's frictions and stiffnesses say nothing. */
    public boolean hasOwnTyres() {
        return models.hasTyres();
    }

    /**
     * The same car with a statement of how well its quantities are known, in place of any it has.
     *
     * @throws InvalidValueException if it names a quantity that this car has not
     */
    public Car doubting(CarDoubt doubt) {
        List<String> names = quantityNames();
        for (String name : doubt.quantities().keySet()) {
            if (!names.contains(name)) {
                throw new InvalidValueException(
                        "doubt", "this car has no quantity " + name, Nearest.remedy(name, names));
            }
        }
        return new Car(
                fixed.doubting(doubt),
                values,
                wingAngles,
                gearRatios,
                models,
                settings,
                document == null ? null : document.doubting(doubt));
    }

    /** How well its quantities are known, as far as its document says. */
    public CarDoubt doubt() {
        return fixed.doubt();
    }

    /**
     * The same car, set up as it is, with numbers that it may truly have in place of what document and settings say. It can be driven,
     * but no longer set up.
     *
     * @param quantities values by their names, each in its quantity's unit
     * @param wings in place of its own, of the same names in the same order
     * @throws InvalidValueException if a value is out of range, or a wing's angle is not in its new table
     */
    public Car deviating(Map<String, Double> quantities, List<Wing> wings) {
        Car car = new Car(fixed.deviating(wings), values, wingAngles, gearRatios, models, settings, document());
        for (int i = 0; i < wingAngles.length; i++) {
            wings.get(i).at(wingAngles[i]);
        }
        for (Map.Entry<String, Double> quantity : quantities.entrySet()) {
            car = car.withQuantity(quantity.getKey(), quantity.getValue());
        }
        return car;
    }

    private Car with(Models own) {
        return new Car(
                fixed, values, wingAngles, gearRatios, own, settings, document == null ? null : document.with(own));
    }

    private Car copy(double[] newValues, double[] newAngles, double[] newRatios) {
        return new Car(fixed, newValues, newAngles, newRatios, models, settings, document);
    }

    private int wingIndex(String quantity) {
        if (quantity.startsWith(WINGS) && quantity.endsWith(ANGLE)) {
            for (int i = 0; i < fixed.wings().size(); i++) {
                if (quantity.equals(WINGS + fixed.wings().get(i).name() + ANGLE)) {
                    return i;
                }
            }
        }
        return -1;
    }

    private int gearIndex(String quantity) {
        for (int i = 0; i < gearRatios.length; i++) {
            if (quantity.equals(RATIOS + (i + 1))) {
                return i;
            }
        }
        return -1;
    }

    /** The adjustment that setups written earlier call by this name; empty if there is none. */
    public Optional<Adjustment> formerly(String formerName) {
        return fixed.adjustments().stream()
                .filter(a -> a.formerNames().contains(formerName))
                .findFirst();
    }

    private InvalidValueException unknown(String wanted) {
        Optional<Adjustment> renamed = formerly(wanted);
        if (renamed.isPresent()) {
            return new InvalidValueException(
                    wanted,
                    "this car has no adjustment of that name any more",
                    "it is " + renamed.get().name() + " now");
        }
        return new InvalidValueException(
                wanted, "this car has no adjustment or quantity of that name", Nearest.remedy(wanted, settableNames()));
    }

    /** Names of everything that can be changed: adjustments first, then quantities. */
    public List<String> settableNames() {
        List<String> names = new ArrayList<>();
        fixed.adjustments().forEach(a -> names.add(a.name()));
        names.addAll(quantityNames());
        return names;
    }

    /** Names of all quantities of this car, wing angles and gear ratios included. */
    public List<String> quantityNames() {
        List<String> names = new ArrayList<>();
        for (Quantity quantity : Quantity.values()) {
            names.add(quantity.path());
        }
        fixed.wings().forEach(w -> names.add(WINGS + w.name() + ANGLE));
        for (int i = 1; i <= gearRatios.length; i++) {
            names.add(RATIOS + i);
        }
        return names;
    }

    /** Unit of an adjustment or quantity. */
    public Unit unitOf(String adjustmentOrQuantity) {
        for (Adjustment adjustment : fixed.adjustments()) {
            if (adjustment.name().equals(adjustmentOrQuantity)) {
                return adjustment.unit();
            }
        }
        Quantity known = Quantity.ofPath(adjustmentOrQuantity);
        if (known != null) {
            return known.unit();
        }
        if (wingIndex(adjustmentOrQuantity) >= 0) {
            return Unit.DEGREE;
        }
        if (gearIndex(adjustmentOrQuantity) >= 0) {
            return Unit.NONE;
        }
        throw unknown(adjustmentOrQuantity);
    }

    /** The adjustment of this name. */
    public Adjustment adjustment(String adjustmentName) {
        for (Adjustment adjustment : fixed.adjustments()) {
            if (adjustment.name().equals(adjustmentName)) {
                return adjustment;
            }
        }
        List<String> names = new ArrayList<>();
        fixed.adjustments().forEach(a -> names.add(a.name()));
        throw new InvalidValueException(
                adjustmentName, "this car has no adjustment of that name", Nearest.remedy(adjustmentName, names));
    }

    /** Name for people. */
    public String name() {
        return fixed.name();
    }

    /** What kind of car it is. */
    public String description() {
        return fixed.description();
    }

    /** Wings. */
    public List<Wing> wings() {
        return fixed.wings();
    }

    /** Gear ratios, first gear first; a copy. */
    public double[] gearRatios() {
        return gearRatios.clone();
    }

    /** Engine that drives the car: a model of one's own, or {@link #torqueCurve()}. */
    public Engine engine() {
        return models.engine() != null ? models.engine() : fixed.torqueCurve();
    }

    /** What ride heights do to the areas: a model of one's own, or the map of the car's quantities. */
    public AeroMap aeroMap() {
        return models.aeroMap() != null ? models.aeroMap() : DocumentAeroMap.of(this);
    }

    /** Tyre of each front wheel: a model of one's own, or what the car's quantities say. */
    public TyreModel frontTyre() {
        return models.hasTyres()
                ? models.front()
                : tyre(
                        Quantity.FRICTION_X_FRONT,
                        Quantity.SENSITIVITY_X_FRONT,
                        Quantity.FRICTION_Y_FRONT,
                        Quantity.SENSITIVITY_Y_FRONT,
                        Quantity.CORNERING_STIFFNESS_FRONT,
                        Quantity.STIFFNESS_SENSITIVITY_FRONT,
                        Quantity.REFERENCE_LOAD_FRONT);
    }

    /** Tyre of each rear wheel, as {@link #frontTyre}. */
    public TyreModel rearTyre() {
        return models.hasTyres()
                ? models.rear()
                : tyre(
                        Quantity.FRICTION_X_REAR,
                        Quantity.SENSITIVITY_X_REAR,
                        Quantity.FRICTION_Y_REAR,
                        Quantity.SENSITIVITY_Y_REAR,
                        Quantity.CORNERING_STIFFNESS_REAR,
                        Quantity.STIFFNESS_SENSITIVITY_REAR,
                        Quantity.REFERENCE_LOAD_REAR);
    }

    private LoadSensitiveTyre tyre(
            Quantity x, Quantity xFall, Quantity y, Quantity yFall, Quantity c, Quantity cFall, Quantity load) {
        double reference = value(load);
        return new LoadSensitiveTyre(
                new LoadSensitivity(value(x), value(xFall), reference),
                new LoadSensitivity(value(y), value(yFall), reference),
                new LoadSensitivity(value(c), value(cFall), reference));
    }

    /** Full-load torque of the engine in the document, at the reference air of {@link #powerCorrection()}. */
    public TorqueCurve torqueCurve() {
        return fixed.torqueCurve();
    }

    /** How the engine's power follows the air. */
    public PowerCorrection powerCorrection() {
        return fixed.powerCorrection();
    }

    /** What can be turned on it. */
    public List<Adjustment> adjustments() {
        return fixed.adjustments();
    }

    /** All quantities by name, in the order of {@link Quantity}. */
    public Map<Quantity, Double> quantities() {
        Map<Quantity, Double> map = new EnumMap<>(Quantity.class);
        for (Quantity quantity : Quantity.values()) {
            map.put(quantity, value(quantity));
        }
        return map;
    }
}
