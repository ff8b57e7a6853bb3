package dev.lapwright.documents;

import dev.lapwright.aero.Wing;
import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.CarDoubt;
import dev.lapwright.car.Effect;
import dev.lapwright.car.Quantity;
import dev.lapwright.car.Unit;
import dev.lapwright.fault.Check;
import dev.lapwright.fault.DecimalText;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.powertrain.TorqueCurve;
import dev.lapwright.report.JsonLayout;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Form of a car's document: every field with its meaning, unit and range, and the text that stands in it, for people who fill it instead of
 * writing JSON. Fields and ranges are those that reader, writer and schema are made from, and what is filled in is read by the reader, so
 * that a document made by a form is one like any other.
 *
 * <p>Lists stand in one field each: gear ratios with commas between them, and tables as rows with commas between, a row's numbers parted by blanks.
 */
public final class CarForm {
    /** What stands before the name of a quantity whose doubt a field is. */
    public static final String DOUBT = "doubt.";

    private static final Pattern DOUBT_TEXT =
            Pattern.compile("(at most\\s+)?([0-9.eE+-]+)\\s*(%)?\\s*([a-z]+)?", Pattern.CASE_INSENSITIVE);
    private static final Pattern WITH_UNIT = Pattern.compile("([-+\u2212]?[0-9.]+(?:[eE][-+]?[0-9]+)?)\\s*(\\D.*)");
    private static final Pattern STEP = Pattern.compile("([A-Za-z]+)(?:\\[(\\d+)])?");
    private static final Pattern ADJUSTMENT = Pattern.compile("adjustments\\[(\\d+)](.*)");
    private static final String RATIOS = "gearbox.ratios";
    private static final String RATIO = RATIOS + ".";
    private static final int DIGITS = 9;

    /**
     * Field of a document.
     *
     * @param path in the document, as a fault names it
     * @param section that it stands in, for people: chassis, suspension front, wing rear, …
     * @param quantity of the car whose value it is; empty where it is none
     * @param unit of numbers in it; empty for pure numbers and texts
     * @param min least number allowed; NaN where it has no range of its own
     * @param max greatest number allowed; likewise
     * @param absent what holds where it is left empty; empty where it must be filled
     * @param meaning in a few words
     * @param words of which it is one; empty where anything may stand
     * @param text that stands in it
     */
    public record Field(
            String path,
            String section,
            String quantity,
            String unit,
            double min,
            double max,
            Optional<String> absent,
            String meaning,
            List<String> words,
            String text) {
        public Field {
            words = List.copyOf(words);
        }
    }

    private final Car car;
    private final List<Field> fields = new ArrayList<>();

    private CarForm(Car car) {
        this.car = car;
        text("name", "car", "name for people", car.name(), Optional.empty());
        text("description", "car", "what it is", car.description(), Optional.of(""));
        section(CarSection.root());
        wings();
        adjustments();
        doubts();
    }

    /**
     * The form of a car as its document describes it.
     *
     * @throws InvalidValueException if no document can hold it
     */
    public static CarForm of(Car car) {
        CarWriter.checkStandard(car);
        return new CarForm(car);
    }

    /** The fields, in the order of the document. */
    public List<Field> fields() {
        return List.copyOf(fields);
    }

    private void text(String path, String section, String meaning, String text, Optional<String> absent) {
        fields.add(new Field(path, section, "", "", Double.NaN, Double.NaN, absent, meaning, List.of(), text));
    }

    private void number(
            String path, String section, String quantity, NumberField field, Optional<String> absent, double value) {
        boolean bounded = Math.abs(field.max(field.usual())) < NumberField.UNBOUNDED;
        fields.add(new Field(
                path,
                section,
                quantity,
                field.usual().symbol(),
                bounded ? field.min(field.usual()) : Double.NaN,
                bounded ? field.max(field.usual()) : Double.NaN,
                absent,
                field.meaning(),
                List.of(),
                Double.isNaN(value) ? "" : Check.text(value)));
    }

    private static String title(String path) {
        return path.replaceAll("([a-z])([A-Z])", "$1 $2").replace('.', ' ').toLowerCase(Locale.ROOT);
    }

