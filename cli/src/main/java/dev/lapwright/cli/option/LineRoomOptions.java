package dev.lapwright.cli.option;

import dev.lapwright.line.LineChoices;
import picocli.CommandLine.Option;

/** Options for how much of the road a line may use, and how finely it is looked for. */
public class LineRoomOptions {
    @Option(
            names = "--margin-m",
            paramLabel = "M",
            description = "Free road kept between the car's side and the road's edge, m; 0.25 if left out.")
    public Double marginM;

    @Option(
            names = "--spacing-m",
            paramLabel = "M",
            description = "Greatest distance between nodes of the line along the road, m; 2 if left out.")
    public Double spacingM;

    /** What they say. */
    public final LineChoices choices() {
        return new LineChoices(
                marginM == null ? LineChoices.DEFAULT.margin() : marginM,
                spacingM == null ? LineChoices.DEFAULT.spacing() : spacingM);
    }
}
