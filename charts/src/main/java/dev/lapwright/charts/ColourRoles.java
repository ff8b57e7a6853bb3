package dev.lapwright.charts;

import dev.lapwright.charts.svg.SvgColours;
import java.awt.Color;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Roles of the colours of a palette in an SVG, so that a viewer can exchange them: {@code paper}, {@code ink}, {@code
 * muted}, {@code grid}, {@code band}, {@code 0} to {@code 5} for the series and {@code label-0} to {@code label-5} for text
 * about them. Other colours, those of the ramp among them, stay as they are.
 */
final class ColourRoles {
    private final Map<Integer, String> names = new LinkedHashMap<>();

    ColourRoles(Palette palette) {
        colours(palette).forEach((role, colour) -> names.putIfAbsent(colour.getRGB() & 0xFFFFFF, role));
    }

    /** The colour of each role; where two roles share one, the first takes it. */
    private static Map<String, Color> colours(Palette palette) {
        Map<String, Color> colours = new LinkedHashMap<>();
        colours.put("paper", palette.background());
        colours.put("ink", palette.ink());
        colours.put("muted", palette.muted());
        colours.put("grid", palette.grid());
        colours.put("band", palette.band());
        for (int i = 0; i < palette.series().size(); i++) {
            colours.put(Integer.toString(i), palette.series(i));
        }
        for (int i = 0; i < palette.series().size(); i++) {
            colours.put("label-" + i, palette.label(palette.series(i)));
        }
        return colours;
    }

    private String role(Color colour) {
        return names.get(colour.getRGB() & 0xFFFFFF);
    }

    /** Colours as variables of the page that the drawing stands in, such as {@code var(--chart-ink)}. */
    SvgColours asVariables() {
        return (property, colour) -> {
            String role = role(colour);
            return " " + property + "=\"" + (role == null ? SvgColours.hex(colour) : "var(--chart-" + role + ")")
                    + "\"";
        };
    }

    /** Colours as they are, with a class such as {@code f-ink} or {@code s-ink} by which a style sheet can exchange them. */
    SvgColours asClasses() {
        return (property, colour) -> {
            String role = role(colour);
            String plain = " " + property + "=\"" + SvgColours.hex(colour) + "\"";
            return role == null ? plain : " class=\"" + property.charAt(0) + "-" + role + "\"" + plain;
        };
    }

    /** Style rules that exchange the colours of {@link #asClasses()} for those of another palette. */
    static String rules(Palette other) {
        StringBuilder rules = new StringBuilder();
        colours(other)
                .forEach((role, colour) -> rules.append(".f-")
                        .append(role)
                        .append("{fill:")
                        .append(SvgColours.hex(colour))
                        .append("}.s-")
                        .append(role)
                        .append("{stroke:")
                        .append(SvgColours.hex(colour))
                        .append('}'));
        return rules.toString();
    }
}
