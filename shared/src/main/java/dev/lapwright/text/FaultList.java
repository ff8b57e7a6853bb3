package dev.lapwright.text;

import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Faults of one document, gathered while it is read. */
public final class FaultList {
    private final String source;
    private final List<DocumentFault> faults = new ArrayList<>();

    public FaultList(String source) {
        this.source = source;
    }

    /** A fault that the schema finds too. */
    public void form(TextPlace place, String path, String problem, String remedy) {
        add(DocumentFault.Kind.FORM, place, path, problem, remedy);
    }

    /** A fault that only the reader can find. */
    public void meaning(TextPlace place, String path, String problem, String remedy) {
        add(DocumentFault.Kind.MEANING, place, path, problem, remedy);
    }

    /** A fault found by the model; its own place is put before the problem unless the path says the same. */
    public void meaning(TextPlace place, String path, InvalidValueException fault) {
        boolean told = fault.place().isEmpty() || path.endsWith(fault.place());
        boolean closer = !path.isEmpty() && fault.place().startsWith(path);
        meaning(
                place,
                closer ? fault.place() : path,
                told || closer ? fault.problem() : fault.place() + ": " + fault.problem(),
                fault.remedy());
    }

    private void add(DocumentFault.Kind kind, TextPlace place, String path, String problem, String remedy) {
        faults.add(new DocumentFault(kind, path, place.line(), place.column(), problem, remedy));
    }

    /** An empty collection for the same document. */
    public FaultList emptied() {
        return new FaultList(source);
    }

    public boolean isEmpty() {
        return faults.isEmpty();
    }

    /** Throws what has been collected, in the order of the document. */
    public void throwIfAny() {
        if (!faults.isEmpty()) {
            faults.sort(Comparator.comparingInt(DocumentFault::line).thenComparingInt(DocumentFault::column));
            throw new DocumentException(source, faults);
        }
    }
}
