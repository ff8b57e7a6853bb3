package dev.lapwright.cli;

import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import java.util.Iterator;
import java.util.List;

/** Names of demo documents for shell completion; read when they are asked for, not before. */
abstract class DemoNames implements Iterable<String> {
    private final List<DocumentKind> kinds;

    private DemoNames(DocumentKind... kinds) {
        this.kinds = List.of(kinds);
    }

    @Override
    public Iterator<String> iterator() {
        return Documents.demos().stream()
                .filter(demo -> kinds.contains(demo.kind()))
                .map(Demos.Document::name)
                .distinct()
                .iterator();
    }

    /** Of cars. */
    static final class Cars extends DemoNames {
        Cars() {
            super(DocumentKind.CAR);
        }
    }

    /** Of circuits. */
    static final class Circuits extends DemoNames {
        Circuits() {
            super(DocumentKind.CIRCUIT);
        }
    }

    /** Of setups. */
    static final class Setups extends DemoNames {
        Setups() {
            super(DocumentKind.SETUP);
        }
    }

    /** Of conditions. */
    static final class Days extends DemoNames {
        Days() {
            super(DocumentKind.CONDITIONS);
        }
    }

    /** Of all kinds. */
    static final class All extends DemoNames {
        All() {
            super(DocumentKind.values());
        }
    }
}