    private void section(CarSection section) {
        String title = title(section.path());
        if (section.path().equals("engine")) {
            TorqueCurve curve = car.torqueCurve();
            text(
                    "engine.torqueCurve",
                    title,
                    CarReader.TORQUE.meaning() + ", Nm, behind each engine speed, 1/min: 2000 165, 3500 190",
                    rows(curve.rpm(), curve.torqueNm()),
                    Optional.empty());
            fields.add(new Field(
                    "engine.powerCorrection",
                    title,
                    "",
                    "",
                    Double.NaN,
                    Double.NaN,
                    Optional.of("saeJ1349"),
                    "standard by which its power falls in thin air",
                    List.copyOf(CarReader.CORRECTIONS.keySet()),
                    CarReader.CORRECTIONS.entrySet().stream()
                            .filter(entry -> entry.getValue() == car.powerCorrection())
                            .map(Map.Entry::getKey)
                            .findFirst()
                            .orElse("")));
        } else if (section.path().equals("gearbox")) {
            text(
                    RATIOS,
                    title,
                    CarReader.RATIO.meaning() + " of each gear, first gear first, with commas between",
                    Arrays.stream(car.gearRatios()).mapToObj(Check::text).collect(Collectors.joining(", ")),
                    Optional.empty());
        }
        section.quantities().forEach((quantity, field) -> {
            boolean given = quantity.isRequired() || car.value(quantity) != quantity.standard();
            number(
                    quantity.path(),
                    title,
                    quantity.path(),
                    field,
                    quantity.isRequired() ? Optional.empty() : Optional.of(Check.text(quantity.standard())),
                    given ? car.value(quantity) : Double.NaN);
        });
        section.sections().values().forEach(this::section);
    }

    private static String rows(double[]... columns) {
        List<String> rows = new ArrayList<>();
        for (int i = 0; i < columns[0].length; i++) {
            int row = i;
            rows.add(Arrays.stream(columns)
                    .map(column -> Check.text(column[row]))
                    .collect(Collectors.joining(" ")));
        }
        return String.join(", ", rows);
    }

    private void wings() {
        for (int i = 0; i < car.wings().size(); i++) {
            Wing wing = car.wings().get(i);
            String path = "aero.wings[" + i + "].";
            String section = "wing " + wing.name();
            String quantity = "aero.wings." + wing.name() + ".angleDeg";
            number(
                    path + WingReader.ANGLE.name(),
                    section,
                    quantity,
                    WingReader.ANGLE,
                    Optional.empty(),
                    car.value(quantity));
            List<Wing.Setting> table = wing.settings();
            text(
                    path + "table",
                    section,
                    "angle (deg), " + WingReader.DRAG.meaning() + ", " + WingReader.LIFT_FRONT.meaning() + ", "
                            + WingReader.LIFT_REAR.meaning() + " (m²), a row for each angle: 2 0.05 -0.02 0.2, 4 0.06"
                            + " -0.03 0.25",
                    rows(
                            table.stream().mapToDouble(Wing.Setting::angleDeg).toArray(),
                            table.stream()
                                    .mapToDouble(row -> row.areas().drag())
                                    .toArray(),
                            table.stream()
                                    .mapToDouble(row -> row.areas().liftFront())
                                    .toArray(),
                            table.stream()
                                    .mapToDouble(row -> row.areas().liftRear())
                                    .toArray()),
                    Optional.empty());
        }
    }

    private void adjustments() {
        int next = car.adjustments().size();
        for (int i = 0; i < next; i++) {
            adjustment(i, car.adjustments().get(i));
        }
        // One that is not there yet: it comes into the document once it has a name.
        String path = "adjustments[" + next + "].";
        String section = "another adjustment";
        text(path + "name", section, "its short name, like rear-bar; empty for none", "", Optional.of("none"));
        text(
                path + "moves[0].quantity",
                section,
                "the quantity that it moves, as in suspension.rear.antiRollBarNmPerDeg",
                "",
                Optional.of("none"));
        fields.add(new Field(
                path + "unit",
                section,
                "",
                "",
                Double.NaN,
                Double.NaN,
                Optional.of("a pure number"),
                "unit in which it is turned",
                List.copyOf(AdjustmentReader.units().keySet()),
                ""));
        number(
                path + "moves[0].perUnit",
                section,
                "",
                EffectReader.PER_UNIT,
                Optional.of("the setting itself"),
                Double.NaN);
        range(path, section, null);
    }

