package dev.lapwright.files;

import dev.lapwright.fault.LapwrightException;

/** File that cannot be written, or must not be: it exists and nobody allowed overwriting it. */
public final class UnwritableFileException extends LapwrightException {
    private static final long serialVersionUID = 1L;

    public UnwritableFileException(String file, String problem, String remedy, Throwable cause) {
        super(file, problem, remedy, cause);
    }
}
