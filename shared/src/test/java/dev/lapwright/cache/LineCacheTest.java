package dev.lapwright.cache;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.documents.Documents;
import dev.lapwright.documents.TestDocuments;
import dev.lapwright.lap.Vehicle;
import dev.lapwright.line.Line;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineFinder;
import dev.lapwright.line.LineSearch;
import dev.lapwright.track.Segment;
import dev.lapwright.track.SegmentPath;
import dev.lapwright.track.Track;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A line that was kept is the line that would be found. */
class LineCacheTest {
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));
    private static final Conditions DAY = Conditions.STANDARD;

    @TempDir
    Path folder;

    private final AtomicInteger searches = new AtomicInteger();

    private LineCache cache(String program) {
        return new LineCache(folder.resolve("lines"), program, (search, vehicle) -> {
            searches.incrementAndGet();
            return LineFinder.SEARCH.fastest(search, vehicle);
        });
    }

    private static Track road(double radius) {
        return new SegmentPath(
                        List.of(
                                Segment.straight(60).wide(5, 5),
                                Segment.arc(50, radius).wide(5, 5),
                                Segment.straight(60).wide(5, 5)),
                        false,
                        1)
                .openTrack("bend", 20);
    }

    private static LineSearch search(Track road) {
        return LineSearch.of(road, CAR, LineChoices.DEFAULT);
    }

    private Line find(LineSearch search, Car car, Conditions day) {
        return cache("1").fastest(search, Vehicle.of(car, day));
    }

    private static boolean same(Line one, Line other) {
        return Arrays.equals(one.offsets(), other.offsets())
                && one.driven().points().equals(other.driven().points())
                && one.moved() == other.moved();
    }

    private Path onlyFile() throws IOException {
        try (Stream<Path> files = Files.list(folder.resolve("lines"))) {
            List<Path> all = files.toList();
            assertThat(all).hasSize(1);
            return all.get(0);
        }
    }

    @Test
    void theSecondTimeItIsTheSameLineBitForBitWithoutASearch() {
        Line found = find(search(road(40)), CAR, DAY);
        Line kept = find(search(road(40)), CAR, DAY);
        assertThat(searches).hasValue(1);
        assertThat(same(kept, found)).isTrue();
        assertThat(same(kept, search(road(40)).fastest(Vehicle.of(CAR, DAY)))).isTrue();
    }

    /** Whatever the search depends on makes it another line, the last digit of a number included. */
    @Test
    void anythingElseIsLookedForAnew() {
        LineSearch usual = search(road(40));
        find(usual, CAR, DAY);
        find(search(road(Math.nextUp(40))), CAR, DAY);
        find(LineSearch.of(road(40), CAR, LineChoices.DEFAULT.withMargin(0.3)), CAR, DAY);
        find(LineSearch.of(road(40), CAR, new LineChoices(0.25, 3)), CAR, DAY);
        find(usual, CAR.with("chassis.massKg", Math.nextUp(CAR.value("chassis.massKg"))), DAY);
        find(usual, CAR, DAY.with("conditions.airTempC", 16));
        find(usual.from(usual.middle()), CAR, DAY);
        cache("2").fastest(usual, Vehicle.of(CAR, DAY));
        assertThat(searches).hasValue(8);
    }

    @Test
    void aDamagedFileIsAsIfThereWereNone() throws IOException {
        Line found = find(search(road(40)), CAR, DAY);
        byte[] whole = Files.readAllBytes(onlyFile());
        byte[] flipped = whole.clone();
        flipped[whole.length / 2] ^= 1;
        List<byte[]> damaged = List.of(
                new byte[0],
                Arrays.copyOf(whole, 7),
                Arrays.copyOf(whole, whole.length - 8),
                flipped,
                new byte[whole.length]);
        for (byte[] bytes : damaged) {
            int before = searches.get();
            Files.write(onlyFile(), bytes);
            assertThat(same(find(search(road(40)), CAR, DAY), found)).isTrue();
            assertThat(searches).hasValue(before + 1);
            assertThat(Files.readAllBytes(onlyFile())).isEqualTo(whole);
        }
    }

    @Test
    void aFolderThatCannotBeMadeIsNoError() throws IOException {
        Files.writeString(folder.resolve("lines"), "a file in its place");
        find(search(road(40)), CAR, DAY);
        find(search(road(40)), CAR, DAY);
        assertThat(searches).hasValue(2);
        assertThat(folder.resolve("lines")).hasContent("a file in its place");
    }

    @Test
    void onlySoManyAreKeptAndTheLatestIsAmongThem() throws IOException {
        LineCache quick = new LineCache(folder, "1", (search, vehicle) -> {
            searches.incrementAndGet();
            return search.middle();
        });
        Track road = road(40);
        Vehicle vehicle = Vehicle.of(CAR, DAY);
        int count = LineCache.MOST_LINES + 20;
        for (int i = 0; i < count; i++) {
            quick.fastest(LineSearch.of(road, CAR, new LineChoices(0.2 + 1e-4 * i, 5)), vehicle);
        }
        try (Stream<Path> files = Files.list(folder)) {
            assertThat(files.count()).isBetween(100L, (long) LineCache.MOST_LINES);
        }
        quick.fastest(LineSearch.of(road, CAR, new LineChoices(0.2 + 1e-4 * (count - 1), 5)), vehicle);
        assertThat(searches).hasValue(count);
    }
}
