package dev.lapwright.cache;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.DocumentWriter;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineFinder;
import dev.lapwright.line.LineSearch;
import dev.lapwright.report.JsonLayout;
import dev.lapwright.track.Track;
import dev.lapwright.track.TrackLimit;
import dev.lapwright.track.TrackPoint;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Finder of minimum-time lines that keeps what it found in a folder, for cars and roads of documents. A line that was kept is the line that a
 * search would find, bit for bit: its file is named by a SHA-256 (FIPS 180-4) of all that the search depends on, and of the program. A
 * file that was damaged, and a folder that cannot be read or written, are as if there were none. The files used longest ago go
 * when there are too many. Several processes may share a folder.
 */
public final class LineCache implements LineFinder {
    /** So many lines are kept at most: some 20 kB each, so some 5 MB. */
    public static final int MOST_LINES = 256;

    /** So many are left when there were too many: not one by one, as listing a folder takes time. */
    private static final int LINES_LEFT = 192;

    private static final int MAGIC = 0x4C494E45;
    private static final String ENDING = ".line";
    private static final String DRAFT = ".part";
    private static final int HASH_BYTES = 32;
    /** No road has more nodes: 200 km at half a metre. */
    private static final int MOST_NODES = 400_001;

    private final Path folder;
    private final String program;
    private final LineFinder finder;

    /**
     * @param folder made when it is first needed
     * @param program version of the program and of all else that may change what it finds, as text
     * @param finder who looks for a line that is not there
     */
    public LineCache(Path folder, String program, LineFinder finder) {
        this.folder = folder;
        this.program = program;
        this.finder = finder;
    }

    @Override
    public Line fastest(LineSearch search, Vehicle vehicle) {
        Path file = folder.resolve(key(search, vehicle) + ENDING);
        Optional<Line> kept = kept(file, search);
        if (kept.isPresent()) {
            return kept.get();
        }
        Line found = finder.fastest(search, vehicle);
        write(file, found.offsets());
        return found;
    }

    private static Optional<Line> kept(Path file, LineSearch search) {
        double[] distances = search.nodes();
        return read(file)
                .filter(offsets -> offsets.length == distances.length)
                .map(offsets -> search.at(distances, offsets));
    }

    private String key(LineSearch search, Vehicle vehicle) {
        MessageDigest digest = sha256();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(1 << 16);
        try (DataOutputStream to = new DataOutputStream(bytes)) {
            text(to, program);
            road(to, search.road());
            to.writeDouble(search.choices().marginLeft());
            to.writeDouble(search.choices().marginRight());
            to.writeDouble(search.choices().spacing());
            numbers(to, search.start().orElse(new double[0]));
            to.writeBoolean(search.isRough());
            car(to, vehicle.car());
            day(to, vehicle.conditions());
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory take all", e);
        }
        return HexFormat.of().formatHex(digest.digest(bytes.toByteArray()));
    }

    private static void road(DataOutputStream to, Track road) throws IOException {
        to.writeBoolean(road.isClosed());
        to.writeDouble(road.entrySpeed());
        to.writeDouble(road.startHeading());
        to.writeDouble(road.startAltitude());
        to.writeInt(road.points().size());
        for (TrackPoint p : road.points()) {
            to.writeDouble(p.s());
            to.writeDouble(p.curvature());
            to.writeDouble(p.slope());
            to.writeDouble(p.bank());
            to.writeDouble(p.verticalCurvature());
            to.writeDouble(p.grip());
            to.writeDouble(p.widthLeft());
            to.writeDouble(p.widthRight());
            to.writeDouble(p.speedLimit());
        }
        to.writeInt(road.limits().size());
        for (TrackLimit limit : road.limits()) {
            to.writeDouble(limit.from());
            to.writeDouble(limit.to());
            to.writeDouble(limit.beyondLeft().orElse(Double.NaN));
            to.writeDouble(limit.beyondRight().orElse(Double.NaN));
        }
    }

    /** Its document holds everything, but in the units of people, which may round away the last digit of the model's own numbers. */
    private static void car(DataOutputStream to, Car car) throws IOException {
        text(to, JsonLayout.text(DocumentWriter.tree(car)));
        text(to, car.settings().toString());
        for (Quantity quantity : Quantity.values()) {
            to.writeDouble(car.value(quantity));
        }
    }

