package dev.lapwright.cli;

import dev.lapwright.documents.DocumentKind;
import java.util.ArrayList;

/** Words for the kinds of document, for shell completion. */
final class KindNames extends ArrayList<String> {
    private static final long serialVersionUID = 1L;

    KindNames() {
        for (DocumentKind kind : DocumentKind.values()) {
            add(kind.word());
        }
    }
}
