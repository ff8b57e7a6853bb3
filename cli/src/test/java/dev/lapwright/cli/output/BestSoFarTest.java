package dev.lapwright.cli.output;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

class BestSoFarTest {
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @Test
    void theLastThatWasTakenIsSaid() {
        try (BestSoFar best = new BestSoFar(new Console(new ByteArrayOutputStream(), err, false, false))) {
            best.say();
            assertThat(err.toString(StandardCharsets.UTF_8)).isEmpty();
            best.is("first");
            best.is(BestSoFar.words(62.5, "rear-wing 4 deg", true));
            best.say();
        }
        assertThat(err.toString(StandardCharsets.UTF_8))
                .isEqualTo("Best so far: 1:02.500 with rear-wing 4 deg; the same command goes on from here\n");
    }
}
