package dev.lapwright.documents;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import dev.lapwright.car.Car;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentFault;
import dev.lapwright.files.DocumentSource;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** What the reader and the shipped schema say of a document. */
final class SchemaVerdict {
    private static final Map<DocumentKind, Schema> SCHEMAS = schemas();
    private static final Car CAR = Documents.car(TestDocuments.source("valid/car/complete.json"));

    private final DocumentKind kind;
    private final String text;

    SchemaVerdict(DocumentKind kind, String text) {
        this.kind = kind;
        this.text = text;
    }

    private static Map<DocumentKind, Schema> schemas() {
        SchemaRegistry registry = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12);
        Map<DocumentKind, Schema> schemas = new EnumMap<>(DocumentKind.class);
        for (DocumentKind kind : DocumentKind.values()) {
            schemas.put(kind, registry.getSchema(Documents.schemaText(kind), InputFormat.JSON));
        }
        return schemas;
    }

    /** What the schema finds; empty if the document fits. */
    List<Error> bySchema() {
        return SCHEMAS.get(kind).validate(text, InputFormat.JSON);
    }

    /** What the reader finds; empty if it accepts the document. */
    List<DocumentFault> byReader() {
        DocumentSource source = new DocumentSource("document", text);
        try {
            if (kind == DocumentKind.SETUP) {
                Documents.setup(source, CAR);
            } else {
                TestDocuments.read(kind, source);
            }
            return List.of();
        } catch (DocumentException e) {
            return e.faults();
        }
    }

    /** Both refuse it for its form, or neither does. What goes beyond a schema does not count. */
    boolean isUnanimous() {
        boolean formRefused = byReader().stream().anyMatch(fault -> fault.kind() == DocumentFault.Kind.FORM);
        return formRefused != bySchema().isEmpty();
    }

    @Override
    public String toString() {
        return "reader: " + byReader() + "\nschema: " + bySchema() + "\n" + text;
    }
}
