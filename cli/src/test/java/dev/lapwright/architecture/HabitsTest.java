package dev.lapwright.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Habits that hold in every module. */
class HabitsTest {
    /** Of a package of one module; a file is as long as its subject. */
    private static final int MOST_FILES = 40;

    private static final int MOST_PARAMETERS = 9;
    private static final int MOST_COMPONENTS = 19;

    @Test
    void onlyTheCommandPrintsOrExits() {
        noClasses()
                .that(resideOutsideOfPackages(House.packagesOf("cli")))
                .should()
                .accessTargetWhere(printingOrExiting())
                .because("a library never prints, and never ends the program that embeds it")
                .check(House.classes());
    }

    @Test
    void aStackTraceIsNeverPrintedUnasked() {
        noClasses()
                .that(resideOutsideOfPackages(House.packagesOf("cli")))
                .should()
                .accessTargetWhere(printingAStackTrace(false))
                .because("an error is one clear line")
                .check(House.classes());
        noClasses()
                .should()
                .accessTargetWhere(printingAStackTrace(true))
                .because("only the command may, when it is asked to, and to where it prints everything else")
                .check(House.classes());
    }

    @Test
    void nobodyLogs() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.util.logging..", "org.slf4j..", "java.lang.System$Logger")
                .check(House.classes());
    }

    @Test
    void classesAreNamedForWhatTheyAre() {
        noClasses()
                .should()
                .haveNameMatching(".*(Util|Utils|Utility|Utilities|Manager|Helper|Helpers)(\\$.*)?")
                .because("such a name says nothing of the subject")
                .check(House.classes());
    }

    @Test
    void nothingStaticChanges() {
        fields().that()
                .areStatic()
                .should()
                .beFinal()
                .because("two configurations run side by side in one process")
                .check(House.classes());
    }

    @Test
    void faultsAreOfOurFamilyNotBareRuntimeExceptions() {
        GeneralCodingRules.NO_CLASSES_SHOULD_THROW_GENERIC_EXCEPTIONS.check(House.classes());
    }

    @Test
    void noSignatureIsALongList() {
        List<String> tooLong = House.classes().stream()
                .flatMap(of -> of.getCodeUnits().stream())
                .filter(unit -> unit.getModifiers().stream().noneMatch(JavaModifier.SYNTHETIC::equals))
                .filter(unit -> parameters(unit) > most(unit))
                // Java and JFreeChart want these so.
                .filter(unit -> !Set.of("drawImage", "drawItem").contains(unit.getName()))
                .map(unit -> unit.getFullName() + " has " + parameters(unit))
                .toList();
        assertThat(tooLong)
                .as("parameters in a row: what belongs together asks for a record")
                .isEmpty();
    }

    /** Of a record as many as it has components, which are named where they are read. */
    private static int most(JavaCodeUnit unit) {
        return unit.isConstructor() && unit.getOwner().isRecord() ? MOST_COMPONENTS : MOST_PARAMETERS;
    }

    /** The compiler puts name and place before those of an enum's constructor. */
    private static int parameters(JavaCodeUnit unit) {
        boolean counted = unit.isConstructor() && unit.getOwner().isEnum();
        return unit.getRawParameterTypes().size() - (counted ? 2 : 0);
    }

    @Test
    void aPackageShowsTheWay() {
        Map<String, List<String>> byPackage = House.sourceFiles("main").stream()
                .map(file ->
                        House.TOP.relativize(file.getParent()).toString().replace("src/main/java/dev/lapwright/", ""))
                .collect(Collectors.groupingBy(name -> name, TreeMap::new, Collectors.toList()));
        List<String> tooMany = byPackage.entrySet().stream()
                .filter(entry -> entry.getValue().size() > MOST_FILES)
                .map(entry -> entry.getKey() + " has " + entry.getValue().size() + " files")
                .toList();
        assertThat(byPackage).isNotEmpty();
        assertThat(tooMany)
                .as("packages of more than %d files: split them by subject", MOST_FILES)
                .isEmpty();
    }

    private static DescribedPredicate<JavaAccess<?>> printingAStackTrace(boolean onlyToStandardError) {
        return DescribedPredicate.describe(
                onlyToStandardError ? "printStackTrace() to standard error" : "printStackTrace of a Throwable",
                access -> access.getName().equals("printStackTrace")
                        && access.getTargetOwner().isAssignableTo(Throwable.class)
                        && !(onlyToStandardError && takesArguments(access)));
    }

    private static boolean takesArguments(JavaAccess<?> access) {
        return access.getTarget() instanceof CodeUnitAccessTarget target
                && !target.getRawParameterTypes().isEmpty();
    }

    private static DescribedPredicate<JavaAccess<?>> printingOrExiting() {
        Set<String> loud = Set.of("out", "err", "in", "exit", "halt", "console");
        return DescribedPredicate.describe(
                "System.out, err, in, console, exit or halt",
                access -> (access.getTargetOwner().isEquivalentTo(System.class)
                                || access.getTargetOwner().isEquivalentTo(Runtime.class))
                        && loud.contains(access.getName()));
    }
}
