package dev.lapwright.cli.option;

import dev.lapwright.documents.LineKind;
import java.util.ArrayList;

/** Words for lines, for shell completion. */
public final class LineWords extends ArrayList<String> {
    private static final long serialVersionUID = 1L;

    public LineWords() {
        for (LineKind kind : LineKind.values()) {
            add(kind.word());
        }
        add(LineOptions.REFRESH);
    }
}
