package dev.lapwright.cli.bench;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import dev.lapwright.car.Car;
import dev.lapwright.cli.brief.BriefReport;
import dev.lapwright.cli.output.VersionText;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.LapwrightException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.files.SafeFile;
import dev.lapwright.notebook.Event;
import dev.lapwright.notebook.EventFolder;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.report.UnitSystem;
import dev.lapwright.results.Subject;
import dev.lapwright.study.Progress;
import dev.lapwright.study.StudyRun;
import dev.lapwright.study.StudyStoppedException;
import dev.lapwright.study.landscape.Landscape;
import java.io.IOException;
import java.io.OutputStream;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.Semaphore;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;

/**
 * Server of the bench, on this machine alone: it hands out the page, reads the states that the page sends, asks studies, and
 * tells what they say. A window's newest question stops the work for its older ones.
 */
final class BenchServer implements AutoCloseable {
    /** Threads, and so requests at the same time; an open window takes one. */
    static final int MOST_THREADS = 160;

    static final int MOST_CONNECTIONS = 400;

    static final int MOST_WINDOWS = 60;
    private static final int MOST_PAGES_KEPT = 8;
    private static final int TICKS_PER_LOOK = 2;
    private static final int TICKS_PER_SIGN = 5;
    private static final int TRIES_PER_SIGN = 10;
    private static final long PROGRESS_NS = 150_000_000;
    /** A page draws a lap in about that time. */
    private static final int DRAWING_MS = 40;

    /** Kinds of message after which no other comes. */
    private static final Set<String> LAST = Set.of("end", "stopped", "fault");

    private static final String NONE = "";
    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
                    + " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    /** The page that is made of a brief brings its style along, and no script. */
    private static final String BRIEF_POLICY =
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; frame-ancestors 'none'";

    static {
        // Read once, when the server's class is: seconds for a request to arrive whole, and no waiting for fuller
        // packets.
        System.setProperty("sun.net.httpserver.maxReqTime", "10");
        System.setProperty("sun.net.httpserver.maxReqHeaders", "60");
        System.setProperty("sun.net.httpserver.nodelay", "true");
        System.setProperty("jdk.httpserver.maxConnections", Integer.toString(MOST_CONNECTIONS));
    }

    private final HttpServer server;
    private final Guard guard;
    private final PageFiles files = new PageFiles();
    private final Sheets sheets;
    private final SavedFiles saved;
    private final Question first;
    /** Notebook of the event; empty until one is begun. */
    private volatile Optional<Notebook> notebook;

    private final Windows windows;
    private final int cores = Runtime.getRuntime().availableProcessors();
    /** Laps go first: what takes longer is done for one window at a time. */
    private final Semaphore laps = new Semaphore(cores, true);

