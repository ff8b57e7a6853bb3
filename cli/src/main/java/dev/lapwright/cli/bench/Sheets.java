package dev.lapwright.cli.bench;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.LineKind;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineFinder;
import dev.lapwright.line.LineSearch;
import dev.lapwright.results.ChosenLine;
import dev.lapwright.track.Track;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Sheets made so far, of which the last used are kept. */
final class Sheets {
    private static final int MOST = 4;

    private final Catalogue catalogue;
    private final LineFinder finder;
    private final Object making = new Object();
    private final Map<Object, Sheet> sheets = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Object, Sheet> eldest) {
            return size() > MOST;
        }
    };

    /**
     * @param finder who looks for fastest lines
     */
    Sheets(Catalogue catalogue, LineFinder finder) {
        this.catalogue = catalogue;
        this.finder = finder;
    }

    Catalogue catalogue() {
        return catalogue;
    }

    /**
     * The sheet that a question is about; made if it is not there, which takes seconds where the fastest line is to be found.
     *
     * @param told of the steps of a search
     */
    Sheet of(Question question, LineSearch.Progress told) {
        Question.LineWish wish = question.line();
        Question.Stand as = wish.is(LineKind.FASTEST) ? wish.as() : Question.Stand.STANDARD;
        Object key = List.of(catalogue.edition(), question.car(), question.circuit(), wish.word(), as.set(), as.day());
        synchronized (sheets) {
            Sheet known = sheets.get(key);
            if (known != null) {
                return known;
            }
        }
        if (wish.is(LineKind.FASTEST)) {
            return made(key, question, as, told);
        }
        // Made in a moment, and often asked for by two at once: by who starts the bench and by its first page.
        synchronized (making) {
            synchronized (sheets) {
                Sheet known = sheets.get(key);
                if (known != null) {
                    return known;
                }
            }
            return made(key, question, as, told);
        }
    }

    private Sheet made(Object key, Question question, Question.Stand as, LineSearch.Progress told) {
        Sheet made =
                make(catalogue.car(question.car()), catalogue.circuit(question.circuit()), question.line(), as, told);
        synchronized (sheets) {
            sheets.put(key, made);
        }
        return made;
    }

    private Sheet make(Car car, Track road, Question.LineWish wish, Question.Stand as, LineSearch.Progress told) {
        LineChoices choices = LineChoices.DEFAULT;
        List<Conditions> days = catalogue.days();
        if (wish.word().equals(Question.LineWish.FILE)) {
            return new Sheet(car, road, catalogue.line().on(road, car, choices), "", days);
        }
        if (wish.is(LineKind.MIDDLE) || road.path() != Track.Path.ROAD) {
            return new Sheet(car, road, ChosenLine.of(road, LineKind.MIDDLE.word(), null, choices), "", days);
        }
        if (wish.is(LineKind.FASTEST)) {
            Car driven = Question.car(car, as);
            LineSearch search = LineSearch.of(road, driven, choices).reporting(told);
            Line fastest = finder.fastest(search, Vehicle.of(driven, as.conditions(days)));
            return new Sheet(car, road, ChosenLine.of(road, wish.word(), fastest, choices), "", days);
        }
        try {
            Line smoothest = LineSearch.of(road, car, choices).smoothest();
            return new Sheet(car, road, ChosenLine.of(road, wish.word(), smoothest, choices), "", days);
        } catch (InvalidValueException none) {
            String note = "The circuit's own path is driven, as no line was found: " + none.getMessage();
            return new Sheet(car, road, ChosenLine.of(road, LineKind.MIDDLE.word(), null, choices), note, days);
        }
    }
}
