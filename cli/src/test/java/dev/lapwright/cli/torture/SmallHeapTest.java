package dev.lapwright.cli.torture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Child;
import dev.lapwright.torture.Torture;
import dev.lapwright.torture.TortureHook;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Tag;

/** Whenever memory runs out, the command says so in a line and ends with 2, and what stands on the disk is whole. */
class SmallHeapTest {
    private static final int LEAST_MB = 6;
    private static final int MOST_MB = 60;

    @Torture(cases = 1, percent = 8)
    @Tag("long")
    void memoryThatRunsOutIsSaidAndLeavesNothingHalf(@ForAll long seed) throws Exception {
        Random random = new Random(seed);
        Outputs command = Outputs.ALL.get(random.nextInt(Outputs.ALL.size()));
        Path place = Files.createTempDirectory("torture");
        Path printed = Files.createTempDirectory("torture");
        String heap = "-Xmx" + (LEAST_MB + random.nextInt(MOST_MB - LEAST_MB)) + "m";
        List<String> words = Child.words(List.of(heap), command.in(place));
        Child child = Child.start(Child.builder(words, printed.resolve("cache")), printed);
        int code = child.end();
        String how = command.words() + ", " + heap + ": " + code + " " + child.err();
        TortureHook.count(code == 0 ? "had room" : "ran out of memory");
        assertThat(code).as(how).isIn(0, 2);
        if (code == 2) {
            assertThat(child.err()).as(how).contains("lapwright: memory: ").doesNotContain("\tat ");
        }
        command.assertWhole(place, how);
        Outputs.delete(place);
        Outputs.delete(printed);
    }
}
