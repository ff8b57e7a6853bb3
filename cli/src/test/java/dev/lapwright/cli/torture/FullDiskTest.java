package dev.lapwright.cli.torture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Child;
import dev.lapwright.torture.Torture;
import dev.lapwright.torture.TortureHook;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import net.jqwik.api.ForAll;
import org.opentest4j.TestAbortedException;

/**
 * Wherever the disk gets full, the command says so and ends with 2, and what stands there is whole. The disk is one in memory of some kilobytes,
 * mounted for that process alone where Linux allows it; elsewhere a file may grow to so many kilobytes only (ulimit), which a
 * program is told in other words. Where there is no such shell it is left out.
 */
class FullDiskTest {
    private static final String SMALL_DISK = """
            size=$1; disk=$2; saved=$3; shift 3
            mount -t tmpfs -o size=${size}k tmpfs "$disk" || exit 99
            cp "$saved/plan.json" "$disk" || exit 98
            "$@"; code=$?
            rm "$disk/plan.json"
            cp -r "$disk/." "$saved" || exit 97
            exit $code
            """;
    private static final String SHORT_FILES = """
            ulimit -f $((2 * $1)); disk=$2; saved=$3; shift 3
            cp "$saved/plan.json" "$disk"
            "$@"; code=$?
            ulimit -f unlimited 2>/dev/null
            rm "$disk/plan.json"
            cp -r "$disk/." "$saved" || exit 97
            exit $code
            """;
    private static final int LEAST_KB = 8;
    private static final int MOST_KB = 300;

    private static boolean isThere(String... words) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(words)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor(1, TimeUnit.MINUTES) && process.exitValue() == 0;
        } catch (IOException none) {
            return false;
        }
    }

    private static boolean mayMount(Path disk) throws InterruptedException {
        return isThere("unshare", "-rm", "mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", disk.toString());
    }

    @Torture(cases = 1, percent = 8)
    void aFullDiskIsSaidAndLeavesNothingHalf(@ForAll long seed) throws Exception {
        if (!isThere("sh", "-c", "ulimit -f 100")) {
            throw new TestAbortedException("there is no shell that bounds how long a file may get");
        }
        Random random = new Random(seed);
        List<Outputs> commands = TortureHook.isShort() ? List.of(Outputs.LAP) : Outputs.ALL;
        Outputs command = commands.get(random.nextInt(commands.size()));
        Path disk = Files.createTempDirectory("torture");
        Path saved = Files.createTempDirectory("torture");
        Path printed = Files.createTempDirectory("torture");
        boolean mounts = mayMount(disk);
        String size = Integer.toString(LEAST_KB + random.nextInt(MOST_KB - LEAST_KB));
        command.in(saved);
        List<String> words = new ArrayList<>(mounts ? List.of("unshare", "-rm") : List.of());
        words.addAll(List.of("sh", "-c", mounts ? SMALL_DISK : SHORT_FILES, "sh", size));
        words.addAll(List.of(disk.toString(), saved.toString()));
        words.addAll(Child.words(List.of(), command.words(disk)));
        Child child = Child.start(Child.builder(words, disk.resolve("cache")), printed);
        int code = child.end();
        String how = command.words() + ", " + size + " kB: " + code + " " + child.err();
        TortureHook.count(code == 0 ? "had room" : mounts ? "met a full disk" : "met the end of a file");
        assertThat(code).as(how).isIn(0, 2);
        if (code == 2) {
            assertThat(child.err())
                    .as(how)
                    .contains("lapwright: ")
                    .contains("room")
                    .doesNotContain("Exception");
        }
        Path cache = saved.resolve("cache");
        if (Files.exists(cache)) {
            Outputs.delete(cache);
        }
        command.assertWhole(saved, how);
        for (Path place : List.of(disk, saved, printed)) {
            Outputs.delete(place);
        }
    }
}
