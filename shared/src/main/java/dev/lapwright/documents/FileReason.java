package dev.lapwright.documents;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** Says in words why a file could not be read or written. */
final class FileReason {
    private FileReason() {}

    static String of(IOException e) {
        if (e instanceof AccessDeniedException) {
            return "you have no permission";
        }
        if (e instanceof NoSuchFileException) {
            return "there is no such file or folder";
        }
        // The message of a file system exception repeats the file's name; its reason does not.
        String reason = e instanceof FileSystemException f ? f.getReason() : e.getMessage();
        return reason == null || reason.isBlank() ? e.getClass().getSimpleName() : reason;
    }
}
