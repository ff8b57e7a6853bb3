package dev.lapwright.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** What is compared with the car and setup above. */
final class CompareOptions {
    @Option(
            names = "--against",
            paramLabel = "SETUP",
            description = "The other setup: by file or demo name, or changes to the setup above: rear-wing=3 or"
                    + " rear-wing=3,front-bar=2. Also changes of the conditions: conditions.grip=0.8.")
    List<String> against = new ArrayList<>();

    @Option(
            names = "--against-car",
            paramLabel = "CAR",
            completionCandidates = DemoNames.Cars.class,
            description = "Another car, as its document has it; --against then sets up or changes that car.")
    String car;
}
