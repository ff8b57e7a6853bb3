package dev.lapwright.charts.svg;

import java.awt.AlphaComposite;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Composite;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.GradientPaint;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.GraphicsConfiguration;
import java.awt.Image;
import java.awt.Paint;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.Shape;
import java.awt.Stroke;
import java.awt.font.FontRenderContext;
import java.awt.font.GlyphVector;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.NoninvertibleTransformException;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.awt.image.BufferedImageOp;
import java.awt.image.ImageObserver;
import java.awt.image.RenderedImage;
import java.awt.image.renderable.RenderableImage;
import java.text.AttributedCharacterIterator;
import java.util.Locale;
import java.util.Map;

/**
 * The elements of an SVG document (Scalable Vector Graphics 1.1, W3C 2011), written as a chart draws: shapes with plain
 * colours and {@link BasicStroke}s, text as text. Pictures of pixels are left out, and of any paint but a colour its first
 * colour or black is taken; no chart of ours has either. Copies made by {@link #create()} write into one document.
 */
public final class SvgGraphics extends Graphics2D {
    private static final double LARGEST = 1e7;

    /** Measures text as the layout does: by this machine's fonts, not rounded to pixels. */
    private final Graphics2D measure;

    private final SvgColours colours;
    private final int decimals;
    private final String prefix;
    private final Document document;
    private final RenderingHints hints = new RenderingHints(Map.of());
    private AffineTransform transform = new AffineTransform();
    private Shape clip;
    private Paint paint = Color.BLACK;
    private Color background = Color.WHITE;
    private Stroke stroke = new BasicStroke();
    private Composite composite = AlphaComposite.SrcOver;
    private Font font = new Font(Font.SANS_SERIF, Font.PLAIN, 12);

    /** What has been written, and the clip that is in force there. */
    private static final class Document {
        private final StringBuilder text = new StringBuilder();
        private Shape clip;
        private int clips;
    }

    /**
     * An empty drawing.
     *
     * @param colours how colours are written
     * @param decimals of coordinates, px: 2 for a file, 1 is all that a screen shows
     * @param prefix of identifiers, unlike that of any other drawing in the same page
     */
    public SvgGraphics(SvgColours colours, int decimals, String prefix) {
        this.colours = colours;
        this.decimals = decimals;
        this.prefix = prefix;
        document = new Document();
        measure = new BufferedImage(1, 1, BufferedImage.TYPE_INT_ARGB).createGraphics();
        measure.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
    }

    private SvgGraphics(SvgGraphics other) {
        measure = other.measure;
        colours = other.colours;
        decimals = other.decimals;
        prefix = other.prefix;
        document = other.document;
        hints.putAll(other.hints);
        transform = new AffineTransform(other.transform);
        clip = other.clip;
        paint = other.paint;
        background = other.background;
        stroke = other.stroke;
        composite = other.composite;
        font = other.font;
    }

    /** All elements drawn so far, without the element {@code svg} round them. */
    public String elements() {
        return document.text + (document.clip == null ? "" : "</g>");
    }

