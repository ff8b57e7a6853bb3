package dev.lapwright.documents;

import dev.lapwright.car.Nearest;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Finds out what an unknown word most likely meant. */
final class Suggestion {
    private static final String SAID = "perhaps you meant ";
    private static final int SHORTEST_BEGINNING = 2;

    private Suggestion() {}

    /** The known word nearest to the one wanted: by typing errors, or as a beginning of it (deg for degrees). */
    static Optional<String> near(String wanted, Collection<String> known) {
        Optional<String> nearest = Nearest.to(wanted, known);
        if (nearest.isPresent()) {
            return nearest;
        }
        String lower = wanted.toLowerCase(Locale.ROOT);
        String best = "";
        for (String word : known) {
            boolean begins = lower.startsWith(word.toLowerCase(Locale.ROOT));
            if (begins && word.length() >= SHORTEST_BEGINNING && word.length() > best.length()) {
                best = word;
            }
        }
        return best.isEmpty() ? Optional.empty() : Optional.of(best);
    }

    /** The remedy that names the nearest word, or the given one if none is near. */
    static String remedy(String wanted, Collection<String> known, String otherwise) {
        return near(wanted, known).map(word -> SAID + word).orElse(otherwise);
    }

    /** A number whose unit is missing or unknown: its name without a unit is the word, or the word's beginning. */
    static Optional<NumberField> numberOf(String wanted, Collection<NumberField> fields) {
        NumberField best = null;
        for (NumberField field : fields) {
            String base = field.base();
            boolean begins = wanted.toLowerCase(Locale.ROOT).startsWith(base.toLowerCase(Locale.ROOT));
            String rest = begins ? wanted.substring(base.length()) : "";
            boolean unitFollows = rest.isEmpty() || Character.isUpperCase(rest.charAt(0));
            if (begins
                    && unitFollows
                    && (best == null || base.length() > best.base().length())) {
                best = field;
            }
        }
        return Optional.ofNullable(best);
    }

    /** A list for people: a, b or c. */
    static String either(List<String> words) {
        List<String> all = new ArrayList<>(words);
        String last = all.remove(all.size() - 1);
        return all.isEmpty() ? last : String.join(", ", all) + " or " + last;
    }
}
