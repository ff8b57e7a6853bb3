package dev.lapwright.fault;

/** A sound car and a sound circuit that give no lap together: too little drive for a climb, a bank it slides down. */
public final class NoLapException extends LapwrightException {
    private static final long serialVersionUID = 1L;

    /** @see LapwrightException#LapwrightException(String, String, String) */
    public NoLapException(String place, String problem, String remedy) {
        super(place, problem, remedy);
    }
}