    private void adjustment(int place, Adjustment adjustment) {
        String path = "adjustments[" + place + "].";
        String section = "adjustment " + adjustment.name();
        text(path + "label", section, "name for people", adjustment.label(), Optional.of(""));
        range(path, section, adjustment);
        for (int j = 0; j < adjustment.effects().size(); j++) {
            Effect effect = adjustment.effects().get(j);
            String of = path + "moves[" + j + "].";
            if (effect instanceof Effect.Relative relative) {
                moved(of, section, EffectReader.PER_UNIT, effect, relative.perUnit());
            } else if (effect instanceof Effect.Absolute absolute && !isDirect(adjustment, absolute)) {
                moved(of, section, EffectReader.OFFSET, effect, absolute.offset());
                moved(of, section, EffectReader.FACTOR, effect, absolute.factor());
            } else if (effect instanceof Effect.Tabulated tabulated) {
                text(
                        of + "table",
                        section,
                        "setting, and behind it the value of " + effect.quantity() + ", a row for each: 1 200, 2 260",
                        rows(tabulated.settings(), tabulated.values()),
                        Optional.empty());
            }
        }
    }

    private boolean isDirect(Adjustment adjustment, Effect.Absolute effect) {
        Unit wanted = car.unitOf(effect.quantity());
        return adjustment.unit().convertsTo(wanted)
                && effect.equals(EffectReader.directly(effect.quantity(), adjustment.unit(), wanted));
    }

    private void moved(String path, String section, NumberField field, Effect effect, double value) {
        fields.add(new Field(
                path + field.name(),
                section,
                "",
                "",
                Double.NaN,
                Double.NaN,
                Optional.empty(),
                field.meaning() + ", " + effect.quantity(),
                List.of(),
                Check.text(value)));
    }

    private void range(String path, String section, Adjustment adjustment) {
        boolean choices = adjustment != null && !adjustment.choices().isEmpty();
        if (choices) {
            text(
                    path + AdjustmentReader.CHOICE.name(),
                    section,
                    "the settings that there are, with commas between",
                    adjustment.choices().stream().map(Check::text).collect(Collectors.joining(", ")),
                    Optional.empty());
        } else {
            end(path, section, AdjustmentReader.MIN, adjustment, adjustment == null ? Double.NaN : adjustment.min());
            end(path, section, AdjustmentReader.MAX, adjustment, adjustment == null ? Double.NaN : adjustment.max());
            end(path, section, AdjustmentReader.STEP, adjustment, adjustment == null ? Double.NaN : adjustment.step());
        }
        end(
                path,
                section,
                AdjustmentReader.STANDARD,
                adjustment,
                adjustment == null ? Double.NaN : adjustment.standard());
    }

    private void end(String path, String section, NumberField field, Adjustment adjustment, double value) {
        String unit = adjustment == null ? "" : adjustment.unit().symbol();
        fields.add(new Field(
                path + field.name(),
                section,
                "",
                unit,
                Double.NaN,
                Double.NaN,
                adjustment == null ? Optional.of("none") : Optional.empty(),
                field.meaning(),
                List.of(),
                Double.isNaN(value) ? "" : Check.text(value)));
    }

    private void doubts() {
        for (String name : car.quantityNames()) {
            CarDoubt.Size size = car.doubt().quantities().get(name);
            text(
                    DOUBT + name,
                    "doubt",
                    "how far it may be off, one standard deviation: 2 %, or 0.5 in its unit; 'at most 3' for a limit; behind"
                            + " it may stand "
                            + String.join(", ", DoubtReader.SOURCES.keySet()),
                    size == null ? "" : doubt(size),
                    Optional.of("as is usual for its kind"));
        }
    }

    private static String doubt(CarDoubt.Size size) {
        return (size.limit() ? "at most " : "") + Check.text(size.amount()) + (size.percent() ? " %" : "") + " "
                + size.source().name().toLowerCase(Locale.ROOT);
    }

    // --- Filled in ------------------------------------------------------------------------------------------------

    /**
     * The car of a form in which some fields were filled in otherwise.
     *
     * @param texts by the paths of their fields; those that are not named stand as they were. Numbers may have another unit behind them
     * @throws DocumentException with all that is wrong, each with the path of its field where it has one
     * @throws InvalidValueException if there is no field of a path
     */
    public Car filled(Map<String, String> texts) {
        Map<String, Field> byPath = new LinkedHashMap<>();
        fields.forEach(field -> byPath.put(field.path(), field));
        Map<String, String> changed = new LinkedHashMap<>();
        texts.forEach((path, text) -> {
            Field field = byPath.get(path);
            if (field == null) {
                throw new InvalidValueException(path, "the form has no such field", "take one that it has");
            }
            if (!text.strip().equals(field.text())) {
                changed.put(path, text.strip());
            }
        });
        Filling filling = new Filling(byPath, changed);
        return filling.car();
    }

