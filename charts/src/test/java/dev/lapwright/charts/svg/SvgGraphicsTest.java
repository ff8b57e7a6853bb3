package dev.lapwright.charts.svg;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

class SvgGraphicsTest {
    private final SvgGraphics g2 =
            new SvgGraphics((property, colour) -> " " + property + "=\"" + SvgColours.hex(colour) + "\"", 2, "d");

    private Document parsed() throws Exception {
        String svg = "<svg xmlns=\"http://www.w3.org/2000/svg\">" + g2.elements() + "</svg>";
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    }

    @Test
    void shapesBecomeElementsOfTheirOwnKind() {
        g2.setPaint(new Color(0x123456));
        g2.setStroke(new BasicStroke(1.5f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, new float[] {5, 4}, 0));
        g2.translate(10, 20);
        g2.draw(new Line2D.Double(0, 0, 1.256, 2));
        g2.fill(new Rectangle2D.Double(1, 2, 3, 4));
        g2.fill(new Ellipse2D.Double(0, 0, 2, 4));
        assertThat(g2.elements())
                .isEqualTo("<line x1=\"10\" y1=\"20\" x2=\"11.26\" y2=\"22\" fill=\"none\" stroke=\"#123456\""
                        + " stroke-width=\"1.5\" stroke-dasharray=\"5,4\"/>"
                        + "<rect x=\"11\" y=\"22\" width=\"3\" height=\"4\" fill=\"#123456\"/>"
                        + "<ellipse cx=\"11\" cy=\"22\" rx=\"1\" ry=\"2\" fill=\"#123456\"/>");
    }

    @Test
    void everyTextIsWellFormedAndComesBackUnlessXmlHasNoPlaceForIt() throws Exception {
        List<String> kept = List.of("a < b & c > \"d\" 'e'", "Köln \uD83C\uDFC1", "\u202Eright to left", "]]>");
        for (String text : kept) {
            g2.drawString(text, 0, 0);
        }
        g2.drawString("bell \u0007, half a pair \uD83C, \uFFFE, escape \u001B[31m", 0, 0);
        Document document = parsed();
        for (int i = 0; i < kept.size(); i++) {
            assertThat(document.getElementsByTagName("text").item(i).getTextContent())
                    .isEqualTo(kept.get(i));
        }
        assertThat(document.getElementsByTagName("text").item(kept.size()).getTextContent())
                .isEqualTo("bell \uFFFD, half a pair \uFFFD, \uFFFD, escape \uFFFD[31m");
    }

    /** Seeds are fixed; every char from U+0000 to U+FFFF may occur, alone or in pairs. */
    @Test
    void randomTextIsWellFormed() throws Exception {
        Random random = new Random(7);
        for (int i = 0; i < 200; i++) {
            StringBuilder text = new StringBuilder();
            for (int k = 0; k < 30; k++) {
                text.append((char) random.nextInt(0x10000));
            }
            g2.drawString(text.toString(), 1, 2);
        }
        assertThat(parsed().getElementsByTagName("text").getLength()).isEqualTo(200);
    }

    @Test
    void turnedTextStaysText() {
        g2.translate(30, 40);
        g2.rotate(-Math.PI / 2);
        g2.drawString("up", -5f, 0f);
        assertThat(g2.elements())
                .contains("transform=\"matrix(0,-1,1,0,30,45)\"")
                .contains(">up</text>");
    }

    @Test
    void aClipHoldsUntilItChanges() throws Exception {
        g2.clip(new Rectangle2D.Double(0, 0, 100, 50));
        g2.draw(new Line2D.Double(0, 0, 1, 1));
        g2.draw(new Line2D.Double(2, 2, 3, 3));
        g2.clip(new Rectangle2D.Double(50, 0, 100, 100));
        g2.draw(new Line2D.Double(4, 4, 5, 5));
        g2.setClip(null);
        g2.draw(new Line2D.Double(6, 6, 7, 7));
        Document document = parsed();
        assertThat(document.getElementsByTagName("clipPath").getLength()).isEqualTo(2);
        assertThat(document.getElementsByTagName("g").getLength()).isEqualTo(2);
        assertThat(document.getElementsByTagName("g").item(0).getChildNodes().getLength())
                .isEqualTo(2);
        // The intersection of both: 50 to 100 across, 0 to 50 down.
        assertThat(g2.elements()).contains("<rect x=\"50\" y=\"0\" width=\"50\" height=\"50\"/>");
    }

    @Test
    void pointsOnAStraightLineAreLeftOutAndCornersStay() {
        Path2D path = new Path2D.Double();
        path.moveTo(0, 0);
        for (int i = 1; i <= 100; i++) {
            path.lineTo(i, 0.04 * (i % 2));
        }
        path.lineTo(100, 50);
        g2.draw(path);
        assertThat(g2.elements()).startsWith("<path d=\"M0,0 100,0 100,50\"");
    }

    @Test
    void aPlaceThatIsNoNumberEndsTheLineThere() {
        Path2D path = new Path2D.Double();
        path.moveTo(0, 0);
        path.lineTo(1, 5);
        path.lineTo(Double.NaN, 3);
        path.lineTo(7, 1);
        path.lineTo(8, 9);
        g2.draw(path);
        g2.draw(new Line2D.Double(0, 0, Double.POSITIVE_INFINITY, 0));
        assertThat(g2.elements()).startsWith("<path d=\"M0,0 1,5M7,1 8,9\"").doesNotContain("NaN", "Infinity");
    }

    @Test
    void seeThroughColoursKeepTheirOpacity() {
        g2.setPaint(new Color(0, 0, 0, 51));
        g2.fill(new Rectangle2D.Double(0, 0, 1, 1));
        assertThat(g2.elements()).contains("fill-opacity=\"0.2\"");
    }

    /** Layout is done with the same widths as in a picture of pixels, so that SVG and PNG agree. */
    @Test
    void textIsMeasuredAsInAPictureOfPixels() {
        Graphics2D pixels = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics();
        Font font = new Font(Font.SANS_SERIF, Font.PLAIN, 12);
        double width = pixels.getFontMetrics(font).stringWidth("Speed (km/h)");
        // Rounding of each letter to whole pixels: half a pixel for 12 letters at most.
        assertThat(g2.getFontMetrics(font).stringWidth("Speed (km/h)"))
                .isCloseTo((int) width, org.assertj.core.data.Offset.offset(6));
    }

    @Test
    void aCopyWritesIntoTheSameDocument() {
        Graphics2D copy = (Graphics2D) g2.create();
        copy.translate(5, 5);
        copy.drawLine(0, 0, 1, 0);
        g2.drawLine(0, 0, 1, 0);
        assertThat(g2.elements()).contains("x1=\"5\"").contains("x1=\"0\"");
    }
}
