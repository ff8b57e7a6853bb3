package dev.lapwright.cli.option;

import dev.lapwright.cache.LineCache;
import dev.lapwright.cli.output.Console;
import dev.lapwright.line.LineChoices;
import dev.lapwright.line.LineFinder;
import picocli.CommandLine.Option;

/** Options for how much of the road a line may use, and how finely it is looked for. */
public class LineRoomOptions {
    @Option(
            names = "--margin-m",
            paramLabel = "M",
            description = "Free road kept between the car's side and the road's edge, m; 0.25 if left out.")
    public Double marginM;

    @Option(
            names = "--margin-right-m",
            paramLabel = "M",
            description = "The same on the right, where it is another than on the left.")
    public Double marginRightM;

    @Option(
            names = "--spacing-m",
            paramLabel = "M",
            description = "Greatest distance between nodes of the line along the road, m; 2 if left out.")
    public Double spacingM;

    @Option(
            names = "--no-cache",
            description = "Looks for each line anew, though it may have been found before, and keeps none.")
    public boolean noCache;

    /** Who looks for fastest lines: with a memory in the user's own folder, unless that is not wanted. */
    public final LineFinder finder(Console console) {
        return noCache
                ? LineFinder.SEARCH
                : console.program()
                        .<LineFinder>flatMap(program -> console.cache()
                                .map(folder -> new LineCache(folder.resolve("lines"), program, LineFinder.SEARCH)))
                        .orElse(LineFinder.SEARCH);
    }

    /** What they say. */
    public final LineChoices choices() {
        double left = marginM == null ? LineChoices.DEFAULT.marginLeft() : marginM;
        return new LineChoices(
                left,
                marginRightM == null ? left : marginRightM,
                spacingM == null ? LineChoices.DEFAULT.spacing() : spacingM);
    }
}
