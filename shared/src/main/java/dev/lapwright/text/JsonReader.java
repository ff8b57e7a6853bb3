package dev.lapwright.text;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import dev.lapwright.files.DocumentException;
import dev.lapwright.files.DocumentSource;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Reader of JSON text into {@link JsonValue}s that keep their line and column. Strict RFC 8259: no comments, no trailing commas,
 * no NaN; a key given twice is a fault. Uses Jackson's streaming parser alone, which starts in a fraction of the time of its
 * data binding.
 */
public final class JsonReader {
    private final DocumentSource source;
    private final FaultList faults;
    private final JsonParser parser;

    private JsonReader(DocumentSource source, FaultList faults, JsonParser parser) {
        this.source = source;
        this.faults = faults;
        this.parser = parser;
    }

    /**
     * @param faults takes keys given twice and numbers beyond the range of a double
     * @throws DocumentException if the text is not JSON, with line and column
     */
    public static JsonValue parse(DocumentSource source, FaultList faults) {
        if (source.text().isBlank()) {
            throw new DocumentException(source.name(), "it is empty", "write a JSON document into it");
        }
        try (JsonParser parser = new JsonFactory().createParser(source.text())) {
            return new JsonReader(source, faults, parser).root();
        } catch (JsonProcessingException e) {
            throw new DocumentException(source.name(), List.of(JsonSyntaxFault.of(e, source.text())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private JsonValue root() throws IOException {
        try {
            parser.nextToken();
            JsonValue root = value("");
            checkEnd();
            return root;
        } catch (StreamConstraintsException e) {
            throw new DocumentException(
                    source.name(),
                    List.of(JsonSyntaxFault.at(
                            parser.currentLocation(),
                            "this goes beyond what can be read: objects nested too deep, or too long a name or number",
                            "check that it is a document for Lapwright")));
        }
    }

    private void checkEnd() throws IOException {
        if (parser.nextToken() != null) {
            throw new DocumentException(
                    source.name(),
                    List.of(JsonSyntaxFault.at(
                            parser.currentTokenLocation(),
                            "the document has ended, but more text follows",
                            "keep one JSON document in a file")));
        }
    }

    private TextPlace place() {
        JsonLocation at = parser.currentTokenLocation();
        return new TextPlace(at.getLineNr(), at.getColumnNr());
    }

    private JsonValue value(String path) throws IOException {
        TextPlace place = place();
        JsonToken token = parser.currentToken();
        return switch (token) {
            case START_OBJECT -> object(path, place);
            case START_ARRAY -> list(path, place);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number(path, place);
            case VALUE_STRING -> new JsonValue.Text(place, parser.getText());
            case VALUE_TRUE -> new JsonValue.Bool(place, true);
            case VALUE_FALSE -> new JsonValue.Bool(place, false);
            case VALUE_NULL -> new JsonValue.Null(place);
            default -> throw new IllegalStateException("unexpected token " + token);
        };
    }

    private JsonValue object(String path, TextPlace place) throws IOException {
        Map<String, JsonValue.Member> members = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = parser.currentName();
            TextPlace namePlace = place();
            String memberPath = path.isEmpty() ? name : path + "." + name;
            parser.nextToken();
            JsonValue.Member first = members.putIfAbsent(name, new JsonValue.Member(namePlace, value(memberPath)));
            if (first != null) {
                faults.meaning(
                        namePlace,
                        memberPath,
                        "it is given twice, first in line " + first.place().line(),
                        "keep one of the two");
            }
        }
        return new JsonValue.Obj(place, members);
    }

    private JsonValue list(String path, TextPlace place) throws IOException {
        List<JsonValue> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(value(path + "[" + items.size() + "]"));
        }
        return new JsonValue.Arr(place, items);
    }

    private JsonValue number(String path, TextPlace place) throws IOException {
        double value = parser.getDoubleValue();
        if (!Double.isFinite(value)) {
            faults.form(place, path, parser.getText() + " is too large for a number", "give a finite number");
            value = Double.NaN;
        }
        return new JsonValue.Num(place, value);
    }
}
