package dev.lapwright.charts.plot;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import org.junit.jupiter.api.Test;

class LabelSpaceTest {
    @Test
    void takenPlaceIsNotFreeWithinTheGap() {
        LabelSpace space = new LabelSpace();
        space.take(new Rectangle2D.Double(100, 100, 50, 10));
        assertThat(space.isFree(new Rectangle2D.Double(153, 100, 20, 10), 2)).isTrue();
        assertThat(space.isFree(new Rectangle2D.Double(153, 100, 20, 10), 4)).isFalse();
    }

    @Test
    void labelMayNotLieAcrossALine() {
        LabelSpace space = new LabelSpace();
        space.takeLine(new Line2D.Double(0, 0, 300, 150));
        assertThat(space.isFree(new Rectangle2D.Double(140, 65, 30, 12), 0)).isFalse();
        assertThat(space.isFree(new Rectangle2D.Double(140, 95, 30, 12), 0)).isTrue();
    }

    @Test
    void lineThroughALabelIsNoticed() {
        LabelSpace space = new LabelSpace();
        space.take(new Rectangle2D.Double(100, 100, 50, 12));
        assertThat(space.isCrossedBy(new Line2D.Double(120, 0, 130, 300))).isTrue();
        assertThat(space.isCrossedBy(new Line2D.Double(160, 0, 160, 300))).isFalse();
    }

    @Test
    void laterChangesOfARectangleDoNotMoveWhatIsTaken() {
        LabelSpace space = new LabelSpace();
        Rectangle2D place = new Rectangle2D.Double(0, 0, 10, 10);
        space.take(place);
        place.setRect(500, 500, 1, 1);
        assertThat(space.isFree(new Rectangle2D.Double(2, 2, 3, 3), 0)).isFalse();
    }
}
