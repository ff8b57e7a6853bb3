package dev.lapwright.text;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import dev.lapwright.files.DocumentFault;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Fault of JSON syntax in words for the person who wrote the text: what was found and what belongs there, made from what the
 * parser says.
 */
public final class JsonSyntaxFault {
    private static final Pattern OPENED_AT = Pattern.compile("line: (\\d+), column: (\\d+)\\]");
    private static final Pattern TOKEN = Pattern.compile("(?:token|escape) '([^']*)'");
    private static final String ONLY_DOUBLE_QUOTES = "put names and texts into straight double quotes, as in \"name\"";
    private static final String SURPLUS_COMMA = "remove the comma before it";

    private final String said;
    private final String text;
    private final int offset;

    private JsonSyntaxFault(String said, String text, int offset) {
        this.said = said;
        this.text = text;
        this.offset = offset;
    }

    public static DocumentFault at(JsonLocation location, String problem, String remedy) {
        return new DocumentFault(
                DocumentFault.Kind.SYNTAX, "", location.getLineNr(), location.getColumnNr(), problem, remedy);
    }

    public static DocumentFault of(JsonProcessingException e, String text) {
        JsonLocation location = e.getLocation();
        String said = e.getOriginalMessage();
        JsonSyntaxFault fault =
                new JsonSyntaxFault(said, text, (int) Math.min(text.length(), location.getCharOffset()));
        String[] words = fault.words();
        // The parser stands behind a word that JSON does not have; a person looks for its beginning.
        int back = said.startsWith("Non-standard token") ? fault.token().length() : 0;
        return new DocumentFault(
                DocumentFault.Kind.SYNTAX, "", location.getLineNr(), location.getColumnNr() - back, words[0], words[1]);
    }

    private String[] words() {
        if (said.startsWith("Unexpected end-of-input")) {
            return unfinished();
        }
        if (said.contains("close marker")) {
            Matcher opened = OPENED_AT.matcher(said);
            String line = opened.find() ? " opened in line " + opened.group(1) : "";
            boolean list = said.contains("for Array");
            return words(
                    found() + " cannot close the " + (list ? "list [" : "object {") + line,
                    "close it with " + (list ? "]" : "}") + " first");
        }
        if (said.contains("to separate Object entries") || said.contains("to separate Array entries")) {
            return noComma();
        }
        if (said.contains("field name and value")) {
            return words(found() + " stands where a colon belongs", "write a field as \"name\": value");
        }
        if (said.contains("to start field name")) {
            return noName();
        }
        if (said.startsWith("Non-standard token") || isNumberWord()) {
            return words("'" + token() + "' is not a number in JSON", "give a finite number");
        }
        return inValue();
    }

    private String[] unfinished() {
        Matcher opened = OPENED_AT.matcher(said);
        if (said.contains("field name") || said.contains("string value")) {
            return words("the text ends inside quotes", "close them with \"");
        }
        if (opened.find()) {
            boolean list = said.contains("for Array");
            return words(
                    "the text ends before the " + (list ? "list [" : "object {") + " opened in line " + opened.group(1)
                            + " is closed",
                    "close it with " + (list ? "]" : "}"));
        }
        return words("the text ends in the middle of the document", "complete it");
    }

    private String[] noComma() {
        char here = charAt(offset);
        if (here == '"' || here == '{' || here == '[') {
            int line = lineOfLastBefore(offset);
            boolean sameLine = line == lineAt(offset);
            return words(
                    "a comma is missing " + (sameLine ? "before this " + here : "at the end of line " + line),
                    "separate fields and list entries with commas");
        }
        if (Character.isLetter(here) && Character.isDigit(charAt(offset - 1))) {
            return words(
                    found() + " follows a number directly", "write the number alone; its unit is in the field's name");
        }
        return words(
                found() + " stands where a comma or the end belongs", "separate fields and list entries with commas");
    }

