package dev.lapwright.charts;

import dev.lapwright.fault.LapwrightException;

/** A chart that this machine cannot draw, as when it has no fonts. */
public final class ChartException extends LapwrightException {
    private static final long serialVersionUID = 1L;

    /** @see LapwrightException#LapwrightException(String, String, String, Throwable) */
    public ChartException(String place, String problem, String remedy, Throwable cause) {
        super(place, problem, remedy, cause);
    }
}
