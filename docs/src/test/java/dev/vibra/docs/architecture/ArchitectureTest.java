package dev.vibra.docs.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** What holds for the four library modules as a whole. */
class ArchitectureTest {
    private static final Map<String, Set<String>> MAY_USE = Map.of("vibra-core", Set.of(),
            "vibra-bearing", Set.of("vibra-core"), "vibra-balance", Set.of("vibra-core"),
            "vibra-iso", Set.of("vibra-core", "vibra-bearing", "vibra-balance"));

    private static final JavaClasses LIBRARY = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .withImportOption(location -> MAY_USE.keySet().stream().anyMatch(location::contains))
            .importPackages("dev.vibra");

    @Test
    void allFourModulesAreSeen() {
        Set<String> seen = LIBRARY.stream().map(ArchitectureTest::module).collect(Collectors.toSet());
        assertEquals(MAY_USE.keySet(), seen);
        assertTrue(LIBRARY.size() > 50, "classes seen: " + LIBRARY.size());
    }

    @Test
    void modulesUseOnlyWhatTheDesignAllows() {
        List<String> breaches = new ArrayList<>();
        int dependencies = 0;
        for (JavaClass origin : LIBRARY) {
            for (Dependency dependency : origin.getDirectDependenciesFromSelf()) {
                JavaClass target = dependency.getTargetClass();
                if (LIBRARY.contain(target.getName())) {
                    dependencies++;
                    String from = module(origin);
                    String to = module(LIBRARY.get(target.getName()));
                    if (!from.equals(to) && !MAY_USE.get(from).contains(to)) {
                        breaches.add(dependency.getDescription());
                    }
                }
            }
        }
        assertTrue(dependencies > 100, "dependencies seen: " + dependencies);
        assertEquals(List.of(), breaches);
    }

    @Test
    void packagesHaveNoCyclesAndOneModuleEach() {
        slices().matching("dev.vibra.(**)").should().beFreeOfCycles().check(LIBRARY);
        Map<String, Set<String>> modules = LIBRARY.stream().collect(Collectors.groupingBy(JavaClass::getPackageName,
                Collectors.mapping(ArchitectureTest::module, Collectors.toCollection(TreeSet::new))));
        modules.forEach((name, where) -> assertEquals(1, where.size(), name + " is split over " + where));
    }

    /** With wildcard imports, as pages and JShell have them, a name that stands twice doesn't compile. */
    @Test
    void noTwoPublicTypesShareASimpleName() {
        Map<String, Set<String>> packages = LIBRARY.stream()
                .filter(type -> type.isTopLevelClass() && type.getModifiers().contains(JavaModifier.PUBLIC))
                .collect(Collectors.groupingBy(JavaClass::getSimpleName, TreeMap::new,
                        Collectors.mapping(JavaClass::getPackageName, Collectors.toCollection(TreeSet::new))));
        assertTrue(packages.size() > 100, "names seen: " + packages.size());
        packages.values().removeIf(places -> places.size() == 1);
        assertEquals(Map.of(), packages);
    }

    @Test
    void onlyThePackageIoTouchesFiles() {
        noClasses().that().resideOutsideOfPackage("dev.vibra.io")
                .should().dependOnClassesThat().resideInAnyPackage("java.nio.file..", "java.nio.channels..",
                "java.net..")
                .orShould().dependOnClassesThat(named("java.io.File", "java.io.FileInputStream",
                "java.io.FileOutputStream",
                        "java.io.FileReader", "java.io.FileWriter", "java.io.RandomAccessFile"))
                .check(LIBRARY);
    }

    @Test
    void nothingPrintsLogsStartsThreadsOrChangesTheHost() {
        noClasses().should().dependOnClassesThat().resideInAnyPackage("java.util.logging..", "java.util.concurrent..",
                "java.lang.ref..", "sun..", "com.sun..", "java.awt..", "javax..")
                .orShould().dependOnClassesThat(named("java.lang.Thread", "java.lang.ThreadLocal", "java.util.Timer",
                        "java.lang.Runtime", "java.lang.ProcessBuilder", "java.util.TimeZone"))
                .check(LIBRARY);
        noClasses().should().callMethodWhere(calls("java.lang.System", Set.of("setProperty", "exit", "gc", "getenv",
                "getProperty", "setOut", "setErr", "currentTimeMillis", "nanoTime"))).check(LIBRARY);
        noClasses().should().accessField(System.class, "out").orShould()
                .accessField(System.class, "err").check(LIBRARY);
    }

    @Test
    void noStaticStateCanChange() {
        fields().that().areStatic().should().beFinal().check(LIBRARY);
    }

    @Test
    void nothingDependsOnTheDefaultLocaleOrCharset() {
        noClasses().should().callMethod(String.class, "format", String.class, Object[].class)
                .orShould().callMethod(String.class, "formatted", Object[].class)
                .orShould().callMethod(String.class, "toLowerCase")
                .orShould().callMethod(String.class, "toUpperCase")
                .orShould().callMethod(String.class, "getBytes")
                .orShould().callMethod("java.util.Locale", "getDefault")
                .orShould().callMethod("java.nio.charset.Charset", "defaultCharset")
                .check(LIBRARY);
    }

    /** Code outside the transform package doesn't know which library does the short transforms. */
    @Test
    void transformsHaveOneSeam() {
        noClasses().that().resideOutsideOfPackage("dev.vibra.transform")
                .should().dependOnClassesThat().resideInAnyPackage("org.jtransforms..", "pl.edu.icm..").check(LIBRARY);
    }

    private static String module(JavaClass type) {
        String place = type.getSource().orElseThrow().getUri().toString();
        return MAY_USE.keySet().stream().filter(place::contains).findFirst().orElseThrow();
    }

    private static DescribedPredicate<JavaClass> named(String... names) {
        Set<String> wanted = Set.of(names);
        return DescribedPredicate.describe("are " + new TreeSet<>(wanted), type -> wanted.contains(type.getName()));
    }

    private static DescribedPredicate<JavaCall<?>> calls(String owner, Set<String> methods) {
        return DescribedPredicate.describe("calls of " + new TreeSet<>(methods), call ->
                call.getTargetOwner().getName().equals(owner) && methods.contains(call.getTarget().getName()));
    }
}
