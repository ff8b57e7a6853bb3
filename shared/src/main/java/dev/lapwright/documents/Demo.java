package dev.lapwright.documents;

/**
 * A demo document.
 *
 * @param kind what it describes
 * @param name by which it is called
 * @param title for people
 * @param description one line
 */
public record Demo(DocumentKind kind, String name, String title, String description) {}
