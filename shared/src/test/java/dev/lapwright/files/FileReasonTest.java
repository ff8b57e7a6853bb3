package dev.lapwright.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import org.junit.jupiter.api.Test;

class FileReasonTest {
    @Test
    void saysInWordsWhatTheSystemMeans() {
        assertThat(SafeFile.reason(new AccessDeniedException("a"))).isEqualTo("you have no permission");
        assertThat(SafeFile.reason(new NoSuchFileException("a"))).isEqualTo("there is no such file or folder");
    }

    @Test
    void leavesOutTheFilesNameWhichTheMessageHasAlready() {
        assertThat(SafeFile.reason(new FileSystemException("a", null, "Read-only file system")))
                .isEqualTo("Read-only file system");
    }

    @Test
    void neverSaysNothing() {
        assertThat(SafeFile.reason(new IOException())).isEqualTo("IOException");
    }
}
