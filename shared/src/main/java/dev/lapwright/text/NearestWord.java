package dev.lapwright.text;

import dev.lapwright.car.Nearest;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Nearest known word to an unknown one, for the remedy in a message. */
public final class NearestWord {
    private static final String SAID = "perhaps you meant ";
    private static final int SHORTEST_BEGINNING = 2;

    private NearestWord() {}

    /** The known word nearest to the one wanted: by typing errors, or as a beginning of it (deg for degrees). */
    public static Optional<String> near(String wanted, Collection<String> known) {
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
    public static String remedy(String wanted, Collection<String> known, String otherwise) {
        return near(wanted, known).map(word -> SAID + word).orElse(otherwise);
    }

    /** A list for people: a, b or c. */
    public static String either(List<String> words) {
        List<String> all = new ArrayList<>(words);
        String last = all.remove(all.size() - 1);
        return all.isEmpty() ? last : String.join(", ", all) + " or " + last;
    }
}