    /** One filling of the form: a copy of the document in which texts are put. */
    private final class Filling {
        private final Map<String, Field> byPath;
        private final Map<String, String> changed;
        private final Map<String, Object> tree = CarWriter.tree(car);
        private final List<DocumentFault> faults = new ArrayList<>();
        /** Fields that followed another one: what is wrong with them is said there. */
        private final Map<String, String> followed = new LinkedHashMap<>();
        /** Places in the form of the adjustments that the document has. */
        private final List<Integer> places = new ArrayList<>();

        Filling(Map<String, Field> byPath, Map<String, String> changed) {
            this.byPath = byPath;
            this.changed = changed;
        }

        Car car() {
            int next = car.adjustments().size();
            String added = "adjustments[" + next + "].";
            boolean adds = changed.containsKey(added + "name");
            changed.forEach((path, text) -> {
                if (path.startsWith(DOUBT)) {
                    doubt(path.substring(DOUBT.length()), text);
                } else if (adds || !path.startsWith(added)) {
                    fill(byPath.get(path), text);
                }
            });
            agree();
            drop();
            Car read = null;
            try {
                read = CarReader.read(new DocumentSource("the car", JsonLayout.text(tree)));
            } catch (DocumentException wrong) {
                wrong.faults().forEach(fault -> faults.add(placed(fault)));
            }
            if (!faults.isEmpty()) {
                throw new DocumentException("the car", faults);
            }
            return read;
        }

        private void fill(Field field, String text) {
            boolean ends = field.path().startsWith("adjustments[")
                    && field.path().endsWith("." + AdjustmentReader.STANDARD.name());
            if (text.isEmpty() && field.absent().isEmpty() && !ends) {
                faults.add(new DocumentFault(
                        DocumentFault.Kind.FORM,
                        field.path(),
                        0,
                        0,
                        "it must be given",
                        "give the " + field.meaning()
                                + (Double.isNaN(field.min())
                                        ? ""
                                        : (", " + Check.text(field.min()) + " to " + Check.text(field.max()) + " "
                                                        + field.unit())
                                                .strip())));
                return;
            }
            put(field.path(), value(field, text));
        }

        /** A text as the document has it: what is no number there stays a text, and the reader says so. */
        private Object value(Field field, String text) {
            if (text.isEmpty()) {
                return null;
            }
            if (isRows(field)) {
                return rows(field.path(), text);
            }
            if (field.path().equals(RATIOS) || field.path().endsWith("." + AdjustmentReader.CHOICE.name())) {
                return Arrays.stream(text.split(",", -1)).map(CarForm::number).toList();
            }
            boolean words = List.of("name", "description").contains(field.path())
                    || !field.words().isEmpty()
                    || field.path().endsWith(".name")
                    || field.path().endsWith(".label")
                    || field.path().endsWith(".quantity");
            return words ? text : inUnit(field, text);
        }

        private static boolean isRows(Field field) {
            return field.path().endsWith(".table") || field.path().endsWith(".torqueCurve");
        }

        private static List<Map<String, Object>> rows(String path, String text) {
            List<String> names = path.endsWith(".torqueCurve")
                    ? List.of(CarReader.ENGINE_SPEED.name(), CarReader.TORQUE.name())
                    : path.startsWith("aero")
                            ? List.of(
                                    WingReader.ANGLE.name(),
                                    WingReader.DRAG.name(),
                                    WingReader.LIFT_FRONT.name(),
                                    WingReader.LIFT_REAR.name())
                            : List.of(EffectReader.SETTING.name(), EffectReader.VALUE.name());
            List<Map<String, Object>> rows = new ArrayList<>();
            for (String line : text.split("[,;]", -1)) {
                String[] words = line.strip().split("[\\s:]+");
                Map<String, Object> row = new LinkedHashMap<>();
                for (int i = 0; i < words.length; i++) {
                    row.put(i < names.size() ? names.get(i) : "more", number(words[i]));
                }
                rows.add(row);
            }
            return rows;
        }

        /** A number, in the field's unit or in another that stands behind it. */
        private static Object inUnit(Field field, String text) {
            Matcher parts = WITH_UNIT.matcher(text);
            Quantity known = Arrays.stream(Quantity.values())
                    .filter(quantity -> quantity.path().equals(field.quantity()))
                    .findFirst()
                    .orElse(null);
            if (DecimalText.number(text).isEmpty() && parts.matches() && known != null) {
                NumberField number = NumberField.of(known);
                OptionalDouble amount = DecimalText.number(parts.group(1));
                for (UnitScale scale : number.scales()) {
                    if (amount.isPresent()
                            && scale.symbol().equals(parts.group(2).strip())) {
                        return rounded(number.toModel(amount.getAsDouble(), scale));
                    }
                }
            }
            return number(text);
        }

