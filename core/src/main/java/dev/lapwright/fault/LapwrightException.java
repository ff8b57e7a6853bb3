package dev.lapwright.fault;

/** Base class of the errors that a user can mend: each says where it arose, what is wrong and what to do about it. */
public class LapwrightException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final String place;
    private final String problem;
    private final String remedy;

    /**
     * @param place the document, field or station, for example {@code chassis.massKg}; empty if there is none
     * @param problem what is wrong, with the offending value and its unit
     * @param remedy what the user can do
     */
    public LapwrightException(String place, String problem, String remedy) {
        this(place, problem, remedy, null);
    }

    /** As above, keeping the cause for those who embed the library. */
    public LapwrightException(String place, String problem, String remedy, Throwable cause) {
        super((place.isEmpty() ? "" : place + ": ") + problem + (remedy.isEmpty() ? "" : "; " + remedy), cause);
        this.place = place;
        this.problem = problem;
        this.remedy = remedy;
    }

    /** Where: a document, field or station; may be empty. */
    public String place() {
        return place;
    }

    /** What is wrong. */
    public String problem() {
        return problem;
    }

    /** What to do; may be empty. */
    public String remedy() {
        return remedy;
    }
}
