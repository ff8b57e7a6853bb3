package dev.lapwright.cli.output;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;

/** Output stream that remembers why writing failed, which a print stream does not tell. */
public final class WatchedStream extends OutputStream {
    private final OutputStream target;
    private IOException failure;

    public WatchedStream(OutputStream target) {
        this.target = target;
    }

    @Override
    public void write(int b) throws IOException {
        write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int offset, int length) throws IOException {
        try {
            target.write(bytes, offset, length);
        } catch (IOException e) {
            throw remembered(e);
        }
    }

    @Override
    public void flush() throws IOException {
        try {
            target.flush();
        } catch (IOException e) {
            throw remembered(e);
        }
    }

    private IOException remembered(IOException e) {
        if (failure == null) {
            failure = e;
        }
        return e;
    }

    /** The first failure in words; empty if all went well. */
    public Optional<String> failure() {
        return Optional.ofNullable(failure).map(e -> e.getMessage() == null ? "it is closed" : e.getMessage());
    }
}
