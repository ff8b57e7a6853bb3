package dev.lapwright.study.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.lapwright.study.sweep.SweepAxis;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PlanDesignTest {
    private static final SweepAxis WING = new SweepAxis("rear-wing", new double[] {2, 4, 6});
    private static final SweepAxis MASS = new SweepAxis("chassis.massKg", new double[] {1200, 1250});

    private static SweepAxis quarters(String name) {
        return new SweepAxis(name, new double[] {0, 1, 2, 3});
    }

    private static List<double[]> all(PlanDesign design) {
        List<double[]> all = new ArrayList<>();
        for (long i = 0; i < design.count(); i++) {
            all.add(design.values(i));
        }
        return all;
    }

    @Test
    void aGridHasAllCombinationsTheLastAxisFastest() {
        assertThat(all(PlanDesign.grid(List.of(WING, MASS))))
                .containsExactly(
                        new double[] {2, 1200},
                        new double[] {2, 1250},
                        new double[] {4, 1200},
                        new double[] {4, 1250},
                        new double[] {6, 1200},
                        new double[] {6, 1250});
    }

    @Test
    void aGridOfNothingIsOnePoint() {
        assertThat(all(PlanDesign.grid(List.of()))).containsExactly(new double[0]);
    }

    /** By the definition of a Latin hypercube: of 40 points ten fall in each quarter of each axis. */
    @Test
    void aLatinHypercubeIsEvenOnEachAxis() {
        PlanDesign design = PlanDesign.latinHypercube(List.of(quarters("a"), quarters("b"), quarters("c")), 40, 7);
        for (int axis = 0; axis < 3; axis++) {
            int k = axis;
            for (int value = 0; value < 4; value++) {
                double wanted = value;
                assertThat(all(design).stream().filter(point -> point[k] == wanted))
                        .hasSize(10);
            }
        }
        assertThat(all(PlanDesign.latinHypercube(design.axes(), 40, 7))).containsExactlyElementsOf(all(design));
        assertThat(all(PlanDesign.latinHypercube(design.axes(), 40, 8))).isNotEqualTo(all(design));
    }

    /** The first points of a Sobol sequence in two dimensions, (0, 0), (1/2, 1/2), (3/4, 1/4), (1/4, 3/4): Joe and Kuo, from memory. */
    @Test
    void aSobolSequenceBeginsAsPublished() {
        assertThat(all(PlanDesign.sobol(List.of(quarters("a"), quarters("b")), 4)))
                .containsExactly(new double[] {0, 0}, new double[] {2, 2}, new double[] {3, 1}, new double[] {1, 3});
    }

    /** Sixteen points of it fall once in each of sixteen squares: a (0, 4, 2)-net, as the sequence is built. */
    @Test
    void aSobolSequenceFillsTheRoom() {
        List<String> met = all(PlanDesign.sobol(List.of(quarters("a"), quarters("b")), 16)).stream()
                .map(point -> (int) point[0] + " " + (int) point[1])
                .toList();
        assertThat(met)
                .containsExactlyInAnyOrderElementsOf(IntStream.range(0, 16)
                        .mapToObj(i -> i / 4 + " " + i % 4)
                        .toList());
    }

    @Test
    void whatIsNoDesignIsRefused() {
        assertThatThrownBy(() -> PlanDesign.grid(List.of(WING, WING))).hasMessageContaining("varied twice");
        assertThatThrownBy(() -> PlanDesign.sobol(List.of(WING), 0)).hasMessageContaining("points");
        assertThatThrownBy(() -> PlanDesign.latinHypercube(List.of(), 5, 1)).hasMessageContaining("nothing is varied");
        assertThatThrownBy(() -> PlanDesign.grid(List.of(WING)).values(3)).hasMessageContaining("no point");
    }
}
