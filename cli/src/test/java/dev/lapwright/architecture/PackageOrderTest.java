package dev.lapwright.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;
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

    /** From no package a way of imports leads back to it. */
    @Test
    void noTwoPackagesImportEachOther() {
        Map<String, Set<String>> imports = new TreeMap<>();
        for (JavaClass one : House.classes()) {
            Set<String> to = imports.computeIfAbsent(one.getPackageName(), name -> new TreeSet<>());
            one.getDirectDependenciesFromSelf().stream()
                    .map(dependency -> dependency.getTargetClass().getPackageName())
                    .filter(name -> name.startsWith("dev.lapwright.") && !name.equals(one.getPackageName()))
                    .forEach(to::add);
        }
        assertThat(imports).hasSizeGreaterThan(House.CORE_FROM_THE_GROUND_UP.size());
        // Whoever imports nothing that is left lies on no circle; those that stay when no such package is found do, or
        // import one.
        while (imports.values().removeIf(to -> to.stream().noneMatch(imports::containsKey))) {}
        assertThat(imports).as("packages that import each other").isEmpty();
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
