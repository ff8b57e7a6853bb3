package dev.lapwright.cli.document;

import dev.lapwright.documents.DocumentKind;
import java.util.ArrayList;

/** Words for the kinds of document, for shell completion. */
public final class KindNames extends ArrayList<String> {
    private static final long serialVersionUID = 1L;

    public KindNames() {
        for (DocumentKind kind : DocumentKind.values()) {
            add(kind.word());
        }
    }
}