    private String[] noName() {
        char here = charAt(offset);
        char before = lastBefore(offset);
        if (here == '}' && before == ',') {
            return words("a field is expected after the comma, but } is found", SURPLUS_COMMA);
        }
        if (Character.isDigit(here) && before == ',') {
            return words("a number with a comma is not JSON", "write decimals with a point, as in 1.5");
        }
        if (here == '/' || here == '#') {
            return words("JSON has no comments", "remove it, or put it into the description");
        }
        if (isQuote(here)) {
            return words(here + " is not a double quote", ONLY_DOUBLE_QUOTES);
        }
        return words(
                found() + " stands where a field's name in double quotes belongs", "write a field as \"name\": value");
    }

    private String[] inValue() {
        if (said.contains("comment")) {
            return words("JSON has no comments", "remove it, or put it into the description");
        }
        if (said.contains("Leading zeroes") || said.contains("in numeric value")) {
            return words("this is not a number as JSON writes it", "write it like 12, -0.5 or 1.2e-3");
        }
        if (said.contains("unquoted character")) {
            return words(
                    "a text runs over the end of its line or holds a control character",
                    "keep it in one line, and close it with \"");
        }
        if (said.contains("character escape")) {
            return words("\\" + token() + " means nothing in a JSON text", "write a backslash as \\\\");
        }
        if (said.startsWith("Unrecognized token")) {
            return words(
                    "'" + token() + "' is no JSON value",
                    "put a text into double quotes; other words are true, false and null");
        }
        char here = charAt(offset);
        if (here == '.' || here == '+') {
            return words("this is not a number as JSON writes it", "write it like 12, -0.5 or 1.2e-3");
        }
        if (isQuote(here)) {
            return words(here + " is not a double quote", ONLY_DOUBLE_QUOTES);
        }
        if (here == ']' && lastBefore(offset) == ',') {
            return words("a value is expected after the comma, but ] is found", SURPLUS_COMMA);
        }
        if (said.startsWith("Unexpected character") || said.startsWith("Illegal character")) {
            return words(
                    found() + " stands where a value belongs",
                    "give a number, a text in double quotes, true, false, a list [ … ] or an object { … }");
        }
        return words("this is not JSON (" + said + ")", "correct it there");
    }

    private boolean isNumberWord() {
        String word = token().toLowerCase(Locale.ROOT);
        return said.startsWith("Unrecognized token")
                && (word.equals("nan") || word.equals("inf") || word.equals("infinity"));
    }

    private String token() {
        Matcher token = TOKEN.matcher(said);
        return token.find() ? Excerpt.of(token.group(1)) : "";
    }

    private String found() {
        if (offset >= text.length()) {
            return "the end of the text";
        }
        int c = text.codePointAt(offset);
        return Character.isISOControl(c)
                ? String.format(Locale.ROOT, "the character U+%04X", c)
                : "'" + Character.toString(c) + "'";
    }

    private char charAt(int index) {
        return index >= 0 && index < text.length() ? text.charAt(index) : ' ';
    }

    private static boolean isQuote(char c) {
        return c == '\''
                || c == '`'
                || c == '\u2018'
                || c == '\u2019'
                || c == '\u201c'
                || c == '\u201d'
                || c == '\u201e';
    }

    private char lastBefore(int index) {
        return charAt(lastIndexBefore(index));
    }

    private int lastIndexBefore(int index) {
        int i = index - 1;
        while (i >= 0 && Character.isWhitespace(text.charAt(i))) {
            i--;
        }
        return i;
    }

    private int lineOfLastBefore(int index) {
        return lineAt(lastIndexBefore(index));
    }

    private int lineAt(int index) {
        int line = 1;
        for (int i = 0; i < index; i++) {
            line += text.charAt(i) == '\n' ? 1 : 0;
        }
        return line;
    }

    private static String[] words(String problem, String remedy) {
        return new String[] {problem, remedy};
    }
}
