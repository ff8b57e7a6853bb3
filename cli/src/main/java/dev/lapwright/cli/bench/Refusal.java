package dev.lapwright.cli.bench;

import java.io.IOException;

/** Request that is turned away, with a status of RFC 9110 and the reason in words. */
final class Refusal extends IOException {
    private static final long serialVersionUID = 1L;

    private final int status;

    Refusal(int status, String reason) {
        super(reason);
        this.status = status;
    }

    int status() {
        return status;
    }
}
