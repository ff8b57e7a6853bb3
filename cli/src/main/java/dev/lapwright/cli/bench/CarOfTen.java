package dev.lapwright.cli.bench;

import dev.lapwright.cli.document.CarQuestion;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.draft.CarDraft;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.results.car.CarDraftReport;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** A car of ten answers, drafted, written and laid on the bench: the questions, words and refusals are those of the command. */
final class CarOfTen {
    private CarOfTen() {}

    /** The questions, for the page. */
    static List<Map<String, Object>> questions() {
        List<Map<String, Object>> all = new ArrayList<>();
        for (CarQuestion question : CarQuestion.values()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("name", key(question));
            one.put("asking", question.asking());
            all.add(one);
        }
        return all;
    }

    private static String key(CarQuestion question) {
        return question.option().substring(2);
    }

    /**
     * Drafts it, writes its document, and enters that among the cars of the bench.
     *
     * @return what was guessed, and the car to take over; or a fault with the fields that it is about
     */
    static Map<String, Object> drafted(Fields answers, String name, SavedFiles saved, Catalogue catalogue) {
        answers.only(Arrays.stream(CarQuestion.values()).map(CarOfTen::key).collect(Collectors.toSet()));
        Map<CarQuestion, String> texts = new EnumMap<>(CarQuestion.class);
        for (CarQuestion question : CarQuestion.values()) {
            texts.put(question, answers.entry(key(question)));
            try {
                question.check(texts.get(question));
            } catch (InvalidValueException fault) {
                return fault(fault, Set.of(question));
            }
        }
        CarDraft draft;
        try {
            draft = CarDraft.of(CarQuestion.answers(Documents.checkedName("name", name), texts::get));
        } catch (InvalidValueException contradiction) {
            return fault(
                    contradiction,
                    Arrays.stream(CarQuestion.values())
                            .filter(question -> contradiction.place().contains(question.title()))
                            .collect(Collectors.toSet()));
        }
        Path file = saved.save(name, ".json", DocumentWriter.text(draft.car()));
        catalogue.enterCar(file.toString());
        Map<String, Object> take = new LinkedHashMap<>();
        take.put("label", "this car");
        take.put("words", "");
        take.put("car", file.toString());
        take.put("title", draft.car().name());
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "result");
        tree.put("study", "draft");
        tree.put("blocks", ReportBlocks.of(new CarDraftReport(draft).report()));
        tree.put("take", List.of(take));
        tree.put("saved", file.toString());
        return tree;
    }

    private static Map<String, Object> fault(InvalidValueException fault, Set<CarQuestion> about) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "fault");
        tree.put("what", ReportBlocks.told(fault.problem() + "; " + fault.remedy()));
        tree.put(
                "places",
                Arrays.stream(CarQuestion.values())
                        .filter(about::contains)
                        .map(CarOfTen::key)
                        .toList());
        return tree;
    }
}
