package dev.lapwright.documents;

/**
 * A demo lap log.
 *
 * @param fileName by which it is called
 * @param title for people
 * @param description one line
 */
public record DemoLog(String fileName, String title, String description) {}
