package dev.lapwright.architecture;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackages;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Habits that hold in every module. */
class HabitsTest {
    private static final int LONGEST_FILE = 400;

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
    void sourceFilesStaySmall() throws IOException {
        List<String> tooLong = new ArrayList<>();
        List<Path> files = House.sourceFiles("main");
        for (Path file : files) {
            int lines = Files.readAllLines(file).size();
            if (lines > LONGEST_FILE) {
                tooLong.add(House.TOP.relativize(file) + " has " + lines + " lines");
            }
        }
        assertThat(files).isNotEmpty();
        assertThat(tooLong)
                .as("files of more than %d lines: split them by subject", LONGEST_FILE)
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
