package dev.lapwright.cli.option;

import dev.lapwright.documents.Demos;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import java.util.Iterator;
import java.util.List;

/** Names of demo documents for shell completion; read when they are asked for, not before. */
public abstract class DemoNames implements Iterable<String> {
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
    public static final class Cars extends DemoNames {
        Cars() {
            super(DocumentKind.CAR);
        }
    }

    /** Of circuits. */
    public static final class Circuits extends DemoNames {
        Circuits() {
            super(DocumentKind.CIRCUIT);
        }
    }

    /** Of setups. */
    public static final class Setups extends DemoNames {
        Setups() {
            super(DocumentKind.SETUP);
        }
    }

    /** Of conditions. */
    public static final class Days extends DemoNames {
        Days() {
            super(DocumentKind.CONDITIONS);
        }
    }

    /** Of all kinds. */
    public static final class All extends DemoNames {
        All() {
            super(DocumentKind.values());
        }
    }
}
