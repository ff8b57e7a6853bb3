package dev.lapwright.cli.bench;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.Set;

/**
 * Door of the bench: lets in only the page that it has served itself. Other pages of the browser may send requests to this
 * machine; they do not know the secret in the address, their names for it and their origin are wrong, and the browser says
 * where a request comes from.
 */
final class Guard {
    /** A state with six pins takes some kilobytes. */
    static final int MOST_BYTES = 64_000;

    /** Points of a circuit come as a whole file. */
    static final int MOST_FILE_BYTES = 4_000_000;

    /** Logs of a whole run as well, samples of a hundred in a second among them. */
    static final int MOST_LOG_BYTES = 20_000_000;

    private static final int SECRET_BYTES = 18;
    private static final Set<String> OUR_PAGES = Set.of("same-origin", "none");

    private final String secret;
    private final Set<String> hosts;

    Guard(int port) {
        byte[] random = new byte[SECRET_BYTES];
        new SecureRandom().nextBytes(random);
        secret = Base64.getUrlEncoder().withoutPadding().encodeToString(random);
        hosts = Set.of("127.0.0.1:" + port, "localhost:" + port);
    }

    String secret() {
        return secret;
    }

    /**
     * What is asked for, behind the secret.
     *
     * @throws Refusal if it is not our page that asks
     */
    String admitted(HttpExchange exchange) throws Refusal {
        Headers headers = exchange.getRequestHeaders();
        String host = single(headers, "Host");
        if (!hosts.contains(host)) {
            throw new Refusal(403, "this is not a name of the bench");
        }
        String site = headers.getFirst("Sec-Fetch-Site");
        if (site != null && !OUR_PAGES.contains(site)) {
            throw new Refusal(403, "another page may not ask here");
        }
        String origin = headers.getFirst("Origin");
        if (origin != null && !origin.equals("http://" + host)) {
            throw new Refusal(403, "another page may not ask here");
        }
        String method = exchange.getRequestMethod();
        if (!method.equals("GET") && !method.equals("POST")) {
            throw new Refusal(405, "only GET and POST are known here");
        }
        if (method.equals("POST") && origin == null) {
            throw new Refusal(403, "only the page may ask this");
        }
        String path = exchange.getRequestURI().getRawPath();
        String[] parts = path == null ? new String[0] : path.split("/", -1);
        if (parts.length != 3 || !isSecret(parts[1])) {
            throw new Refusal(404, "there is nothing here");
        }
        return parts[2];
    }

    private static String single(Headers headers, String name) throws Refusal {
        if (headers.get(name) == null || headers.get(name).size() != 1) {
            throw new Refusal(400, "the header " + name + " is missing, or there are several");
        }
        return headers.getFirst(name);
    }

    /** Compared without telling by its time how much of a guess was right. */
    private boolean isSecret(String guess) {
        return MessageDigest.isEqual(
                secret.getBytes(StandardCharsets.US_ASCII), guess.getBytes(StandardCharsets.UTF_8));
    }

    /**
     * The text that was sent.
     *
     * @param most bytes that it may have
     * @throws Refusal if it is not JSON by its heading, too long, or not UTF-8
     */
    static String body(HttpExchange exchange, int most) throws IOException {
        String type = exchange.getRequestHeaders().getFirst("Content-Type");
        if (type == null || !type.split(";")[0].strip().equalsIgnoreCase("application/json")) {
            throw new Refusal(415, "only application/json is read here");
        }
        String length = exchange.getRequestHeaders().getFirst("Content-Length");
        if (length != null && (length.length() > 9 || Long.parseLong(length) > most)) {
            throw new Refusal(413, "more than " + most + " bytes are too many");
        }
        byte[] bytes;
        try (InputStream in = exchange.getRequestBody()) {
            bytes = in.readNBytes(most + 1);
            if (bytes.length > most) {
                throw new Refusal(413, "more than " + most + " bytes are too many");
            }
        }
        try {
            CharBuffer text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
            return text.toString();
        } catch (CharacterCodingException e) {
            throw new Refusal(400, "it is not UTF-8 text");
        }
    }
}
