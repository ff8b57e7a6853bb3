package dev.lapwright.inspection;

import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.fault.InvalidValueException;
import dev.lapwright.files.DocumentSource;
import dev.lapwright.samples.SampleColumn;
import dev.lapwright.samples.SampleHeader;
import dev.lapwright.text.CsvTable;
import dev.lapwright.text.FaultList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Kinds of file that a user may have. */
public enum FileKind {
    CAR,
    SETUP,
    CIRCUIT,
    CONDITIONS,
    LINE,
    /** Points of a centre line. */
    SURVEY,
    /** Samples of driven laps. */
    LOG,
    /** Lap times off the timing screen. */
    TIMES,
    /** Tyre pressures, cold and hot. */
    PRESSURES;

    private static final String REMEDY = "begin it with a line of headings";

    /** As a user writes it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /**
     * The kind that a word names.
     *
     * @throws InvalidValueException if none does
     */
    public static FileKind ofWord(String word) {
        return Arrays.stream(values())
                .filter(kind -> kind.word().equals(word))
                .findFirst()
                .orElseThrow(() -> new InvalidValueException(
                        "--as " + word,
                        "there is no such kind of file",
                        "use one of "
                                + Arrays.stream(values()).map(FileKind::word).collect(Collectors.joining(", "))));
    }

    /**
     * The kind of a text, by its name and its first lines.
     *
     * @throws dev.lapwright.files.DocumentException if it is none
     */
    public static FileKind of(DocumentSource source) {
        String name = source.name().toLowerCase(Locale.ROOT);
        String text = source.text().stripLeading();
        if (name.endsWith(".gpx") || name.endsWith(".geojson") || text.startsWith("<")) {
            return SURVEY;
        }
        if (text.startsWith("{") || name.endsWith(".json")) {
            boolean points = !text.contains('"' + DocumentKind.MARK + '"') && text.contains("\"coordinates\"");
            return points ? SURVEY : ofDocument(Documents.kindOf(source));
        }
        return ofTable(source);
    }

    private static FileKind ofDocument(DocumentKind kind) {
        return valueOf(kind.name());
    }

    private static FileKind ofTable(DocumentSource source) {
        List<CsvTable.Row> rows = CsvTable.rows(source, REMEDY);
        for (CsvTable.Row row : rows.subList(0, Math.min(CsvTable.PREAMBLE, rows.size()))) {
            // Positions first: with them a log tells where the road is.
            if (header(source, row, SampleColumn.OF_SURVEYS).isSurvey()) {
                return SURVEY;
            }
            if (header(source, row, SampleColumn.OF_DRIVEN_LAPS).isDrivenLap()) {
                return LOG;
            }
        }
        String headings = String.join(" ", rows.get(0).values()).toLowerCase(Locale.ROOT);
        return headings.contains("cold") || headings.contains("hot") ? PRESSURES : TIMES;
    }

    private static SampleHeader header(DocumentSource source, CsvTable.Row row, java.util.Set<SampleColumn> wanted) {
        return new SampleHeader(row, List.of(), wanted, new FaultList(source.name()));
    }
}
