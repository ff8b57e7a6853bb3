package dev.lapwright.cli.bench;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.TestInstance.Lifecycle;
import org.junit.jupiter.api.io.TempDir;

/** Tests of the page in one browser, each from a page that has just been laid out. */
@Tag("heavy")
@TestInstance(Lifecycle.PER_CLASS)
abstract class InTheBrowser {
    BenchPage page;

    @BeforeAll
    void open(@TempDir Path given) throws IOException, InterruptedException {
        page = new BenchPage(given);
    }

    @AfterAll
    void close() throws IOException {
        if (page != null) {
            page.close();
        }
    }

    @BeforeEach
    void begin() throws IOException, InterruptedException {
        page.begin();
    }
}
