package dev.lapwright.cli.bench;

import dev.lapwright.documents.LineKind;
import dev.lapwright.line.LineFinder;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.report.UnitSystem;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A bench of a test, and what is said to it byte by byte. */
final class BenchRoom implements AutoCloseable {
    private static final int PATIENCE_S = 60;

    final BenchServer server;
    final URI address;

    BenchRoom(Path folder) {
        this("gt-talvex", "harrowmere", folder);
    }

    BenchRoom(String car, String circuit, Path folder) {
        this(car, circuit, "", folder, LineFinder.SEARCH);
    }

    /** With a file of a line, empty for none, and somebody who looks for others. */
    BenchRoom(String car, String circuit, String line, Path folder, LineFinder finder) {
        // A short race: each of its laps is driven by many cars.
        Question first = question(car, circuit, 5);
        server = new BenchServer(
                new Sheets(new Catalogue(car, circuit, line, ""), finder),
                new SavedFiles(folder),
                first,
                0,
                PATIENCE_S);
        address = URI.create(server.address());
    }

    /** A question about a car as it stands, beside itself, before a race of so many minutes. */
    static Question question(String car, String circuit, double minutes) {
        return new Question(
                car,
                circuit,
                new Question.LineWish(LineKind.SMOOTHEST.word(), Question.Stand.STANDARD),
                Question.Stand.STANDARD,
                List.of(Question.Stand.STANDARD),
                "",
                "lap",
                new Question.Zoom(0, 0),
                30,
                0.3,
                minutes,
                List.of(),
                UnitSystem.SI);
    }

    int port() {
        return address.getPort();
    }

    /** Behind the host: the secret and what is asked for. */
    String path(String asked) {
        return address.getPath() + asked;
    }

    /** A state as the page sends it. */
    static String state(long number, Map<String, ?> set, Map<String, ?> more) {
        Map<String, Object> tree = new LinkedHashMap<>();
        // Each test numbers its questions for itself.
        tree.put("window", "w" + number);
        tree.put("number", number);
        tree.put("car", "gt-talvex");
        tree.put("circuit", "harrowmere");
        tree.put("now", Map.of("name", "now", "set", set, "day", Map.of()));
        tree.put("pins", List.of(Map.of("name", "standard", "set", Map.of(), "day", Map.of())));
        tree.putAll(more);
        return JsonLayout.text(tree);
    }

    /** The head of a request of our own page. */
    String head(String method, String asked, int length) {
        return method + " " + path(asked) + " HTTP/1.1\r\nHost: 127.0.0.1:" + port() + "\r\nOrigin: http://127.0.0.1:"
                + port() + "\r\nContent-Type: application/json\r\nContent-Length: " + length
                + "\r\nConnection: close\r\n\r\n";
    }

    /** What our own page is answered. */
    String post(String asked, String body) throws IOException {
        return until(asked, body, "");
    }

    /** The same up to a message of a kind; then our page goes, as it does when it has something newer to ask. */
    String until(String asked, String body, String type) throws IOException {
        int length = body.getBytes(StandardCharsets.UTF_8).length;
        return said(head("POST", asked, length) + body, type.isEmpty() ? "\u0000" : "\"type\":\"" + type + "\"");
    }

    /** All that is answered to a text; what was not answered is empty. */
    String said(String request) throws IOException {
        return said(request, "\u0000");
    }

    /** The first line of what is answered; the rest is not waited for. */
    String status(String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port())) {
            socket.setSoTimeout(PATIENCE_S * 1000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            return line(socket.getInputStream());
        }
    }

    private String said(String request, String last) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port())) {
            socket.setSoTimeout(PATIENCE_S * 1000);
            OutputStream out = socket.getOutputStream();
            out.write(request.getBytes(StandardCharsets.UTF_8));
            out.flush();
            InputStream in = new BufferedInputStream(socket.getInputStream());
            StringBuilder answer = new StringBuilder();
            boolean chunked = false;
            for (String line = line(in); !line.isEmpty(); line = line(in)) {
                answer.append(line).append('\n');
                chunked |= line.equalsIgnoreCase("Transfer-Encoding: chunked");
            }
            if (!chunked) {
                return answer + new String(in.readAllBytes(), StandardCharsets.UTF_8);
            }
            ByteArrayOutputStream body = new ByteArrayOutputStream();
            String said = "";
            for (int n = length(in); n > 0 && !said.contains(last); n = length(in)) {
                body.write(in.readNBytes(n));
                line(in);
                said = last.equals("\u0000") ? "" : whole(body);
            }
            return answer + "\n" + whole(body);
        }
    }

    /** Without the line that was begun. */
    private static String whole(ByteArrayOutputStream body) {
        String all = body.toString(StandardCharsets.UTF_8);
        return all.substring(0, all.lastIndexOf('\n') + 1);
    }

    private static int length(InputStream in) throws IOException {
        String line = line(in);
        return line.isEmpty() ? 0 : Integer.parseInt(line, 16);
    }

    /** A line without its end; empty at the end of all. */
    private static String line(InputStream in) throws IOException {
        StringBuilder line = new StringBuilder();
        for (int c = in.read(); c >= 0 && c != '\n'; c = in.read()) {
            if (c != '\r') {
                line.append((char) c);
            }
        }
        return line.toString();
    }

    @Override
    public void close() {
        server.close();
    }
}