    private final Semaphore slow = new Semaphore(1, true);
    private final Semaphore studies = new Semaphore(1, true);
    private final Map<String, byte[]> made = Collections.synchronizedMap(new LinkedHashMap<>() {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, byte[]> eldest) {
            return size() > MOST_PAGES_KEPT;
        }
    });
    private final AtomicLong pages = new AtomicLong();
    private final ThreadPoolExecutor threads;
    private final Thread clock;
    private volatile List<String> news = List.of();
    private volatile boolean ended;

    /**
     * Starts it.
     *
     * @param first state that a new page begins with
     * @param port 0 for any that is free
     * @param patience seconds without a window after which {@link Windows#awaitDesertion} returns
     * @throws LapwrightException if the port is taken
     */
    BenchServer(Sheets sheets, SavedFiles saved, Question first, int port, int patience) {
        this.sheets = sheets;
        this.saved = saved;
        this.first = first;
        notebook = Notebook.of(first.car(), first.circuit());
        windows = new Windows(patience);
        try {
            InetAddress here = InetAddress.getByAddress("localhost", new byte[] {127, 0, 0, 1});
            server = HttpServer.create(new InetSocketAddress(here, port), 0);
        } catch (BindException taken) {
            throw new LapwrightException(
                    "--port " + port,
                    "it cannot be had: another program listens there, or it is kept for the system",
                    "leave --port out for one that is free, or name another",
                    taken);
        } catch (IOException e) {
            throw new LapwrightException("bench", "no server can be started: " + e.getMessage(), NONE, e);
        }
        guard = new Guard(server.getAddress().getPort());
        threads = new ThreadPoolExecutor(
                0,
                MOST_THREADS,
                30,
                TimeUnit.SECONDS,
                new SynchronousQueue<>(),
                task -> daemon(task, "bench"),
                // Never answered: the server ends its connection after some seconds.
                new ThreadPoolExecutor.DiscardPolicy());
        server.setExecutor(threads);
        server.createContext("/", this::handle);
        clock = daemon(this::tick, "bench clock");
        clock.start();
        server.start();
        threads.execute(this::prepare);
    }

    /** Lays out the first sheet and drives its lap while the browser is still opening. */
    private void prepare() {
        try {
            Sheet sheet = sheets.of(first, (steps, difference) -> {});
            sheet.tree();
            new LapAnswer(first, sheet).tree();
        } catch (LapwrightException none) {
            // The page asks for the same, and is told why there is none.
        }
    }

    private static Thread daemon(Runnable task, String name) {
        Thread thread = new Thread(task, name);
        thread.setDaemon(true);
        return thread;
    }

    /** Counts seconds, and looks now and then whether documents were edited. */
    private void tick() {
        try {
            for (long ticks = 1; !ended; ticks++) {
                Thread.sleep(1000);
                windows.tick();
                if (ticks % TICKS_PER_LOOK == 0) {
                    news = sheets.catalogue().news();
                }
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Address of the page, with its secret. */
    String address() {
        return "http://127.0.0.1:" + server.getAddress().getPort() + "/" + guard.secret() + "/";
    }

    Windows windows() {
        return windows;
    }

    @Override
    public void close() {
        ended = true;
        server.stop(0);
        threads.shutdownNow();
        clock.interrupt();
    }

    /**
     * Answers.
     *
     * @throws IOException if who asked has gone: the server is to know, or Java 17 counts the connection as open for ever
     */
    private void handle(HttpExchange exchange) throws IOException {
        try (exchange) {
            headers(exchange.getResponseHeaders(), POLICY);
            try {
                String asked = guard.admitted(exchange);
                windows.heard();
                if (exchange.getRequestMethod().equals("GET")) {
                    get(exchange, asked);
                } else {
                    post(exchange, asked, Guard.body(exchange, most(asked)));
                }
            } catch (Refusal refusal) {
                refuse(exchange, refusal.status(), refusal.getMessage());
            } catch (LapwrightException fault) {
                refuse(exchange, 400, ReportBlocks.told(fault.getMessage()));
            } catch (RuntimeException fault) {
                refuse(exchange, 500, "a fault of Lapwright: " + fault);
            }
        }
    }

    /** Bytes that a question may have. */
    private static int most(String asked) {
        return switch (asked) {
            case "circuit" -> Guard.MOST_FILE_BYTES;
            case "log" -> Guard.MOST_LOG_BYTES;
            default -> Guard.MOST_BYTES;
        };
    }

    private static void headers(Headers headers, String policy) {
        headers.set("Content-Security-Policy", policy);
        headers.set("X-Content-Type-Options", "nosniff");
        headers.set("Referrer-Policy", "no-referrer");
        headers.set("Cross-Origin-Resource-Policy", "same-origin");
        headers.set("Cross-Origin-Opener-Policy", "same-origin");
        headers.set("Cache-Control", "no-store");
    }

    private static void refuse(HttpExchange exchange, int status, String reason) throws IOException {
        send(exchange, status, "application/json; charset=utf-8", Wire.text(Map.of("what", reason)));
    }

    private static void send(HttpExchange exchange, int status, String type, String text) throws IOException {
        send(exchange, status, type, text.getBytes(StandardCharsets.UTF_8));
    }

    private static void send(HttpExchange exchange, int status, String type, byte[] bytes) throws IOException {
        exchange.getResponseHeaders().set("Content-Type", type);
        if (bytes.length == 0 || exchange.getRequestMethod().equals("HEAD")) {
            exchange.sendResponseHeaders(status, -1);
            return;
        }
        exchange.sendResponseHeaders(status, bytes.length);
        try (OutputStream out = exchange.getResponseBody()) {
            out.write(bytes);
        }
    }

    private static void json(HttpExchange exchange, Map<String, ?> message) throws IOException {
        send(exchange, 200, "application/json; charset=utf-8", Wire.text(message));
    }

    // --- What the page is made of ---------------------------------------------------------------------------------

    private void get(HttpExchange exchange, String asked) throws IOException {
        switch (asked) {
            case "start" -> json(exchange, start());
            case "presence" -> presence(exchange);
            default -> {
                byte[] page = made.get(asked);
                byte[] file = page == null ? files.bytes(asked) : page;
                if (file == null) {
                    throw new Refusal(404, "there is nothing here");
                }
                if (page != null) {
                    headers(exchange.getResponseHeaders(), BRIEF_POLICY);
                }
                send(exchange, 200, PageFiles.type(asked), file);
            }
        }
    }

    private Map<String, Object> start() {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "start");
        tree.put("version", VersionText.version());
        tree.put("folder", saved.folder().toString());
        tree.put("mostPins", Question.MOST_PINS);
        tree.put("views", ViewAnswer.VIEWS);
        tree.putAll(sheets.catalogue().tree());
        tree.put("questions", CarOfTen.questions());
        tree.put("imperial", ShownMessage.drawn(UnitSystem.IMPERIAL));
        notebook.ifPresent(event -> tree.put("notebook", event.tree()));
        tree.put("state", first.tree());
        return tree;
    }

    /** Tells a window what there is to know, and knows by it that the window is open. */
    private void presence(HttpExchange exchange) throws IOException {
        if (windows.open() >= MOST_WINDOWS) {
            throw new Refusal(503, "there are " + MOST_WINDOWS + " windows open already");
        }
        exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
        exchange.sendResponseHeaders(200, 0);
        windows.opened();
        try (OutputStream out = exchange.getResponseBody()) {
            event(out, "retry: 1000\n\n");
            List<String> said = List.of();
            for (int tick = 0; !ended; tick++) {
                List<String> latest = news;
                if (!latest.equals(said)) {
                    said = latest;
                    event(out, "event: news\ndata: " + Wire.text(Map.of("edited", latest)) + "\n\n");
                } else if (tick % TICKS_PER_SIGN == 0) {
                    event(out, ":\n\n");
                }
                Thread.sleep(1000);
            }
            event(out, "event: bye\ndata: {}\n\n");
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        } finally {
            windows.closed();
        }
    }

    private static void event(OutputStream out, String text) throws IOException {
        out.write(text.getBytes(StandardCharsets.UTF_8));
        out.flush();
    }

    // --- What the page asks ---------------------------------------------------------------------------------------

    private void post(HttpExchange exchange, String asked, String body) throws IOException {
        Fields fields = Fields.of("state", body);
        switch (asked) {
            case "sheet" -> sheet(exchange, Question.of(fields));
            case "lap" -> lap(exchange, fields);
            case "study", "log" -> study(exchange, fields);
            case "circuit" -> circuit(exchange, fields);
            case "car" -> car(exchange, fields);
            case "save" -> save(exchange, fields);
            case "again" -> {
                sheets.catalogue().again();
                news = sheets.catalogue().news();
                json(exchange, start());
            }
            default -> throw new Refusal(404, "there is nothing here");
        }
    }

    private static Map<String, Object> fault(LapwrightException fault) {
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "fault");
        tree.put("what", ReportBlocks.told(fault.getMessage()));
        tree.put("place", fault.place());
        return tree;
    }

    private void sheet(HttpExchange exchange, Question question) throws IOException {
        try (AnswerStream stream = new AnswerStream(exchange, question.units())) {
            try {
                StudyRun how = StudyRun.onThreads(1).stoppedWhen(stream::isBroken);
                Telling telling = new Telling(stream);
                stream.tell(sheets.of(question, (steps, difference) -> {
                            telling.report(steps, 0);
                            how.stopIfWanted();
                        })
                        .tree());
            } catch (LapwrightException none) {
                stream.tell(fault(none));
            }
        }
    }

    /** Tells progress, not too often. */
    private static final class Telling implements Progress {
        private final AnswerStream stream;
        private long toldAt = System.nanoTime() - PROGRESS_NS;

        Telling(AnswerStream stream) {
            this.stream = stream;
        }

        @Override
        public void report(int done, int total) {
            long now = System.nanoTime();
            if (now - toldAt >= PROGRESS_NS) {
                toldAt = now;
                stream.tell(Map.of("type", "progress", "done", done, "total", total));
            }
        }
    }

    private void lap(HttpExchange exchange, Fields fields) throws IOException {
        String window = fields.text("window", NONE);
        long number = (long) fields.number("number", 0, 0, 1e15);
        Question question = Question.of(fields);
        windows.ask(window, number);
        try (AnswerStream stream = new AnswerStream(exchange, question.units())) {
            BooleanSupplier stop = () -> stream.isBroken() || windows.isOutOfDate(window, number);
            try {
                LapAnswer answer = null;
                Sheet sheet = sheets.of(question, (steps, difference) -> {});
                acquire(laps, stream, stop);
                try {
                    answer = new LapAnswer(question, sheet);
                    stream.tell(answer.tree());
                } finally {
                    laps.release();
                }
                pause(stop);
                acquire(slow, stream, stop);
                try {
                    rest(
                            stream,
                            question,
                            sheet,
                            answer,
                            StudyRun.onThreads(cores).stoppedWhen(stop));
                } finally {
                    slow.release();
                }
            } catch (StudyStoppedException stopped) {
                stream.tell(Map.of("type", "stopped"));
            } catch (LapwrightException none) {
                stream.tell(fault(none));
            }
        }
    }

    /**
     * Tells what takes longer, from this thread alone: a study that is stopped interrupts its own threads, and one that was writing
     * would take the connection along.
     */
    private static void rest(AnswerStream stream, Question question, Sheet sheet, LapAnswer answer, StudyRun how) {
        BlockingQueue<Map<String, Object>> found = new LinkedBlockingQueue<>();
        Thread study = daemon(
                () -> {
                    try {
                        new ViewAnswer(question, sheet, answer)
                                .tree(question.view(), how)
                                .ifPresent(found::add);
                        List<Landscape> landscapes = new LandscapeAnswer(question, sheet, answer).tell(how, found::add);
                        found.add(Map.of("type", "landscapes"));
                        new DoubtAnswer(question, sheet, answer).tell(how, landscapes, found::add);
                        found.add(Map.of("type", "end"));
                    } catch (StudyStoppedException stopped) {
                        found.add(Map.of("type", "stopped"));
                    } catch (LapwrightException none) {
                        found.add(fault(none));
                    } catch (RuntimeException fault) {
                        found.add(Map.of("type", "fault", "what", "a fault of Lapwright: " + fault));
                    }
                },
                "bench study");
        study.start();
        try {
            Map<String, Object> message;
            do {
                message = found.take();
                stream.tell(message);
            } while (!LAST.contains(message.get("type")));
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Leaves the browser room to draw the lap, and a hand that turns on time to ask the next. */
    private static void pause(BooleanSupplier stop) {
        StudyRun how = StudyRun.onThreads(1).stoppedWhen(stop);
        try {
            for (int waited = 0; waited < DRAWING_MS; waited += DRAWING_MS / 4) {
                how.stopIfWanted();
                Thread.sleep(DRAWING_MS / 4);
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /**
     * Waits for its turn, unless nobody waits for it any more: signs of life tell of those who went, or they would take all threads.
     */
    private static void acquire(Semaphore turn, AnswerStream stream, BooleanSupplier stop) {
        StudyRun how = StudyRun.onThreads(1).stoppedWhen(stop);
        try {
            how.stopIfWanted();
            for (int tries = 1; !turn.tryAcquire(20, TimeUnit.MILLISECONDS); tries++) {
                if (tries % TRIES_PER_SIGN == 0) {
                    stream.sign();
                }
                how.stopIfWanted();
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            StudyRun.onThreads(1).stoppedWhen(() -> true).stopIfWanted();
        }
    }

    private void study(HttpExchange exchange, Fields fields) throws IOException {
        String kind = fields.text("study", NONE);
        String complaint = fields.text("complaint", NONE);
        String name = fields.text("name", NONE);
        Question question = Question.of(fields);
        if (!BackgroundStudy.KINDS.contains(kind)) {
            throw new Refusal(400, "there is no study of that name");
        }
        if (kind.equals("brief") || kind.equals("card")) {
            saved.file(name, ".html");
        }
        try (AnswerStream stream = new AnswerStream(exchange, question.units())) {
            BooleanSupplier stop = stream::isBroken;
            // One core is left for the laps.
            StudyRun how = StudyRun.onThreads(Math.max(1, cores - 1)).stoppedWhen(stop);
            try {
                acquire(studies, stream, stop);
                try {
                    BackgroundStudy study = new BackgroundStudy(question, sheets, how, new Telling(stream));
                    stream.tell(
                            switch (kind) {
                                case "brief" -> brief(study.brief(), name, question.units());
                                case "card" -> brief(study.brief(event()), name, question.units());
                                case "notebook" ->
                                    event().shown(question, sheets.of(question, study.steps()), study.how());
                                case "begin" -> begun(question, name);
                                case "draft" ->
                                    CarOfTen.drafted(fields.object("answers"), name, saved, sheets.catalogue());
                                case "run", "log" -> noted(fields, question, how.reporting(new Telling(stream)));
                                default -> study.run(kind, complaint);
                            });
                } finally {
                    studies.release();
                }
            } catch (StudyStoppedException stopped) {
                stream.tell(Map.of("type", "stopped"));
            } catch (LapwrightException none) {
                stream.tell(fault(none));
            }
        }
    }

    /** A circuit that is being made: shown, or kept. */
    private void circuit(HttpExchange exchange, Fields fields) throws IOException {
        String carName = fields.text("car", NONE);
        Car car = sheets.catalogue().car(carName);
        boolean keep = fields.text("do", NONE).equals("keep");
        try (AnswerStream stream = new AnswerStream(exchange, Question.units(fields))) {
            try {
                acquire(studies, stream, stream::isBroken);
                try {
                    RoadDraft draft = new RoadDraft(fields.object("draft"));
                    stream.tell(
                            keep
                                    ? draft.kept(saved, sheets.catalogue())
                                    : draft.tree(car, sheets.catalogue().title("car", carName)));
                } finally {
                    studies.release();
                }
            } catch (LapwrightException none) {
                Map<String, Object> told = fault(none);
                told.computeIfPresent("what", (key, text) -> RoadWords.on(text.toString()));
                stream.tell(told);
            }
        }
    }

    /** The car on the sheet, field by field: shown, tried as it was filled in, or kept. */
    private void car(HttpExchange exchange, Fields fields) throws IOException {
        Question question = Question.of(fields);
        Fields texts = fields.object("fields");
        try (AnswerStream stream = new AnswerStream(exchange, question.units())) {
            try {
                acquire(studies, stream, stream::isBroken);
                try {
                    StudyRun how = StudyRun.onThreads(1).stoppedWhen(stream::isBroken);
                    Question.Stand standard = new Question.Stand(
                            "standard", Map.of(), question.now().day());
                    CarDesk desk = new CarDesk(
                            sheets.of(question, (steps, difference) -> {}).subject(standard));
                    stream.tell(
                            switch (fields.text("do", NONE)) {
                                case "try" -> desk.tried(texts, how);
                                case "keep" -> desk.kept(texts, fields.text("name", NONE), saved, sheets.catalogue());
                                default -> desk.tree(how);
                            });
                } finally {
                    studies.release();
                }
            } catch (StudyStoppedException stopped) {
                stream.tell(Map.of("type", "stopped"));
            } catch (LapwrightException none) {
                stream.tell(fault(none));
            }
        }
    }

    private Notebook event() {
        return notebook.orElseThrow(() -> new InvalidValueException(
                "event",
                "this bench has no notebook",
                "start it inside an event's folder; 'lapwright event new' makes one"));
    }

    private Map<String, Object> noted(Fields fields, Question question, StudyRun how) {
        int number = (int) fields.number("runNumber", 0, 0, 999_999);
        Sheet sheet = sheets.of(question, (steps, difference) -> how.report(steps, 0));
        return fields.has("log")
                ? event().take(
                                new DocumentSource(fields.text("logName", "log.csv"), fields.document("log")),
                                number,
                                question,
                                sheet,
                                how)
                : event().note(fields.object("run"), number, question, sheet, how);
    }

    /** An event's folder among what is kept, with copies of the documents on the sheet, which are laid there in their place. */
    private Map<String, Object> begun(Question question, String name) {
        Catalogue catalogue = sheets.catalogue();
        Subject subject = sheets.of(question, (steps, difference) -> {}).subject(question.now());
        EventFolder folder = EventFolder.create(
                saved.file(name, ""),
                new EventFolder.Beginning(
                        Documents.checkedName("name", name),
                        catalogue.source(DocumentKind.CAR, question.car()),
                        catalogue.source(DocumentKind.CIRCUIT, question.circuit()),
                        question.now().day().isEmpty()
                                ? Optional.empty()
                                : Optional.of(new DocumentSource("day", DocumentWriter.text(subject.day()))),
                        question.now().set().isEmpty()
                                ? Optional.empty()
                                : Optional.of(new DocumentSource(
                                        "setup",
                                        DocumentWriter.text(subject.setup().named("as it began"), subject.bare())))));
        Event event = folder.read();
        String car = folder.path().resolve(event.papers().car()).toString();
        String circuit = folder.path().resolve(event.papers().circuit()).toString();
        catalogue.enterCar(car);
        catalogue.enterCircuit(circuit);
        notebook = Notebook.of(car, circuit);
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "result");
        tree.put("study", "begin");
        tree.put("blocks", List.of());
        tree.put("take", List.of());
        tree.put("saved", folder.path().toString());
        tree.put("notebook", event().tree());
        tree.put(
                "lay",
                Map.of(
                        "car",
                        car,
                        "circuit",
                        circuit,
                        "carTitle",
                        event.car().name(),
                        "circuitTitle",
                        event.track().name()));
        return tree;
    }

    private Map<String, Object> brief(BriefReport brief, String name, UnitSystem units) {
        String page = BackgroundStudy.page(brief, units);
        Path file = saved.save(name, ".html", page);
        String kept = "brief-" + pages.incrementAndGet() + ".html";
        made.put(kept, page.getBytes(StandardCharsets.UTF_8));
        Map<String, Object> tree = new LinkedHashMap<>();
        tree.put("type", "result");
        tree.put("study", "brief");
        tree.put("blocks", ReportBlocks.of(brief.report()));
        tree.put("take", List.of());
        tree.put("saved", file.toString());
        tree.put("page", kept);
        return tree;
    }

    // --- What is kept ---------------------------------------------------------------------------------------------

    private void save(HttpExchange exchange, Fields fields) throws IOException {
        Question question = Question.of(fields);
        String name = fields.text("name", NONE);
        Path file = switch (fields.text("kind", NONE)) {
            case "setup" -> saved.save(name, ".json", setup(question, name));
            case "state" -> saved.save(name, ".json", JsonLayout.text(question.tree()));
            case "page" -> {
                saved.file(name, ".html");
                yield saved.save(
                        name,
                        ".html",
                        FrozenPage.html(
                                files,
                                messages(question).stream()
                                        .<Map<String, ?>>map(message -> ShownMessage.in(question.units(), message))
                                        .toList()));
            }
            default -> throw new InvalidValueException("kind", "that cannot be saved", "take setup, state or page");
        };
        json(exchange, Map.of("saved", file.toString()));
    }

    private String setup(Question question, String name) {
        Sheet sheet = sheets.of(question, (steps, difference) -> {});
        Subject subject = sheet.subject(question.now());
        return DocumentWriter.text(subject.setup().named(name), subject.bare());
    }

    /** What a page that is sent begins with: the documents it shows by their names, and not where they lie on this machine. */
    private Map<String, Object> start(Question question) {
        Map<String, Object> start = start();
        Map<String, Object> state = question.tree();
        for (String kind : List.of("car", "circuit")) {
            String named = (String) state.get(kind);
            Path file = SafeFile.path(named).getFileName();
            String plain = file == null ? named : file.toString();
            state.put(kind, plain);
            start.put(
                    kind + "s",
                    List.of(Map.of("name", plain, "title", sheets.catalogue().title(kind, named))));
        }
        start.put("state", state);
        start.keySet().removeAll(Set.of("notebook", "questions"));
        start.put("folder", NONE);
        return start;
    }

    /** All that the page would be answered about a state. */
    private List<Map<String, Object>> messages(Question question) {
        List<Map<String, Object>> messages = Collections.synchronizedList(new ArrayList<>());
        messages.add(start(question));
        Sheet sheet = sheets.of(question, (steps, difference) -> {});
        messages.add(sheet.tree());
        LapAnswer answer = new LapAnswer(question, sheet);
        messages.add(answer.tree());
        StudyRun how = StudyRun.onThreads(cores);
        ViewAnswer view = new ViewAnswer(question, sheet, answer);
        ViewAnswer.VIEWS.forEach(name -> view.tree(name, how).ifPresent(messages::add));
        List<Landscape> landscapes = new LandscapeAnswer(question, sheet, answer).tell(how, messages::add);
        new DoubtAnswer(question, sheet, answer).tell(how, landscapes, messages::add);
        return messages;
    }
}
