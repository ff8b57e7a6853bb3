package dev.lapwright.fault;

/** Error of a value that cannot be used: not finite, outside its range, or a name nobody knows. */
public final class InvalidValueException extends LapwrightException {
    private static final long serialVersionUID = 1L;

    /** @see LapwrightException#LapwrightException(String, String, String) */
    public InvalidValueException(String place, String problem, String remedy) {
        super(place, problem, remedy);
    }
}
