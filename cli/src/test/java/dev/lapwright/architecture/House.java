package dev.lapwright.architecture;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** The compiled classes and the sources of all modules, and which package belongs to which module. */
final class House {
    /** The packages of core from the ground up: a package may import those before it, never those after it. */
    static final List<String> CORE_FROM_THE_GROUND_UP = List.of(
            "fault",
            "numerics",
            "air",
            "track",
            "tyre",
            "aero",
            "powertrain",
            "chassis",
            "car",
            "lap",
            "slip",
            "line",
            "study",
            "fit",
            "ride",
            "evidence",
            "doubt",
            "sense",
            "draft",
            "study.*",
            "brief");
    /** What all studies share; the studies themselves, a package each, lie above what they ask. */
    private static final String SHARED_BY_STUDIES = "study";

    /** The packages of shared from the ground up. */
    static final List<String> SHARED_FROM_THE_GROUND_UP = List.of(
            "report",
            "files",
            "text",
            "documents",
            "cache",
            "samples",
            "logs",
            "surveys",
            "notebook",
            "results",
            "inspection");

    /** The packages that no user of the library needs: exported to modules of ours at most. */
    private static final List<String> HIDDEN = List.of(
            "dev.lapwright.numerics",
            "dev.lapwright.text",
            "dev.lapwright.samples",
            "dev.lapwright.charts.plot",
            "dev.lapwright.charts.svg",
            "dev.lapwright.charts.map",
            "dev.lapwright.charts.distance");

    /** The top packages of the other modules that hold classes. */
    static final Map<String, List<String>> OTHER_MODULES =
            Map.of("shared", SHARED_FROM_THE_GROUND_UP, "charts", List.of("charts"), "cli", List.of("cli"));

    /** Surefire runs in the folder of the module, cli. */
    static final Path TOP = Path.of("").toAbsolutePath().getParent();

    private static final JavaClasses CLASSES = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("dev.lapwright");

    private House() {}

    static JavaClasses classes() {
        return CLASSES;
    }

    /** Whether a package is kept from users of the library. */
    static boolean isHidden(String name) {
        return HIDDEN.contains(name);
    }

    /** The package names of a module, each with all packages below it, as ArchUnit writes them. */
    static String[] packagesOf(String module) {
        List<String> names = module.equals("core") ? CORE_FROM_THE_GROUND_UP : OTHER_MODULES.get(module);
        return names.stream().map(House::withAllBelow).toArray(String[]::new);
    }

    static String withAllBelow(String name) {
        return "dev.lapwright." + name + (name.equals(SHARED_BY_STUDIES) ? "" : "..");
    }

    /** The module whose folder or jar a class was compiled into, whatever its package says. */
    static DescribedPredicate<JavaClass> compiledInto(String module) {
        return DescribedPredicate.describe("compiled into " + module, type -> {
            String source = type.getSource().orElseThrow().getUri().toString().toLowerCase(Locale.ROOT);
            return source.contains("/" + module + "/target/") || source.contains("/lapwright-" + module + ".jar!");
        });
    }

    /** Every source file of the kind (main, test or jmh) in every module. */
    static List<Path> sourceFiles(String kind) {
        List<Path> files = new ArrayList<>();
        try (Stream<Path> modules = Files.list(TOP)) {
            for (Path module : modules.sorted().toList()) {
                Path folder = module.resolve("src").resolve(kind).resolve("java");
                if (Files.isDirectory(folder)) {
                    try (Stream<Path> found = Files.walk(folder)) {
                        found.filter(file -> file.toString().endsWith(".java"))
                                .sorted()
                                .forEach(files::add);
                    }
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return files;
    }
}
