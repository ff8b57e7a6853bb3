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
        line(Wire.text(ShownMessage.in(units, message)));
    }

    /** An empty line, by which it shows whether somebody still listens. */
    synchronized void sign() {
        line("");
    }

    private void line(String text) {
        if (broken) {
            return;
        }
        try {
            out.write((text + "\n").getBytes(StandardCharsets.UTF_8));
            out.flush();
        } catch (IOException gone) {
            broken = true;
        }
    }

    /** Whether nobody listens any more. */
    boolean isBroken() {
        return broken;
    }

    /**
     * Ends it; what a study that was stopped still tells afterwards is not heard.
     *
     * @throws IOException if nobody listens any more
     */
    @Override
    public synchronized void close() throws IOException {
        broken = true;
        out.close();
    }
}
