package examples;

import dev.lapwright.car.Conditions;
import dev.lapwright.charts.ChartImage;
import dev.lapwright.charts.ChartStyle;
import dev.lapwright.charts.lap.SpeedTrace;
import dev.lapwright.documents.Documents;
import dev.lapwright.lap.Lap;
import dev.lapwright.lap.LapSolver;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** The speed over a lap as a chart, into the file named (speed.svg if none is); a file that is there already is kept. */
public final class ChartToSvg {
    private ChartToSvg() {}

    public static void main(String[] arguments) throws IOException {
        Path file = Path.of(arguments.length > 0 ? arguments[0] : "speed.svg");
        Lap lap = LapSolver.lap(Documents.car("gt-talvex"), Documents.circuit("castelvane"), Conditions.STANDARD);
        byte[] svg = ChartImage.svg(SpeedTrace.of(lap, ChartStyle.STANDARD), SpeedTrace.SIZE);
        Files.write(file, svg, StandardOpenOption.CREATE_NEW);
        System.out.println("Wrote " + file.getFileName());
    }
}
