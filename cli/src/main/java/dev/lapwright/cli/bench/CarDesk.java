package dev.lapwright.cli.bench;

import dev.lapwright.car.Car;
import dev.lapwright.documents.CarForm;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.fault.NoLapException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import dev.lapwright.lap.LapSolver;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.report.Numbers;
import dev.lapwright.results.DifferenceWords;
import dev.lapwright.results.Subject;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.sensitivity.QuantityWorths;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Every field of the car on the sheet, to be filled in: what each means, may be, how well it is known and what it is worth on the sheet's circuit. */
final class CarDesk {
    private static final int MOST_FIELDS = 1000;

    private final CarForm form;
    private final Subject stands;
    private final Car bare;

    /** @param stands the car on the sheet in its standard settings, where and when laps are driven */
    CarDesk(Subject stands) {
        this.stands = stands;
        bare = stands.bare();
        form = CarForm.of(bare);
    }

    /** All fields with what they are worth. */
    Map<String, Object> tree(StudyRun how) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "fields");
        tree.put("name", bare.name());
        tree.put("fields", form.fields().stream().map(CarDesk::field).toList());
        tree.put("worths", worths(bare, how));
        return tree;
    }

    private static Map<String, Object> field(CarForm.Field field) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("path", field.path());
        tree.put("section", field.section());
        tree.put("quantity", field.quantity());
        tree.put("unit", field.unit().replace("degC", "°C"));
        tree.put("range", range(field));
        tree.put("absent", field.absent().orElse(null));
        tree.put("meaning", field.meaning());
        tree.put("words", field.words());
        tree.put("text", field.text());
        return tree;
    }

    private static String range(CarForm.Field field) {
        return Double.isNaN(field.min())
                ? ""
                : ReportBlocks.told(Numbers.plain(field.min()) + " to " + Numbers.plain(field.max()));
    }

    /** Worths by the names of quantities, as far as a lap hangs on them. */
    private Map<String, Object> worths(Car car, StudyRun how) {
        Map<String, Object> all = new LinkedHashMap<>();
        try {
            QuantityWorths.of(car, stands.driven(), stands.day())
                    .run(how)
                    .worths()
                    .forEach(worth -> all.put(worth.quantity(), worth(worth)));
        } catch (NoLapException none) {
            // Without a lap nothing is worth anything; the page says that there is none.
        }
        return all;
    }

    private static Map<String, Object> worth(QuantityWorths.Worth worth) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("off", worth.deviation() > 0 ? Numbers.significant(worth.deviation(), 2) : "");
        tree.put("percent", said(worth.ofPercent()));
        double ofDoubt = Math.abs(worth.ofDeviation());
        tree.put("doubt", said(ofDoubt).replaceFirst("^\\+", "±"));
        tree.put("size", Double.isNaN(ofDoubt) ? 0 : ofDoubt);
        return tree;
    }

    /** Seconds to the thousandth; empty where nothing is known, or nothing changes. */
    private static String said(double seconds) {
        return Double.isNaN(seconds) || seconds == 0 ? "" : ReportBlocks.told(Numbers.signed(seconds, 3));
    }

    /** The car so filled in: its lap beside the one on the sheet, or what is wrong with it, field by field. */
    Map<String, Object> tried(Fields texts, StudyRun how) {
        Map<String, Object> tree = new LinkedHashMap<>();
        try {
            Car car = form.filled(texts.entries(MOST_FIELDS));
            double before = time(bare);
            double now = time(car);
            tree.put("type", "tried");
            tree.put(
                    "said",
                    ReportBlocks.told("This car laps in " + Numbers.lapTime(now) + ", "
                            + DifferenceWords.than(now - before, "the one on the sheet")
                            + ", in the standard settings of both."));
            tree.put("worths", worths(car, how));
        } catch (DocumentException wrong) {
            return faults(wrong);
        } catch (NoLapException none) {
            tree.put("type", "tried");
            tree.put("said", ReportBlocks.told("This car has no lap: " + none.getMessage()));
            tree.put("worths", Map.of());
        }
        return tree;
    }

    private double time(Car car) {
        return LapSolver.on(stands.driven()).lapTime(Vehicle.of(car, stands.day()));
    }

    /** The car so filled in, written under a name and entered among those of the bench. */
    Map<String, Object> kept(Fields texts, String name, SavedFiles saved, Catalogue catalogue) {
        Car car;
        try {
            car = form.filled(texts.entries(MOST_FIELDS));
        } catch (DocumentException wrong) {
            return faults(wrong);
        }
        Path file = saved.save(name, ".json", DocumentWriter.text(car));
        catalogue.enterCar(file.toString());
        Map<String, Object> take = new LinkedHashMap<>();
        take.put("car", file.toString());
        take.put("title", car.name());
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "kept");
        tree.put("saved", file.toString());
        tree.put("take", take);
        return tree;
    }

    private static Map<String, Object> faults(DocumentException wrong) {
        List<Map<String, Object>> faults = new ArrayList<>();
        for (DocumentFault fault : wrong.faults()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("path", fault.path());
            one.put(
                    "what",
                    ReportBlocks.told(fault.problem() + (fault.remedy().isEmpty() ? "" : "; " + fault.remedy())));
            faults.add(one);
        }
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "faults");
        tree.put("faults", faults);
        return tree;
    }
}
