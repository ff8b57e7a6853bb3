package dev.lapwright.charts;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jfree.chart.JFreeChart;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** A chart drawn as SVG and read back as XML. */
public final class Drawn {
    private final Document document;
    private final String source;

    private Drawn(byte[] svg) {
        source = new String(svg, StandardCharsets.UTF_8);
        try {
            document = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(svg));
        } catch (Exception broken) {
            throw new AssertionError("the SVG does not parse", broken);
        }
    }

    public static Drawn of(JFreeChart chart, ImageSize size) {
        return new Drawn(ChartImage.svg(chart, size));
    }

    public Element root() {
        return document.getDocumentElement();
    }

    public String source() {
        return source;
    }

    public List<Element> elements(String tag) {
        NodeList nodes = document.getElementsByTagName(tag);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    /** Everything written in the picture. */
    public List<String> texts() {
        return elements("text").stream().map(Element::getTextContent).toList();
    }
}
