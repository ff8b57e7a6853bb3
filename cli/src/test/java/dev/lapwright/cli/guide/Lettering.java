package dev.lapwright.cli.guide;

import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The texts of a picture (SVG), and what is wrong with them. */
final class Lettering {
    /** Below this letters are not read on a phone, px: the house's rule, common practice, no source. */
    private static final int SMALLEST = 11;
    /** Texts that share less than this of the smaller box do not disturb each other: ascenders are rarely that high. */
    private static final double SHARED = 0.12;
    /** Viewers' fonts are not quite as wide as ours, px. */
    private static final double BEYOND = 1;

    private static final Graphics2D MEASURE = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();

    private final int width;
    private final int height;
    private final List<Element> texts = new ArrayList<>();

    /** @throws AssertionError if it is not well-formed */
    Lettering(String svg) {
        try {
            Document document = DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
            width = Integer.parseInt(document.getDocumentElement().getAttribute("width"));
            height = Integer.parseInt(document.getDocumentElement().getAttribute("height"));
            NodeList all = document.getElementsByTagName("text");
            for (int i = 0; i < all.getLength(); i++) {
                texts.add((Element) all.item(i));
            }
        } catch (Exception broken) {
            throw new AssertionError("the picture does not parse", broken);
        }
    }

    /** As wide as the page it was laid out for, px. */
    int width() {
        return width;
    }

    int count() {
        return texts.size();
    }

    /** What is too small, cut off, or upon another text. Texts on their side are only asked for their size. */
    List<String> faults() {
        List<String> faults = new ArrayList<>();
        List<Element> placed = new ArrayList<>();
        List<Rectangle2D> boxes = new ArrayList<>();
        for (Element text : texts) {
            String said = "'" + text.getTextContent() + "'";
            if (Integer.parseInt(text.getAttribute("font-size")) < SMALLEST) {
                faults.add(said + " is smaller than " + SMALLEST + " px");
            }
            if (!text.hasAttribute("x")) {
                continue;
            }
            Rectangle2D box = box(text);
            if (box.getMinX() < -BEYOND
                    || box.getMaxX() > width + BEYOND
                    || box.getMinY() < -BEYOND
                    || box.getMaxY() > height + BEYOND) {
                faults.add(said + " is cut off");
            }
            for (int i = 0; i < boxes.size(); i++) {
                Rectangle2D both = box.createIntersection(boxes.get(i));
                double smaller = Math.min(area(box), area(boxes.get(i)));
                if (!both.isEmpty() && area(both) > SHARED * smaller) {
                    faults.add(said + " lies upon '" + placed.get(i).getTextContent() + "'");
                }
            }
            placed.add(text);
            boxes.add(box);
        }
        return faults;
    }

    private static double area(Rectangle2D box) {
        return box.getWidth() * box.getHeight();
    }

    /** The place that the letters take, from the baseline up to the height of capitals. */
    private static Rectangle2D box(Element text) {
        int size = Integer.parseInt(text.getAttribute("font-size"));
        int weight = text.getAttribute("font-weight").equals("bold") ? Font.BOLD : Font.PLAIN;
        FontMetrics metrics = MEASURE.getFontMetrics(new Font(Font.SANS_SERIF, weight, size));
        double x = Double.parseDouble(text.getAttribute("x"));
        double y = Double.parseDouble(text.getAttribute("y"));
        double height = 0.73 * size;
        return new Rectangle2D.Double(x, y - height, metrics.stringWidth(text.getTextContent()), height);
    }
}
