package dev.lapwright.cli;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads JSON into maps, lists, strings, doubles, booleans and nulls; fails on anything after it. */
public final class JsonTree {
    private JsonTree() {}

    @SuppressWarnings("unchecked")
    public static Map<String, Object> object(String text) {
        try (JsonParser parser = new JsonFactory().createParser(text)) {
            parser.nextToken();
            Map<String, Object> tree = (Map<String, Object>) value(parser);
            if (parser.nextToken() != null) {
                throw new AssertionError("something follows the JSON:\n" + text);
            }
            return tree;
        } catch (IOException e) {
            throw new AssertionError("not JSON: " + e.getMessage() + "\n" + text, e);
        }
    }

    private static Object value(JsonParser parser) throws IOException {
        return switch (parser.currentToken()) {
            case START_OBJECT -> {
                Map<String, Object> map = new LinkedHashMap<>();
                while (parser.nextToken() != JsonToken.END_OBJECT) {
                    String name = parser.currentName();
                    parser.nextToken();
                    map.put(name, value(parser));
                }
                yield map;
            }
            case START_ARRAY -> {
                List<Object> list = new ArrayList<>();
                while (parser.nextToken() != JsonToken.END_ARRAY) {
                    list.add(value(parser));
                }
                yield list;
            }
            case VALUE_STRING -> parser.getText();
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> parser.getDoubleValue();
            case VALUE_TRUE -> true;
            case VALUE_FALSE -> false;
            case VALUE_NULL -> null;
            default -> throw new AssertionError("unexpected " + parser.currentToken());
        };
    }

    public static double number(Map<String, Object> tree, String name) {
        return (Double) tree.get(name);
    }

    @SuppressWarnings("unchecked")
    public static List<Map<String, Object>> objects(Map<String, Object> tree, String name) {
        return (List<Map<String, Object>>) tree.get(name);
    }

    @SuppressWarnings("unchecked")
    public static List<Double> numbers(Map<String, Object> tree, String name) {
        return (List<Double>) tree.get(name);
    }

    @SuppressWarnings("unchecked")
    public static Map<String, Object> object(Map<String, Object> tree, String name) {
        return (Map<String, Object>) tree.get(name);
    }
}
