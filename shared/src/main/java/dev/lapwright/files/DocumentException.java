package dev.lapwright.files;

import dev.lapwright.fault.LapwrightException;
import java.util.List;

/**
 * Document that cannot be used, with everything that is wrong with it. The message names the file and, where there is one fault,
 * is one line; where there are several, each has a line of its own.
 */
public final class DocumentException extends LapwrightException {
    private static final long serialVersionUID = 1L;
    private static final int FAULTS_SHOWN = 20;

    private final String source;
    private final transient List<DocumentFault> faults;

    /**
     * A document with these faults.
     *
     * @param faults at least one, in the order of their lines
     */
    public DocumentException(String source, List<DocumentFault> faults) {
        super(
                place(source, faults),
                problem(faults),
                faults.size() == 1 ? faults.get(0).remedy() : "");
        this.source = source;
        this.faults = List.copyOf(faults);
    }

    /** The document as a whole cannot be had: no such file, or it cannot be read. */
    public DocumentException(String source, String problem, String remedy) {
        this(source, List.of(new DocumentFault(DocumentFault.Kind.SYNTAX, "", 0, 0, problem, remedy)));
    }

    private static String place(String source, List<DocumentFault> faults) {
        String place = faults.size() == 1 ? faults.get(0).place() : "";
        return place.isEmpty() ? source : source + ", " + place;
    }

    private static String problem(List<DocumentFault> faults) {
        if (faults.size() == 1) {
            return faults.get(0).problem();
        }
        StringBuilder lines = new StringBuilder().append(faults.size()).append(" faults");
        for (DocumentFault fault : faults.subList(0, Math.min(faults.size(), FAULTS_SHOWN))) {
            lines.append("\n  ");
            if (!fault.place().isEmpty()) {
                lines.append(fault.place()).append(": ");
            }
            lines.append(fault.text());
        }
        if (faults.size() > FAULTS_SHOWN) {
            lines.append("\n  and ").append(faults.size() - FAULTS_SHOWN).append(" more");
        }
        return lines.toString();
    }

    /** The file, or the name given to the text. */
    public String source() {
        return source;
    }

    /** All faults in the order of their lines; at least one. */
    public List<DocumentFault> faults() {
        return faults;
    }
}
