package dev.lapwright.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Inside core and shared a lower package never imports a higher one. */
class PackageOrderTest {
    @ParameterizedTest(name = "{0}")
    @MethodSource("packagesWithThoseAbove")
    void aPackageImportsNothingFromAbove(String name, List<String> above) {
        noClasses()
                .that()
                .resideInAPackage(House.withAllBelow(name))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(above.stream().map(House::withAllBelow).toArray(String[]::new))
                // A package may still be waiting for its first class.
                .allowEmptyShould(true)
                .check(House.classes());
    }

    @Test
    @Tag("heavy")
    void noTwoPackagesImportEachOther() {
        slices().matching("dev.lapwright.(**)").should().beFreeOfCycles().check(House.classes());
    }

    @Test
    void aLapIsSolvedOnOneThread() {
        noClasses()
                .that()
                .resideInAnyPackage(below("line"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.util.concurrent", "java.util.concurrent.locks..")
                .orShould()
                .dependOnClassesThat()
                .areAssignableTo(Thread.class)
                .because("parallelism belongs to studies, never to the solver")
                .check(House.classes());
    }

    private static Stream<Arguments> packagesWithThoseAbove() {
        return Stream.of(House.CORE_FROM_THE_GROUND_UP, House.SHARED_FROM_THE_GROUND_UP)
                .flatMap(order -> IntStream.range(0, order.size() - 1)
                        .mapToObj(i -> Arguments.of(order.get(i), order.subList(i + 1, order.size()))));
    }

    private static String[] below(String name) {
        List<String> order = House.CORE_FROM_THE_GROUND_UP;
        return order.subList(0, order.indexOf(name)).stream()
                .map(House::withAllBelow)
                .toArray(String[]::new);
    }
}
