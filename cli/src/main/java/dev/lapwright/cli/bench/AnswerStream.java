package dev.lapwright.cli.bench;

import com.sun.net.httpserver.HttpExchange;
import dev.lapwright.report.UnitSystem;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** Answer that is told message by message, a line of JSON each, to somebody who may go away meanwhile. */
final class AnswerStream implements AutoCloseable {
    private final OutputStream out;
    private final UnitSystem units;
    private volatile boolean broken;

    /** @param units in which the page reads it */
    AnswerStream(HttpExchange exchange, UnitSystem units) throws IOException {
        this.units = units;
        exchange.getResponseHeaders().set("Content-Type", "application/x-ndjson; charset=utf-8");
        exchange.sendResponseHeaders(200, 0);
        out = exchange.getResponseBody();
    }

    /** Tells one message at once; nothing happens where nobody listens any more. */
    synchronized void tell(Map<String, ?> message) {
        if (broken) {
            return;
        }
        try {
            out.write((Wire.text(ShownMessage.in(units, message)) + "\n").getBytes(StandardCharsets.UTF_8));
            out.flush();
        } catch (IOException gone) {
            broken = true;
        }
    }

    /** Whether nobody listens any more. */
    boolean isBroken() {
        return broken;
    }

    /** Ends it; what a study that was stopped still tells afterwards is not heard. */
    @Override
    public synchronized void close() {
        broken = true;
        try {
            out.close();
        } catch (IOException gone) {
            // Nobody is there to notice.
        }
    }
}
