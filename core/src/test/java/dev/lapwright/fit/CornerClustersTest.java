package dev.lapwright.fit;

import static org.assertj.core.api.Assertions.assertThat;

import dev.lapwright.track.Corner;
import dev.lapwright.track.StationSpacing;
import dev.lapwright.track.Stations;
import org.junit.jupiter.api.Test;

class CornerClustersTest {
    private static final Stations LONG = FitScene.longCircuit().stations(StationSpacing.DEFAULT);

    private static int cell(double place, int cells) {
        return (int) Math.floor(place / LONG.track().length() * cells);
    }

    @Test
    void eachApexLiesInItsOwnStretch() {
        int[] clusters = CornerClusters.of(LONG, 1000);
        for (int k = 0; k < LONG.corners().size(); k++) {
            assertThat(clusters[cell(LONG.corners().get(k).apex(), 1000)]).isEqualTo(k);
        }
    }

    @Test
    void aStraightIsSharedInItsMiddle() {
        int[] clusters = CornerClusters.of(LONG, 1000);
        Corner first = LONG.corners().get(0);
        Corner second = LONG.corners().get(1);
        double middle = (first.exit() + second.entry()) / 2;
        // A cell to each side of the one with the middle in it.
        assertThat(clusters[cell(middle, 1000) - 1]).isZero();
        assertThat(clusters[cell(middle, 1000) + 1]).isEqualTo(1);
    }

    @Test
    void allCellsHaveAStretchAndNoneIsCutInTwoButByTheStartLine() {
        int[] clusters = CornerClusters.of(LONG, 1000);
        int cuts = 0;
        for (int c = 0; c < 1000; c++) {
            cuts += clusters[c] != clusters[(c + 1) % 1000] ? 1 : 0;
        }
        assertThat(cuts).isEqualTo(LONG.corners().size());
    }
}
