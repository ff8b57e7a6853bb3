package dev.lapwright.documents;

import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** However a document has been damaged, it is read or refused with its faults: nothing else is ever thrown. */
class CorruptionTest {
    private static final String ALPHABET = "{}[]\",:.-+eE0123456789 \n\ttruefalsnmkgMPaüß\\/'\0";
    private static final List<DocumentKind> KINDS = List.of(DocumentKind.values());

    @Property(tries = 2000)
    void aDamagedTextIsReadOrRefused(@ForAll long seed) {
        Random random = new Random(seed);
        DocumentKind kind = KINDS.get(random.nextInt(KINDS.size()));
        List<Path> files = Stream.of("valid/", "invalid/")
                .flatMap(folder -> TestDocuments.files(folder + kind.word(), ".json").stream())
                .toList();
        StringBuilder text = new StringBuilder(
                TestDocuments.named(files.get(random.nextInt(files.size()))).text());
        for (int i = 0; i <= random.nextInt(4); i++) {
            damage(text, random);
        }
        // Throws if it meets anything but a document's own exception.
        new SchemaVerdict(kind, text.toString()).byReader();
    }

    private static void damage(StringBuilder text, Random random) {
        int at = random.nextInt(text.length());
        char other = ALPHABET.charAt(random.nextInt(ALPHABET.length()));
        switch (random.nextInt(5)) {
            case 0 -> text.deleteCharAt(at);
            case 1 -> text.insert(at, other);
            case 2 -> text.setCharAt(at, other);
            case 3 -> text.insert(at, text.substring(at, Math.min(text.length(), at + 30)));
            default -> text.delete(at, Math.min(text.length() - 1, at + random.nextInt(40)));
        }
        if (text.isEmpty()) {
            text.append(other);
        }
    }
}
