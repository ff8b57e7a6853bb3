package dev.lapwright.cli.page;

import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import dev.lapwright.cli.output.MinusSign;
import dev.lapwright.report.UnitSystem;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;

/** A page as HTML: one file that needs no other, no script and no network. */
public final class PageHtml {
    private static final String TEMPLATE = "page.html";
    private static final String STYLE = "page.css";

    private PageHtml() {}

    /** The whole document; every text escaped, drawings as they are. */
    public static String text(Page page) {
        return text(page, UnitSystem.SI);
    }

    /** The same with its texts and tables in other units; drawings stay as they are. */
    public static String text(Page page, UnitSystem units) {
        Map<String, Object> context = new HashMap<>();
        context.put("page", page.in(units));
        context.put("style", resource(STYLE));
        return Mustache.compiler()
                .emptyStringIsFalse(true)
                .withEscaper(text -> Escapers.HTML.escape(MinusSign.in(units.told(text))))
                .withLoader(name -> new StringReader(resource(name + ".html")))
                .compile(resource(TEMPLATE))
                .execute(context);
    }

    static String resource(String name) {
        try (InputStream in = PageHtml.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the resource " + name + " is missing from this build");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
