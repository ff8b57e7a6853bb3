package dev.lapwright.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/**
 * Text of a document and where it came from.
 *
 * @param name of the file, or whatever tells the user which document it is; begins each message about it
 * @param text JSON
 */
public record DocumentSource(String name, String text) {
    /** Documents longer than this are refused, bytes: no car or circuit comes near it. */
    public static final int MAX_BYTES = 20_000_000;

    private static final char BYTE_ORDER_MARK = '\uFEFF';

    /**
     * Reads a file as UTF-8, with or without byte order mark.
     *
     * @throws DocumentException if it does not exist, is a folder, cannot be read, is empty, too long or not UTF-8
     */
    public static DocumentSource ofFile(Path file) {
        String name = file.toString();
        if (Files.isDirectory(file)) {
            throw new DocumentException(name, "this is a folder, not a file", "name a file inside it");
        }
        byte[] bytes;
        try (InputStream in = Files.newInputStream(file)) {
            bytes = in.readNBytes(MAX_BYTES + 1);
        } catch (NoSuchFileException e) {
            throw new DocumentException(name, "there is no such file", "check its name and the folder you are in");
        } catch (AccessDeniedException e) {
            throw new DocumentException(name, "you may not read this file", "change its permissions or copy it");
        } catch (IOException e) {
            throw new DocumentException(
                    name, "the file cannot be read: " + SafeFile.reason(e), "check the disk it is on");
        }
        return ofBytes(name, bytes);
    }

    static DocumentSource ofBytes(String name, byte[] bytes) {
        if (bytes.length > MAX_BYTES) {
            throw new DocumentException(
                    name,
                    "the file is longer than " + MAX_BYTES / 1_000_000 + " MB",
                    "check that it is a document for Lapwright");
        }
        String text = decode(name, bytes);
        if (!text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK) {
            text = text.substring(1);
        }
        return new DocumentSource(name, text);
    }

    private static String decode(String name, byte[] bytes) {
        CharsetDecoder decoder = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT);
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length + 1);
        CoderResult result = decoder.decode(in, out, true);
        if (result.isError()) {
            int line = 1;
            for (int i = 0; i < in.position(); i++) {
                line += bytes[i] == '\n' ? 1 : 0;
            }
            throw new DocumentException(
                    name, "line " + line + " holds bytes that are not UTF-8 text", "save the file as UTF-8");
        }
        return out.flip().toString();
    }
}
