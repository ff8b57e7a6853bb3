package dev.lapwright.fault;

/** Error of a car that cannot complete a lap of a track, each being valid by itself: too little drive for a climb, a bank it slides down. */
public final class NoLapException extends LapwrightException {
    private static final long serialVersionUID = 1L;

    /** @see LapwrightException#LapwrightException(String, String, String) */
    public NoLapException(String place, String problem, String remedy) {
        super(place, problem, remedy);
    }
}