        private void put(String path, Object value) {
            Object at = tree;
            String[] steps = path.split("\\.");
            for (int i = 0; i < steps.length; i++) {
                Matcher step = STEP.matcher(steps[i]);
                if (!step.matches()) {
                    throw new IllegalStateException("no path of a document: " + path);
                }
                Map<String, Object> object = object(at);
                boolean last = i == steps.length - 1;
                if (step.group(2) == null) {
                    if (last && value == null) {
                        object.remove(step.group(1));
                    } else if (last) {
                        object.put(step.group(1), value);
                    } else {
                        at = object.computeIfAbsent(step.group(1), name -> new LinkedHashMap<String, Object>());
                    }
                } else {
                    List<Object> list = new ArrayList<>(list(object.get(step.group(1))));
                    int place = Integer.parseInt(step.group(2));
                    while (list.size() <= place) {
                        list.add(new LinkedHashMap<String, Object>());
                    }
                    object.put(step.group(1), list);
                    at = list.get(place);
                }
            }
        }

        @SuppressWarnings("unchecked")
        private static Map<String, Object> object(Object at) {
            return (Map<String, Object>) at;
        }

        private static List<?> list(Object at) {
            return at instanceof List<?> list ? list : List.of();
        }

        /** A quantity that an adjustment sets and its standard setting say one thing: whichever was changed, the other follows. */
        private void agree() {
            for (int i = 0; i < car.adjustments().size(); i++) {
                Adjustment adjustment = car.adjustments().get(i);
                String standard = "adjustments[" + i + "]." + AdjustmentReader.STANDARD.name();
                for (Effect effect : adjustment.effects()) {
                    if (effect instanceof Effect.Absolute absolute) {
                        agree(standard, absolute);
                    }
                }
            }
        }

        private void agree(String standard, Effect.Absolute effect) {
            if (effect.quantity().startsWith(RATIO)) {
                agreeOnGear(standard, effect, Integer.parseInt(effect.quantity().substring(RATIO.length())) - 1);
                return;
            }
            Field field = fields.stream()
                    .filter(one -> one.quantity().equals(effect.quantity()))
                    .findFirst()
                    .orElse(null);
            if (field == null || effect.factor() == 0) {
                return;
            }
            String text = changed.get(field.path());
            String setting = changed.get(standard);
            if (text != null && setting == null && inUnit(field, text) instanceof Double value) {
                put(standard, rounded((value - effect.offset()) / effect.factor()));
                followed.put(standard, field.path());
            } else if (text == null && setting != null && number(setting) instanceof Double value) {
                put(field.path(), rounded(effect.offset() + effect.factor() * value));
                followed.put(field.path(), standard);
            }
        }

        /** The same for a gear, which stands in a list. */
        private void agreeOnGear(String standard, Effect.Absolute effect, int gear) {
            Map<String, Object> gearbox = object(tree.get("gearbox"));
            List<Object> ratios = new ArrayList<>(list(gearbox.get("ratios")));
            String setting = changed.get(standard);
            if (gear >= ratios.size() || effect.factor() == 0) {
                return;
            }
            if (setting == null && changed.containsKey(RATIOS) && ratios.get(gear) instanceof Double value) {
                put(standard, rounded((value - effect.offset()) / effect.factor()));
                followed.put(standard, RATIOS);
            } else if (setting != null && !changed.containsKey(RATIOS) && number(setting) instanceof Double value) {
                ratios.set(gear, rounded(effect.offset() + effect.factor() * value));
                gearbox.put("ratios", ratios);
                followed.put(RATIOS, standard);
            }
        }

        /** An adjustment whose standard setting was emptied is none any more. */
        private void drop() {
            List<?> all = list(tree.get("adjustments"));
            List<Object> kept = new ArrayList<>();
            for (int i = 0; i < all.size(); i++) {
                boolean gone = i < car.adjustments().size()
                        && "".equals(changed.get("adjustments[" + i + "]." + AdjustmentReader.STANDARD.name()));
                if (!gone) {
                    kept.add(all.get(i));
                    places.add(i);
                }
            }
            if (kept.isEmpty()) {
                tree.remove("adjustments");
            } else {
                tree.put("adjustments", kept);
            }
        }

