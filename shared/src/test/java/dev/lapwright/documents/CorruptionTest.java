package dev.lapwright.documents;

import dev.lapwright.torture.Damage;
import dev.lapwright.torture.Torture;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;

/** However a document has been damaged, it is read or refused with its faults: nothing else is ever thrown. */
class CorruptionTest {
    private static final List<DocumentKind> KINDS = List.of(DocumentKind.values());

    @Torture(cases = 2000, percent = 4)
    void aDamagedTextIsReadOrRefused(@ForAll long seed) {
        Random random = new Random(seed);
        DocumentKind kind = KINDS.get(random.nextInt(KINDS.size()));
        List<Path> files = Stream.of("valid/", "invalid/")
                .flatMap(folder -> TestDocuments.files(folder + kind.word(), ".json").stream())
                .toList();
        String text =
                TestDocuments.named(files.get(random.nextInt(files.size()))).text();
        // Throws if it meets anything but a document's own exception.
        new SchemaVerdict(kind, Damage.to(text, random)).byReader();
    }
}
