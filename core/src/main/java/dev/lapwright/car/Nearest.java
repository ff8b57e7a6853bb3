package dev.lapwright.car;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Search for the known name that a mistyped one most likely meant, by edit distance (Levenshtein 1966). */
public final class Nearest {
    private Nearest() {}

    /** The known name that is near enough to be what was meant, if any. */
    public static Optional<String> to(String wanted, Collection<String> known) {
        String best = "";
        int least = Integer.MAX_VALUE;
        String lower = wanted.toLowerCase(Locale.ROOT);
        for (String name : known) {
            String candidate = name.toLowerCase(Locale.ROOT);
            int distance = distance(lower, candidate);
            String tail = candidate.substring(candidate.lastIndexOf('.') + 1);
            distance = Math.min(distance, distance(lower, tail));
            if (distance < least) {
                least = distance;
                best = name;
            }
        }
        return least <= Math.max(2, wanted.length() / 3) ? Optional.of(best) : Optional.empty();
    }

    /** A remedy for an unknown name: "perhaps you meant …", or the list if nothing is near and it is short. */
    public static String remedy(String wanted, Collection<String> known) {
        return to(wanted, known)
                .map(name -> "perhaps you meant " + name)
                .orElseGet(() -> known.size() <= 25
                        ? "known: " + String.join(", ", known)
                        : "see the list with 'lapwright show'");
    }

    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
