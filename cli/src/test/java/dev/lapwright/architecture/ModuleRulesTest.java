package dev.lapwright.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static dev.lapwright.architecture.House.packagesOf;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who may know whom, module by module. */
class ModuleRulesTest {
    /** What Math offers that is no physics: comparing, rounding, whole-number arithmetic. */
    private static final Set<String> BOOKKEEPING = Set.of(
            "abs",
            "ceil",
            "clamp",
            "floor",
            "floorDiv",
            "floorMod",
            "max",
            "min",
            "rint",
            "round",
            "addExact",
            "multiplyExact",
            "subtractExact",
            "toIntExact",
            "negateExact");

    @ParameterizedTest
    @ValueSource(strings = {"core", "shared", "charts", "cli"})
    void eachModuleKeepsToItsOwnPackages(String module) {
        check(classes()
                .that(House.compiledInto(module))
                .should()
                .resideInAnyPackage(packagesOf(module))
                .because("a package split over two modules would open its package-private classes to the other one;"
                        + " a new package of core is entered in House.CORE_FROM_THE_GROUND_UP"));
    }

    @Test
    void coreDependsOnNothingButJavaAndNumerics() {
        check(classes()
                .that()
                .resideInAnyPackage(packagesOf("core"))
                .should()
                .onlyDependOnClassesThat(resideInAnyPackage(packagesOf("core"))
                        .or(resideInAnyPackage("java..", "org.apache.commons.math3..", "org.ejml..")))
                .because("others embed core: it knows no JSON, no charts, no command line"));
    }

    @Test
    void coreReadsNoFile() {
        check(noClasses()
                .that()
                .resideInAnyPackage(packagesOf("core"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.io..", "java.nio..", "java.net..", "java.util.zip..")
                .because("documents are read in shared"));
    }

    @Test
    void coreKnowsNoClockAndNoSystem() {
        check(noClasses()
                .that()
                .resideInAnyPackage(packagesOf("core"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.time..", "java.awt..", "java.sql..", "java.lang.reflect..")
                .orShould()
                .accessTargetWhere(systemCallsOtherThan("arraycopy", "getRuntime", "availableProcessors"))
                .because("the same inputs give the same result anywhere, at any time"));
    }

    @Test
    void sharedKnowsNoCharts() {
        check(noClasses()
                .that()
                .resideInAnyPackage(packagesOf("shared"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(packagesOf("charts"))
                .orShould()
                .dependOnClassesThat()
                .resideInAnyPackage("org.jfree..", "java.awt.."));
    }

    @Test
    void chartsKnowNoDocuments() {
        check(noClasses()
                .that()
                .resideInAnyPackage(packagesOf("charts"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(packagesOf("shared"))
                .orShould()
                .dependOnClassesThat()
                .resideInAnyPackage("com.fasterxml..", "com.networknt..", "org.apache.commons.csv.."));
    }

    @Test
    void nobodyDependsOnTheCommand() {
        check(noClasses()
                .that(resideOutsideOfPackages(packagesOf("cli")))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(packagesOf("cli"))
                .orShould()
                .dependOnClassesThat()
                .resideInAnyPackage("picocli.."));
    }

    @Test
    void theCommandHoldsNoPhysics() {
        check(noClasses()
                .that()
                .resideInAnyPackage(packagesOf("cli"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.apache.commons.math3..", "org.ejml..", "dev.lapwright.numerics..")
                .orShould()
                .accessTargetWhere(mathematics())
                .because("a studious user of the library can do all that the command does"));
    }

    @Test
    void theCommandDrawsOnlyThroughCharts() {
        check(noClasses()
                .that()
                .resideInAnyPackage(packagesOf("cli"))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.jfree..", "java.awt..")
                .because("what a chart looks like is decided in charts"));
    }

    @Test
    void onlySharedKnowsTheLibraryOfMaps() {
        check(noClasses()
                .that(resideOutsideOfPackages(packagesOf("shared")))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("net.sf.geographiclib..")
                .because("positions become metres on a plane where files are read"));
    }

    private static DescribedPredicate<JavaAccess<?>> mathematics() {
        return DescribedPredicate.describe(
                "a function of Math or StrictMath that computes",
                access -> isOneOf(access.getTargetOwner(), Math.class, StrictMath.class)
                        && !BOOKKEEPING.contains(access.getName()));
    }

    private static DescribedPredicate<JavaAccess<?>> systemCallsOtherThan(String... harmless) {
        return DescribedPredicate.describe(
                "System, beyond " + String.join(", ", harmless),
                access -> isOneOf(access.getTargetOwner(), System.class, Runtime.class)
                        && !Set.of(harmless).contains(access.getName()));
    }

    private static boolean isOneOf(JavaClass owner, Class<?>... types) {
        return Stream.of(types).anyMatch(owner::isEquivalentTo);
    }

    private static void check(ArchRule rule) {
        rule.check(House.classes());
    }
}
