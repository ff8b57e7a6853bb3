package examples;

import static java.util.stream.Collectors.joining;

import dev.lapwright.car.Adjustment;
import dev.lapwright.car.Car;
import dev.lapwright.car.Quantity;
import dev.lapwright.documents.DocumentKind;
import dev.lapwright.documents.Documents;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;

/** A car document, read from a text; and one that cannot be right, refused with place, value and remedy. */
public final class ReadDocuments {
    private ReadDocuments() {}

    public static void main(String[] arguments) {
        String text = Documents.demoText(DocumentKind.CAR, "gt-talvex");

        Car car = Documents.car(new DocumentSource("my car", text));
        System.out.println(car.name() + ": " + car.value(Quantity.MASS) + " kg");
        System.out.println(
                "to turn: " + car.adjustments().stream().map(Adjustment::name).collect(joining(", ")));

        String wrong = text.replaceFirst("\"massKg\": *[0-9.]+", "\"massKg\": -1");
        try {
            Documents.car(new DocumentSource("my car", wrong));
        } catch (DocumentException e) {
            System.out.println(e.getMessage());
        }
    }
}