        private void doubt(String quantity, String text) {
            Map<String, Object> section =
                    object(tree.computeIfAbsent("doubt", name -> new LinkedHashMap<String, Object>()));
            List<Object> rows = new ArrayList<>(list(section.get("quantities")));
            rows.removeIf(row -> quantity.equals(object(row).get("quantity")));
            if (!text.isEmpty()) {
                Matcher parts = DOUBT_TEXT.matcher(text);
                boolean known = parts.matches()
                        && DecimalText.number(parts.group(2)).isPresent()
                        && (parts.group(4) == null
                                || DoubtReader.SOURCES.containsKey(
                                        parts.group(4).toLowerCase(Locale.ROOT)));
                if (!known) {
                    faults.add(new DocumentFault(
                            DocumentFault.Kind.FORM,
                            DOUBT + quantity,
                            0,
                            0,
                            "'" + text + "' is no doubt",
                            "write it like 2 %, 0.5 or at most 3, and behind it "
                                    + String.join(", ", DoubtReader.SOURCES.keySet())));
                    return;
                }
                Map<String, Object> row = new LinkedHashMap<>();
                row.put("quantity", quantity);
                boolean limit = parts.group(1) != null;
                boolean percent = parts.group(3) != null;
                NumberField size = limit
                        ? percent ? DoubtReader.LIMIT_PERCENT : DoubtReader.LIMIT
                        : percent ? DoubtReader.DEVIATION_PERCENT : DoubtReader.DEVIATION;
                row.put(size.name(), DecimalText.number(parts.group(2)).getAsDouble());
                if (parts.group(4) != null) {
                    row.put("source", parts.group(4).toLowerCase(Locale.ROOT));
                }
                rows.add(row);
            }
            section.put("quantities", rows);
            // What is known by itself hangs on nothing: a doubt that was changed leaves those it was known together
            // with.
            loosen(section, quantity);
            if (rows.isEmpty()) {
                tree.remove("doubt");
            }
        }

        private static void loosen(Map<String, Object> section, String quantity) {
            List<?> rows = list(section.get("correlations"));
            List<Object> kept = new ArrayList<>();
            int gone = -1;
            for (int i = 0; i < rows.size(); i++) {
                Map<String, Object> row = new LinkedHashMap<>(object(rows.get(i)));
                if (quantity.equals(row.get("quantity"))) {
                    gone = i;
                    continue;
                }
                List<Object> above = new ArrayList<>(list(row.get(DoubtReader.WITH_THOSE_ABOVE.name())));
                if (gone >= 0) {
                    above.remove(gone);
                }
                row.put(DoubtReader.WITH_THOSE_ABOVE.name(), above);
                kept.add(row);
            }
            if (kept.isEmpty()) {
                section.remove("correlations");
            } else {
                section.put("correlations", kept);
            }
        }

        /** A fault of the reader at the field of the form that it is about. */
        private DocumentFault placed(DocumentFault fault) {
            String at = fault.path();
            if (at.startsWith("doubt.quantities[")) {
                int row = Integer.parseInt(at.replaceFirst("^doubt\\.quantities\\[(\\d+)].*$", "$1"));
                Object found = list(object(tree.get("doubt")).get("quantities")).get(row);
                at = DOUBT + object(found).get("quantity");
            }
            Matcher adjustment = ADJUSTMENT.matcher(at);
            if (adjustment.matches()) {
                at = "adjustments[" + places.get(Integer.parseInt(adjustment.group(1))) + "]" + adjustment.group(2);
            }
            String path = at;
            String nearest = byPath.keySet().stream()
                    .filter(one -> path.equals(one) || path.startsWith(one + "[") || path.startsWith(one + "."))
                    .max(Comparator.comparingInt(String::length))
                    .orElse(
                            adjustment.matches()
                                    ? at.replaceFirst("].*", "].") + AdjustmentReader.STANDARD.name()
                                    : path);
            return new DocumentFault(
                    fault.kind(),
                    followed.getOrDefault(nearest, nearest),
                    0,
                    0,
                    followed.containsKey(nearest)
                            ? byPath.get(nearest).section() + ": " + fault.problem()
                            : fault.problem(),
                    fault.remedy());
        }
    }

    /** A number of a text, or the text itself where it is none. */
    private static Object number(String text) {
        OptionalDouble number = DecimalText.number(text);
        return number.isPresent() ? (Object) number.getAsDouble() : text.strip();
    }

    private static double rounded(double value) {
        return new BigDecimal(value).round(new MathContext(DIGITS)).doubleValue();
    }
}
