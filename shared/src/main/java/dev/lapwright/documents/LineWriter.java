package dev.lapwright.documents;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Writer of a line document. */
final class LineWriter {
    /** Of a metre: the road's own place along it. */
    private static final int DISTANCE_DECIMALS = 4;
    /**
     * Of a metre. With nodes every 2 m an offset rounded to 0.1 mm bends the line by up to 5e-5 1/m, which on the demo
     * circuits costs a tenth of a second; to 0.1 µm, a tenth of a millisecond.
     */
    private static final int OFFSET_DECIMALS = 7;

    private static final int TIME_DECIMALS = 3;

    private LineWriter() {}

    static Map<String, Object> tree(StoredLine line) {
        Map<String, Object> document = DocumentWriter.header(DocumentKind.LINE, line.name(), "");
        document.put("road", line.road());
        document.put(LineReader.ROAD_LENGTH.name(), rounded(line.roadLength(), DISTANCE_DECIMALS));
        line.search().kind().ifPresent(kind -> document.put("kind", kind.word()));
        if (!line.search().car().isEmpty()) {
            document.put("car", line.search().car());
        }
        if (!line.search().setup().isEmpty()) {
            document.put("setup", line.search().setup());
        }
        line.search()
                .lapTime()
                .ifPresent(time -> document.put(LineReader.LAP_TIME.name(), rounded(time, TIME_DECIMALS)));
        line.search().margin().ifPresent(margin -> document.put(LineReader.MARGIN.name(), margin));
        line.search().marginRight().ifPresent(margin -> document.put(LineReader.MARGIN_RIGHT.name(), margin));
        document.put(LineReader.DISTANCES.name(), rounded(line.distances(), DISTANCE_DECIMALS));
        document.put(LineReader.OFFSETS.name(), rounded(line.offsets(), OFFSET_DECIMALS));
        return document;
    }

    private static List<Double> rounded(double[] values, int decimals) {
        List<Double> list = new ArrayList<>(values.length);
        for (double value : values) {
            list.add(rounded(value, decimals));
        }
        return list;
    }

    private static double rounded(double value, int decimals) {
        // Zero without a sign.
        return 0.0
                + BigDecimal.valueOf(value)
                        .setScale(decimals, RoundingMode.HALF_EVEN)
                        .doubleValue();
    }
}
