package dev.lapwright.documents;

/**
 * A demo survey, to be imported as a circuit.
 *
 * @param fileName by which it is called
 * @param title for people
 * @param description one line
 */
public record DemoSurvey(String fileName, String title, String description) {}