    /**
     * Text that may stand between tags or in an attribute in double quotes: markup escaped, and for each character that XML
     * 1.0 (W3C, section 2.2) has no place for, such as a control character or half a surrogate pair, U+FFFD.
     */
    public static String escaped(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        text.codePoints().forEach(c -> {
            boolean allowed = c == '\t' || (c >= 0x20 && c <= 0xD7FF) || (c >= 0xE000 && c <= 0xFFFD) || c >= 0x10000;
            switch (allowed ? c : 0xFFFD) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                default -> out.appendCodePoint(allowed ? c : 0xFFFD);
            }
        });
        return out.toString();
    }

    private String number(double value) {
        double held = Math.max(-LARGEST, Math.min(LARGEST, value));
        double unit = Math.pow(10, decimals);
        double rounded = Math.rint(unit * held) / unit;
        if (rounded == Math.rint(rounded)) {
            return Long.toString((long) rounded);
        }
        String text = String.format(Locale.ROOT, "%." + decimals + "f", rounded);
        return decimals > 1 && text.endsWith("0") ? text.substring(0, text.length() - 1) : text;
    }

    /** Sines and cosines, which want more digits than places do. */
    private static String turn(double value) {
        double rounded = Math.rint(1e4 * value) / 1e4;
        return rounded == Math.rint(rounded) ? Long.toString((long) rounded) : Double.toString(rounded);
    }

    @Override
    public void draw(Shape shape) {
        if (stroke instanceof BasicStroke pen) {
            element(shape, false, " fill=\"none\"" + colour("stroke") + pen(pen));
        } else {
            fill(stroke.createStrokedShape(shape));
        }
    }

    @Override
    public void fill(Shape shape) {
        element(shape, true, colour("fill"));
    }

    private void element(Shape shape, boolean filled, String attributes) {
        String geometry = geometry(shape, filled);
        if (geometry.isEmpty()) {
            return;
        }
        boolean sharp = hints.get(RenderingHints.KEY_ANTIALIASING) == RenderingHints.VALUE_ANTIALIAS_OFF;
        enterClip();
        document.text
                .append('<')
                .append(geometry)
                .append(attributes)
                .append(sharp ? " shape-rendering=\"crispEdges\"" : "")
                .append("/>");
    }

    /** Name and measures of an element, its place included; empty where nothing is to be seen. */
    private String geometry(Shape shape, boolean filled) {
        double dx = transform.getTranslateX();
        double dy = transform.getTranslateY();
        boolean moved = (transform.getType() & ~AffineTransform.TYPE_TRANSLATION) == 0;
        Rectangle2D box = shape.getBounds2D();
        boolean finite = Double.isFinite(box.getX() + box.getY() + box.getWidth() + box.getHeight());
        if (moved && finite && shape instanceof Line2D line) {
            return filled
                    ? ""
                    : "line" + at("x1", line.getX1() + dx) + at("y1", line.getY1() + dy) + at("x2", line.getX2() + dx)
                            + at("y2", line.getY2() + dy);
        }
        if (moved && finite && shape instanceof Rectangle2D) {
            boolean empty = !(box.getWidth() > 0 && box.getHeight() > 0);
            return filled && empty
                    ? ""
                    : "rect" + at("x", box.getX() + dx) + at("y", box.getY() + dy) + at("width", box.getWidth())
                            + at("height", box.getHeight());
        }
        if (moved && finite && shape instanceof Ellipse2D) {
            return "ellipse" + at("cx", box.getCenterX() + dx) + at("cy", box.getCenterY() + dy)
                    + at("rx", box.getWidth() / 2) + at("ry", box.getHeight() / 2);
        }
        String data = SvgPath.of(shape.getPathIterator(transform), this::number);
        boolean evenOdd = filled && shape.getPathIterator(null).getWindingRule() == Path2D.WIND_EVEN_ODD;
        return data.isEmpty() ? "" : "path d=\"" + data + "\"" + (evenOdd ? " fill-rule=\"evenodd\"" : "");
    }

    private String at(String name, double value) {
        return " " + name + "=\"" + number(value) + "\"";
    }

    private String colour(String property) {
        Color colour = paint instanceof Color plain ? plain : Color.BLACK;
        if (paint instanceof GradientPaint gradient) {
            colour = gradient.getColor1();
        }
        double opacity = colour.getAlpha() / 255.0;
        if (composite instanceof AlphaComposite alpha) {
            opacity *= alpha.getAlpha();
        }
        String clear = opacity < 1 ? " " + property + "-opacity=\"" + Math.rint(100 * opacity) / 100 + "\"" : "";
        return colours.attributes(property, colour) + clear;
    }

    /** Line width and dashes; joins are round and ends cut off unless said otherwise, as {@link BasicStroke} of charts has it. */
    private String pen(BasicStroke pen) {
        double scale = Math.sqrt(Math.abs(transform.getDeterminant()));
        StringBuilder out = new StringBuilder();
        out.append(" stroke-width=\"")
                .append(number(scale * pen.getLineWidth()))
                .append('"');
        if (pen.getLineJoin() != BasicStroke.JOIN_ROUND) {
            out.append(" stroke-linejoin=\"")
                    .append(pen.getLineJoin() == BasicStroke.JOIN_BEVEL ? "bevel" : "miter")
                    .append('"');
        }
        if (pen.getEndCap() != BasicStroke.CAP_BUTT) {
            out.append(" stroke-linecap=\"")
                    .append(pen.getEndCap() == BasicStroke.CAP_ROUND ? "round" : "square")
                    .append('"');
        }
        float[] dashes = pen.getDashArray();
        if (dashes != null) {
            out.append(" stroke-dasharray=\"");
            for (int i = 0; i < dashes.length; i++) {
                out.append(i == 0 ? "" : ",").append(number(scale * dashes[i]));
            }
            out.append('"');
        }
        return out.toString();
    }

    /** Opens a group for the clip, unless the last element had the same. */
    private void enterClip() {
        if (clip == null ? document.clip == null : clip.equals(document.clip)) {
            return;
        }
        document.text.append(document.clip == null ? "" : "</g>");
        document.clip = clip;
        if (clip != null) {
            String id = prefix + document.clips++;
            String shape = clip instanceof Rectangle2D box
                    ? "rect" + at("x", box.getX()) + at("y", box.getY()) + at("width", box.getWidth())
                            + at("height", box.getHeight())
                    : "path d=\"" + SvgPath.of(clip.getPathIterator(null), this::number) + "\"";
            document.text
                    .append("<clipPath id=\"")
                    .append(id)
                    .append("\"><")
                    .append(shape)
                    .append("/></clipPath><g clip-path=\"url(#")
                    .append(id)
                    .append(")\">");
        }
    }

    @Override
    public void drawString(String text, float x, float y) {
        if (text.isBlank()) {
            return;
        }
        enterClip();
        StringBuilder out = document.text.append("<text");
        boolean moved = (transform.getType() & ~AffineTransform.TYPE_TRANSLATION) == 0;
        if (moved) {
            out.append(at("x", x + transform.getTranslateX())).append(at("y", y + transform.getTranslateY()));
        } else {
            AffineTransform placed = new AffineTransform(transform);
            placed.translate(x, y);
            double[] m = new double[6];
            placed.getMatrix(m);
            out.append(" transform=\"matrix(");
            for (int i = 0; i < 6; i++) {
                out.append(i == 0 ? "" : ",").append(i < 4 ? turn(m[i]) : number(m[i]));
            }
            out.append(")\"");
        }
        out.append(" font-size=\"").append(font.getSize()).append('"');
        out.append(font.isBold() ? " font-weight=\"bold\"" : "")
                .append(font.isItalic() ? " font-style=\"italic\"" : "");
        if (!font.getName().equals(Font.SANS_SERIF)) {
            out.append(" font-family=\"").append(families(font.getName())).append('"');
        }
        out.append(colour("fill")).append('>').append(escaped(text)).append("</text>");
    }

    /**
     * The value of {@code font-family} for a font of Java. The layout was measured with this machine's sans-serif font; viewers
     * have others, so the list first names families of like width, then the generic one.
     */
    public String families(String name) {
        String sample = "Speed over distance 0123456789";
        // Width over size: 16.5 in DejaVu Sans and near it in Verdana, 14.0 in Arial and its kin.
        double width =
                getFontMetrics(new Font(Font.SANS_SERIF, Font.PLAIN, 100)).stringWidth(sample) / 100.0;
        String sans =
                width > 15.2 ? "'DejaVu Sans', Verdana, sans-serif" : "Arial, Helvetica, 'Liberation Sans', sans-serif";
        return switch (name) {
            case Font.SANS_SERIF, Font.DIALOG, Font.DIALOG_INPUT -> sans;
            case Font.SERIF -> "serif";
            case Font.MONOSPACED -> "monospace";
            default -> "'" + escaped(name.replace("'", "").replace("\\", "")) + "', sans-serif";
        };
    }

    @Override
    public void drawString(String text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, float x, float y) {
        StringBuilder plain = new StringBuilder();
        for (char c = text.first(); c != AttributedCharacterIterator.DONE; c = text.next()) {
            plain.append(c);
        }
        drawString(plain.toString(), x, y);
    }

    @Override
    public void drawString(AttributedCharacterIterator text, int x, int y) {
        drawString(text, (float) x, (float) y);
    }

    @Override
    public void drawGlyphVector(GlyphVector glyphs, float x, float y) {
        fill(glyphs.getOutline(x, y));
    }

    @Override
    public boolean drawImage(Image image, AffineTransform placed, ImageObserver observer) {
        return true;
    }

    @Override
    public void drawImage(BufferedImage image, BufferedImageOp operation, int x, int y) {
        drawImage(image, null, null);
    }

    @Override
    public void drawRenderedImage(RenderedImage image, AffineTransform placed) {
        drawImage(null, placed, null);
    }

    @Override
    public void drawRenderableImage(RenderableImage image, AffineTransform placed) {
        drawImage(null, placed, null);
    }

    @Override
    public boolean drawImage(Image image, int x, int y, ImageObserver observer) {
        return true;
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, ImageObserver observer) {
        return true;
    }

    @Override
    public boolean drawImage(Image image, int x, int y, Color ground, ImageObserver observer) {
        return true;
    }

    @Override
    public boolean drawImage(Image image, int x, int y, int width, int height, Color ground, ImageObserver observer) {
        return true;
    }

    @Override
    public boolean drawImage(
            Image image, int x1, int y1, int x2, int y2, int u1, int v1, int u2, int v2, ImageObserver observer) {
        return true;
    }

    @Override
    public boolean drawImage(
            Image image,
            int x1,
            int y1,
            int x2,
            int y2,
            int u1,
            int v1,
            int u2,
            int v2,
            Color ground,
            ImageObserver observer) {
        return true;
    }

    @Override
    public boolean hit(Rectangle area, Shape shape, boolean onStroke) {
        Shape drawn = onStroke ? stroke.createStrokedShape(shape) : shape;
        return transform.createTransformedShape(drawn).intersects(area);
    }

    @Override
    public Graphics create() {
        return new SvgGraphics(this);
    }

    @Override
    public void dispose() {}

    @Override
    public GraphicsConfiguration getDeviceConfiguration() {
        return measure.getDeviceConfiguration();
    }

    @Override
    public FontMetrics getFontMetrics(Font measured) {
        return measure.getFontMetrics(measured);
    }

    @Override
    public FontRenderContext getFontRenderContext() {
        return measure.getFontRenderContext();
    }

    @Override
    public Shape getClip() {
        return clip == null ? null : inUserSpace(clip);
    }

    private Shape inUserSpace(Shape shape) {
        if (transform.isIdentity()) {
            return shape;
        }
        try {
            return transform.createInverse().createTransformedShape(shape);
        } catch (NoninvertibleTransformException flat) {
            return new Rectangle2D.Double();
        }
    }

    @Override
    public void setClip(Shape shape) {
        clip = shape == null
                ? null
                : transform.isIdentity() && shape instanceof Rectangle2D box
                        ? box.getBounds2D()
                        : new Area(transform.createTransformedShape(shape));
    }

    @Override
    public void clip(Shape shape) {
        Shape before = clip;
        setClip(shape);
        if (before instanceof Rectangle2D one && clip instanceof Rectangle2D other) {
            Rectangle2D both = one.createIntersection(other);
            clip = both.isEmpty() ? new Rectangle2D.Double(both.getX(), both.getY(), 0, 0) : both;
        } else if (before != null) {
            Area both = new Area(before);
            both.intersect(new Area(clip));
            clip = both;
        }
    }

    @Override
    public void clipRect(int x, int y, int width, int height) {
        clip(new Rectangle(x, y, width, height));
    }

    @Override
    public void setClip(int x, int y, int width, int height) {
        setClip(new Rectangle(x, y, width, height));
    }

    @Override
    public Rectangle getClipBounds() {
        return clip == null ? null : getClip().getBounds();
    }

    @Override
    public void setPaint(Paint wanted) {
        paint = wanted == null ? paint : wanted;
    }

    @Override
    public Paint getPaint() {
        return paint;
    }

    @Override
    public void setColor(Color colour) {
        setPaint(colour);
    }

    @Override
    public Color getColor() {
        return paint instanceof Color colour ? colour : Color.BLACK;
    }

    @Override
    public void setBackground(Color colour) {
        background = colour;
    }

    @Override
    public Color getBackground() {
        return background;
    }

    @Override
    public void setStroke(Stroke pen) {
        stroke = pen;
    }

    @Override
    public Stroke getStroke() {
        return stroke;
    }

    @Override
    public void setComposite(Composite wanted) {
        composite = wanted;
    }

    @Override
    public Composite getComposite() {
        return composite;
    }

    @Override
    public void setFont(Font wanted) {
        font = wanted == null ? font : wanted;
    }

    @Override
    public Font getFont() {
        return font;
    }

    @Override
    public void setPaintMode() {
        composite = AlphaComposite.SrcOver;
    }

    @Override
    public void setXORMode(Color colour) {
        throw new UnsupportedOperationException("SVG has no exclusive-or");
    }

    @Override
    public void setRenderingHint(RenderingHints.Key key, Object value) {
        hints.put(key, value);
    }

    @Override
    public Object getRenderingHint(RenderingHints.Key key) {
        return hints.get(key);
    }

    @Override
    public void setRenderingHints(Map<?, ?> wanted) {
        hints.clear();
        hints.putAll(wanted);
    }

    @Override
    public void addRenderingHints(Map<?, ?> more) {
        hints.putAll(more);
    }

    @Override
    public RenderingHints getRenderingHints() {
        return (RenderingHints) hints.clone();
    }

    @Override
    public void setTransform(AffineTransform wanted) {
        transform = new AffineTransform(wanted);
    }

    @Override
    public AffineTransform getTransform() {
        return new AffineTransform(transform);
    }

    @Override
    public void transform(AffineTransform more) {
        transform.concatenate(more);
    }

    @Override
    public void translate(int x, int y) {
        transform.translate(x, y);
    }

    @Override
    public void translate(double x, double y) {
        transform.translate(x, y);
    }

    @Override
    public void rotate(double angle) {
        transform.rotate(angle);
    }

    @Override
    public void rotate(double angle, double x, double y) {
        transform.rotate(angle, x, y);
    }

    @Override
    public void scale(double x, double y) {
        transform.scale(x, y);
    }

    @Override
    public void shear(double x, double y) {
        transform.shear(x, y);
    }

    @Override
    public void drawLine(int x1, int y1, int x2, int y2) {
        draw(new Line2D.Double(x1, y1, x2, y2));
    }

    @Override
    public void fillRect(int x, int y, int width, int height) {
        fill(new Rectangle(x, y, width, height));
    }

    @Override
    public void clearRect(int x, int y, int width, int height) {
        Paint before = paint;
        paint = background;
        fillRect(x, y, width, height);
        paint = before;
    }

    @Override
    public void drawRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        draw(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void fillRoundRect(int x, int y, int width, int height, int arcWidth, int arcHeight) {
        fill(new RoundRectangle2D.Double(x, y, width, height, arcWidth, arcHeight));
    }

    @Override
    public void drawOval(int x, int y, int width, int height) {
        draw(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void fillOval(int x, int y, int width, int height) {
        fill(new Ellipse2D.Double(x, y, width, height));
    }

    @Override
    public void drawArc(int x, int y, int width, int height, int from, int angle) {
        draw(new Arc2D.Double(x, y, width, height, from, angle, Arc2D.OPEN));
    }

    @Override
    public void fillArc(int x, int y, int width, int height, int from, int angle) {
        fill(new Arc2D.Double(x, y, width, height, from, angle, Arc2D.PIE));
    }

    @Override
    public void drawPolyline(int[] x, int[] y, int points) {
        draw(polygon(x, y, points, false));
    }

    @Override
    public void drawPolygon(int[] x, int[] y, int points) {
        draw(polygon(x, y, points, true));
    }

    @Override
    public void fillPolygon(int[] x, int[] y, int points) {
        fill(polygon(x, y, points, true));
    }

    private static Path2D polygon(int[] x, int[] y, int points, boolean closed) {
        Path2D path = new Path2D.Double(Path2D.WIND_EVEN_ODD);
        for (int i = 0; i < points; i++) {
            if (i == 0) {
                path.moveTo(x[i], y[i]);
            } else {
                path.lineTo(x[i], y[i]);
            }
        }
        if (closed && points > 0) {
            path.closePath();
        }
        return path;
    }

    @Override
    public void copyArea(int x, int y, int width, int height, int dx, int dy) {
        throw new UnsupportedOperationException("SVG cannot copy what is drawn");
    }
}
