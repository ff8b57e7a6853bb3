package dev.lapwright.cli.torture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.cli.Child;
import dev.lapwright.torture.Torture;
import dev.lapwright.torture.TortureHook;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import net.jqwik.api.ForAll;
import org.opentest4j.TestAbortedException;

/** Whenever a process is told to end, it ends with the code that is usual for that, and leaves no file half written. */
class SignalsTest {
    private static final int INTERRUPT = 2;
    private static final int TERMINATE = 15;
    /** A program that a signal ends says so by that much more (POSIX, XCU 2.8.2, from memory). */
    private static final int BY_SIGNAL = 128;
    /** Of a process on a quiet machine, roughly; one on a busy one is met earlier on its way. */
    private static final int LIFE_MS = 2000;

    @Torture(cases = 1, percent = 12)
    void aProcessToldToEndLeavesNothingHalf(@ForAll long seed) throws Exception {
        if (!Files.isDirectory(Path.of("/proc/self"))) {
            throw new TestAbortedException("signals are sent by name, and looked for in /proc");
        }
        Random random = new Random(seed);
        List<Outputs> commands = TortureHook.isShort() ? List.of(Outputs.PLAN) : Outputs.ALL;
        Outputs command = commands.get(random.nextInt(commands.size()));
        Path place = Files.createTempDirectory("torture");
        Path printed = Files.createTempDirectory("torture");
        Child child = Child.start(
                Child.builder(Child.words(List.of(), command.in(place)), printed.resolve("cache")), printed);
        int signal = random.nextBoolean() && child.heeds(INTERRUPT) ? INTERRUPT : TERMINATE;
        TimeUnit.MILLISECONDS.sleep(random.nextInt(LIFE_MS));
        child.signal(Integer.toString(signal));
        int code = child.end();
        String how = command.words() + ", signal " + signal + ": " + code + " " + child.err();
        TortureHook.count(code == 0 ? "done before" : "ended by a signal");
        assertThat(code).as(how).isIn(0, BY_SIGNAL + signal);
        if (code != 0) {
            assertThat(child.err()).as(how).doesNotContain("Exception", "fault");
        } else {
            assertThat(Outputs.found(place).keySet())
                    .as(how)
                    .isEqualTo(command.whole().keySet());
        }
        command.assertWhole(place, how);
        Outputs.delete(place);
        Outputs.delete(printed);
    }
}
