package dev.lapwright.documents;

import dev.lapwright.car.Car;
import dev.lapwright.car.Conditions;
import dev.lapwright.car.Setup;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.fault.PlainText;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.text.ClassPathText;
import dev.lapwright.track.Track;
import java.nio.file.Path;
import java.util.List;

/**
 * Entrance to all documents: found, read and checked. A document is named by its file or by the name of a demo; a file comes
 * first.
 *
 * <p>A document with faults gives a {@link DocumentException} that holds all of them.
 *
 * <p>The rules are those of the JSON Schemas (draft 2020-12) shipped beside this class, but they are applied by a
 * reader of our own, whose messages name lines, units and remedies, and which starts faster: in a fresh Java 17 (serial
 * collector, first compiler tier) reading and checking a car takes 36 ms of processor time with class-data sharing and
 * 105 ms without; checking the same car by the schema with a general validator (json-schema-validator 2.0.8) takes
 * another 111 ms and 314 ms (medians of 7 and 5 runs). Tests hold reader and schemas to the same verdicts.
 */
public final class Documents {
    private Documents() {}

    /** The car of a file or a demo name. */
    public static Car car(String nameOrFile) {
        return car(find(DocumentKind.CAR, nameOrFile));
    }

    /** The car a document describes. */
    public static Car car(DocumentSource source) {
        return CarReader.read(source);
    }

    /**
     * The setup of a file or a demo name.
     *
     * @param car it is for; its settings must fit it
     */
    public static Setup setup(String nameOrFile, Car car) {
        return setup(find(DocumentKind.SETUP, nameOrFile), car);
    }

    /** The setup a document describes, for a car. */
    public static Setup setup(DocumentSource source, Car car) {
        return SetupReader.read(source, car);
    }

    /** The circuit or open run of a file or a demo name. */
    public static Track circuit(String nameOrFile) {
        return circuit(find(DocumentKind.CIRCUIT, nameOrFile));
    }

    /** The circuit or open run a document describes. */
    public static Track circuit(DocumentSource source) {
        return CircuitReader.read(source);
    }

    /** The conditions of a file or a demo name. */
    public static Conditions conditions(String nameOrFile) {
        return conditions(find(DocumentKind.CONDITIONS, nameOrFile));
    }

    /** The conditions a document describes. */
    public static Conditions conditions(DocumentSource source) {
        return ConditionsReader.read(source);
    }

    /** The plan of many laps that a file describes. */
    public static PlanDocument plan(Path file) {
        return PlanReader.read(DocumentSource.ofFile(file));
    }

    /** The line of a file. */
    public static StoredLine line(String file) {
        return line(find(DocumentKind.LINE, file));
    }

    /** The line a document describes; {@link StoredLine#on} lays it on its road. */
    public static StoredLine line(DocumentSource source) {
        return LineReader.read(source);
    }

    /**
     * The text of a document, unchecked: an existing file, or else the demo of that name.
     *
     * @throws DocumentException if there is neither, with the nearest name
     */
    public static DocumentSource find(DocumentKind kind, String nameOrFile) {
        return new DocumentFinder(Demos.load()).find(kind, nameOrFile);
    }

    /**
     * What kind a document is, by its mark alone; the rest is not looked at.
     *
     * @throws DocumentException if it is not JSON or has no mark known here
     */
    public static DocumentKind kindOf(DocumentSource source) {
        return DocumentHeader.kindOf(source);
    }

    /** The demo documents on the class path; empty if the module that holds them is not there. */
    public static List<Demos.Document> demos() {
        return Demos.load().documents();
    }

    /**
     * The text of a demo document, to copy and edit.
     *
     * @throws DocumentException if there is no demo of that name
     */
    public static String demoText(DocumentKind kind, String name) {
        return new DocumentFinder(Demos.load()).demo(kind, name).text();
    }

    /**
     * Returns a name that a document may bear.
     *
     * @param place where it was given, for the message
     * @throws InvalidValueException if it is blank, too long or holds what cannot be seen
     */
    public static String checkedName(String place, String name) {
        int length = name.codePointCount(0, name.length());
        if (length > ObjectReader.MAX_NAME_LENGTH) {
            throw new InvalidValueException(
                    place, length + " characters are too many", "use at most " + ObjectReader.MAX_NAME_LENGTH);
        }
        return PlainText.checkedName(place, name);
    }

    /** A name that a document may bear made from any text, as from a file's name: cut, a question mark for what cannot be seen. */
    public static String nameFrom(String text) {
        String shown = PlainText.shown(text);
        int length = Math.min(ObjectReader.MAX_NAME_LENGTH, shown.codePointCount(0, shown.length()));
        return shown.substring(0, shown.offsetByCodePoints(0, length));
    }

    /** The JSON Schema (draft 2020-12) of a kind of document, for editors and other programs. */
    public static String schemaText(DocumentKind kind) {
        return ClassPathText.required(ClassPathText.SCHEMAS + kind.word() + ".schema.json");
    }
}
