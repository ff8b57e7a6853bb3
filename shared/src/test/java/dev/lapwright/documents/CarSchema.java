package dev.lapwright.documents;

import dev.lapwright.car.Quantity;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The schema of a car; its numbers are those of {@link Quantity}. */
final class CarSchema {
    private CarSchema() {}

    static void fill(ObjectSchema car) {
        section(car, CarSection.root());
        car.optional("adjustments", ObjectSchema.list("what can be turned on the car", 0, adjustment()));
        car.optional("doubt", doubt());
    }

    private static Map<String, Object> doubt() {
        Map<String, Object> path =
                ObjectSchema.text("path of the quantity, as in chassis.massKg", ObjectReader.MAX_NAME_LENGTH);
        ObjectSchema size = new ObjectSchema("how well one quantity is known").required("quantity", path);
        size.optional(DoubtReader.DEVIATION, Double.NaN)
                .optional(DoubtReader.DEVIATION_PERCENT, Double.NaN)
                .optional(DoubtReader.LIMIT, Double.NaN)
                .optional(DoubtReader.LIMIT_PERCENT, Double.NaN)
                .optional(
                        "source",
                        ObjectSchema.words(
                                "where the value comes from; estimated if left out", DoubtReader.SOURCES.keySet()))
                .rule(Map.of(
                        "oneOf",
                        DoubtReader.sizes().stream().map(ObjectSchema::requires).toList()));
        Map<String, Object> row = new ObjectSchema("a quantity whose error hangs together with others")
                .required("quantity", path)
                .required(
                        DoubtReader.WITH_THOSE_ABOVE.name(),
                        ObjectSchema.list(
                                "correlation of its error with those of each quantity above; empty for the first",
                                0,
                                ObjectSchema.number(
                                        DoubtReader.WITH_THOSE_ABOVE, DoubtReader.WITH_THOSE_ABOVE.usual())))
                .build();
        return new ObjectSchema("how well the quantities are known; of those not named nothing is said")
                .optional("quantities", ObjectSchema.list("those that it is said of", 0, size.build()))
                .optional("correlations", ObjectSchema.list("errors that hang together", 0, row))
                .build();
    }

    private static void section(ObjectSchema object, CarSection section) {
        section.quantities().forEach((quantity, field) -> {
            if (quantity.isRequired()) {
                object.required(field);
            } else {
                object.optional(field, quantity.standard());
            }
        });
        section.sections().forEach((name, inner) -> {
            ObjectSchema content = new ObjectSchema("");
            switch (inner.path()) {
                case "engine" ->
                    content.required(
                                    "torqueCurve",
                                    ObjectSchema.list("full-load torque over engine speed, rising", 2, torquePoint()))
                            .optional("powerCorrection", powerCorrection());
                case "gearbox" ->
                    content.required(
                            "ratios",
                            ObjectSchema.list(
                                    "gear ratios, first gear first, falling",
                                    1,
                                    ObjectSchema.number(CarReader.RATIO, CarReader.RATIO.usual())));
                case "aero" -> content.optional("wings", ObjectSchema.list("wings", 0, wing()));
                default -> {}
            }
            section(content, inner);
            if (inner.isRequired()) {
                object.required(name, content.build());
            } else {
                object.optional(name, content.build());
            }
        });
    }

    private static Map<String, Object> powerCorrection() {
        Map<String, Object> words = ObjectSchema.words(
                "how the engine's power follows the air: none for electric motors and engines that hold their boost",
                CarReader.CORRECTIONS.keySet());
        words.put("default", "saeJ1349");
        return words;
    }

    private static Map<String, Object> torquePoint() {
        return new ObjectSchema("")
                .required(CarReader.ENGINE_SPEED)
                .required(CarReader.TORQUE)
                .build();
    }

    private static Map<String, Object> wing() {
        Map<String, Object> row = new ObjectSchema("areas at one angle")
                .required(WingReader.ANGLE)
                .required(WingReader.DRAG)
                .required(WingReader.LIFT_FRONT)
                .required(WingReader.LIFT_REAR)
                .build();
        return new ObjectSchema("a wing, with the angle at which it stands")
                .required("name", ObjectSchema.shortName("as adjustments refer to it"))
                .required(WingReader.ANGLE)
                .required("table", ObjectSchema.list("areas over the angle, rising", 1, row))
                .build();
    }

    private static Map<String, Object> adjustment() {
        ObjectSchema object = new ObjectSchema("a thing that can be turned, its numbers in its unit")
                .required("name", ObjectSchema.shortName("by which it is set"))
                .optional("formerName", ObjectSchema.shortName("by which setups written earlier call it"))
                .optional("label", ObjectSchema.text("for people", ObjectReader.MAX_NAME_LENGTH))
                .optional(
                        "unit",
                        ObjectSchema.words(
                                "unit in which it is set; a pure number without one",
                                AdjustmentReader.units().keySet()))
                .optional(AdjustmentReader.MIN, Double.NaN)
                .optional(AdjustmentReader.MAX, Double.NaN)
                .optional(AdjustmentReader.STEP, Double.NaN)
                .optional(
                        "choices",
                        ObjectSchema.list(
                                "the only settings there are, rising; instead of min, max and step",
                                1,
                                ObjectSchema.number(AdjustmentReader.CHOICE, AdjustmentReader.CHOICE.usual())))
                .required(AdjustmentReader.STANDARD)
                .optional(AdjustmentReader.CLICK_SIZE, Double.NaN)
                .required("moves", ObjectSchema.list("quantities it moves", 1, move()));
        Map<String, Object> either = new LinkedHashMap<>();
        either.put("if", ObjectSchema.requires("choices"));
        either.put("then", Map.of("not", ObjectSchema.requires("step")));
        either.put("else", ObjectSchema.requires("min", "max", "step"));
        return object.rule(either).build();
    }

    private static Map<String, Object> move() {
        Map<String, Object> row = new ObjectSchema("")
                .required(EffectReader.SETTING)
                .required(EffectReader.VALUE)
                .build();
        return new ObjectSchema("how one quantity follows the setting: as it is, unless one of the others is given")
                .required(
                        "quantity",
                        ObjectSchema.text("path of the quantity, as in chassis.massKg", ObjectReader.MAX_NAME_LENGTH))
                .optional(EffectReader.OFFSET, Double.NaN)
                .optional(EffectReader.FACTOR, Double.NaN)
                .optional(EffectReader.PER_UNIT, Double.NaN)
                .optional("table", ObjectSchema.list("value over setting, rising", 2, row))
                .rule(Map.of("dependentRequired", Map.of("offset", List.of("factor"))))
                .exclusive(List.of("factor"), List.of("perUnit", "table"))
                .exclusive(List.of("perUnit"), List.of("table"))
                .build();
    }
}