    private static void day(DataOutputStream to, Conditions day) throws IOException {
        to.writeDouble(day.airTempC());
        to.writeDouble(day.airPressureHpa());
        to.writeDouble(day.humidityPercent());
        to.writeDouble(day.windSpeedMps());
        to.writeDouble(day.windFromDeg());
        to.writeDouble(day.grip());
    }

    private static void text(DataOutputStream to, String text) throws IOException {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        to.writeInt(bytes.length);
        to.write(bytes);
    }

    private static void numbers(DataOutputStream to, double[] values) throws IOException {
        to.writeInt(values.length);
        for (double value : values) {
            to.writeDouble(value);
        }
    }

    private static Optional<double[]> read(Path file) {
        try {
            if (!Files.isRegularFile(file)) {
                return Optional.empty();
            }
            Optional<double[]> offsets = offsets(ByteBuffer.wrap(Files.readAllBytes(file)));
            if (offsets.isPresent()) {
                used(file);
            }
            return offsets;
        } catch (IOException | BufferUnderflowException | SecurityException e) {
            return Optional.empty();
        }
    }

    private static Optional<double[]> offsets(ByteBuffer bytes) {
        byte[] hash = new byte[HASH_BYTES];
        int magic = bytes.getInt();
        bytes.get(hash);
        byte[] content = new byte[bytes.remaining()];
        bytes.get(content);
        if (magic != MAGIC || !Arrays.equals(hash, sha256().digest(content))) {
            return Optional.empty();
        }
        ByteBuffer numbers = ByteBuffer.wrap(content);
        int count = numbers.getInt();
        if (count < 2 || count > MOST_NODES || numbers.remaining() != count * Double.BYTES) {
            return Optional.empty();
        }
        double[] offsets = new double[count];
        numbers.asDoubleBuffer().get(offsets);
        return Optional.of(offsets);
    }

    /** The time of its last use decides which goes first; that it cannot be noted costs nothing but that. */
    private static void used(Path file) {
        try {
            Files.setLastModifiedTime(file, FileTime.from(Instant.now()));
        } catch (IOException e) {
            // As above.
        }
    }

    private void write(Path file, double[] offsets) {
        ByteBuffer content = ByteBuffer.allocate(Integer.BYTES + offsets.length * Double.BYTES);
        content.putInt(offsets.length);
        content.asDoubleBuffer().put(offsets);
        ByteBuffer whole = ByteBuffer.allocate(Integer.BYTES + HASH_BYTES + content.capacity());
        whole.putInt(MAGIC).put(sha256().digest(content.array())).put(content.array());
        Path draft = null;
        try {
            Files.createDirectories(folder);
            draft = Files.createTempFile(folder, "found", DRAFT);
            Files.write(draft, whole.array());
            move(draft, file);
            bound();
        } catch (IOException | SecurityException e) {
            // What cannot be kept is found again.
            delete(draft);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Drafts that a stopped process left behind are counted and go like the rest. */
    private void bound() throws IOException {
        List<Path> files = new ArrayList<>();
        try (Stream<Path> all = Files.list(folder)) {
            all.filter(file ->
                            file.toString().endsWith(ENDING) || file.toString().endsWith(DRAFT))
                    .forEach(files::add);
        }
        if (files.size() <= MOST_LINES) {
            return;
        }
        List<Aged> aged =
                files.stream().map(LineCache::aged).sorted(Aged.OLDEST_FIRST).toList();
        aged.subList(0, aged.size() - LINES_LEFT).forEach(old -> delete(old.file()));
    }

    private record Aged(Path file, FileTime time) {
        static final Comparator<Aged> OLDEST_FIRST = Comparator.comparing(Aged::time);
    }

    private static Aged aged(Path file) {
        try {
            return new Aged(file, Files.getLastModifiedTime(file));
        } catch (IOException e) {
            // Another process took it away meanwhile.
            return new Aged(file, FileTime.fromMillis(0));
        }
    }

    private static void delete(Path file) {
        try {
            if (file != null) {
                Files.deleteIfExists(file);
            }
        } catch (IOException | SecurityException e) {
            // It stays, and is looked at again when there are too many.
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
