package org.amperskin;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.Architectures.LayeredArchitecture;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which room of {@code mesh-core} may import which, as rules for any root package, so that the same
 * rules can be shown faulty rooms.
 *
 * <p>Definition: a room may import the rooms named beside it and all that these may import.
 */
final class Floors {
  /** Room, then the rooms right below it; lower floors come first. */
  private static final Map<String, List<String>> TABLE = new LinkedHashMap<>();

  static {
    TABLE.put("units", List.of());
    TABLE.put("geom", List.of("units"));
    TABLE.put("yaml", List.of("units"));
    TABLE.put("plating", List.of("yaml"));
    TABLE.put("mesh", List.of("geom"));
    TABLE.put("linear", List.of());
    TABLE.put("unroll", List.of("mesh", "linear"));
    TABLE.put("pattern", List.of("geom"));
    TABLE.put("pattern.motif", List.of("pattern"));
    TABLE.put("grid", List.of("geom"));
    TABLE.put("bench", List.of("plating"));
    TABLE.put("io.common", List.of("mesh"));
    TABLE.put("io.stl", List.of("io.common"));
    TABLE.put("io.obj", List.of("io.common"));
    TABLE.put("io.ply", List.of("io.common"));
    TABLE.put("io.threemf", List.of("io.common"));
    TABLE.put("io", List.of("io.stl", "io.obj", "io.ply", "io.threemf"));
    TABLE.put("skin", List.of("mesh", "grid"));
    TABLE.put("region", List.of("skin", "pattern", "unroll"));
    TABLE.put("field", List.of("region", "plating", "grid", "linear"));
    TABLE.put("film", List.of("region"));
    TABLE.put("picture", List.of("region"));
    TABLE.put("job", List.of("io", "bench", "field", "film", "picture", "pattern.motif"));
    TABLE.put("report", List.of("job"));
  }

  private Floors() {}

  /** The rooms, lower ones first. */
  static List<String> rooms() {
    return List.copyOf(TABLE.keySet());
  }

  /** All rooms that a room may import. */
  static Set<String> below(String room) {
    Set<String> found = new TreeSet<>();
    for (String direct : TABLE.get(room)) {
      found.add(direct);
      found.addAll(below(direct));
    }
    return found;
  }

  /**
   * A lower room never imports a higher one or a sibling, and no class stands outside the rooms.
   */
  static ArchRule floors(String root) {
    LayeredArchitecture rule = layeredArchitecture().consideringOnlyDependenciesInLayers();
    for (String room : rooms()) {
      rule = rule.optionalLayer(room).definedBy(root + "." + room);
    }
    for (String room : rooms()) {
      Set<String> below = below(room);
      rule =
          below.isEmpty()
              ? rule.whereLayer(room).mayNotAccessAnyLayer()
              : rule.whereLayer(room).mayOnlyAccessLayers(below.toArray(new String[0]));
    }
    return rule.ensureAllClassesAreContainedInArchitecture();
  }

  /** Packages do not import each other in a ring. */
  static ArchRule noRings(String root) {
    return slices().matching(root + ".(**)").should().beFreeOfCycles();
  }

  /** The physics can be checked with no file and no mesh in sight. */
  static ArchRule platingKnowsNoMeshAndNoFile(String root) {
    return noClasses()
        .that()
        .resideInAPackage(root + ".plating..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            root + ".mesh..",
            root + ".geom..",
            root + ".io..",
            "java.nio.file..",
            "java.nio.channels..")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.io.File");
  }

  /** Results do not depend on the clock. */
  static ArchRule noClock() {
    return noClasses().should().accessTargetWhere(access("the clock is read", Floors::readsClock));
  }

  /** Results do not depend on chance without a seed. */
  static ArchRule noUnseededChance() {
    return noClasses()
        .should()
        .accessTargetWhere(access("chance without a seed is used", Floors::rollsDice));
  }

  /** No statics that change. */
  static ArchRule staticsAreFinal() {
    return fields().that().areStatic().should().beFinal();
  }

  private static DescribedPredicate<JavaAccess<?>> access(
      String what, java.util.function.Predicate<AccessTarget> test) {
    return describe(what, a -> test.test(a.getTarget()));
  }

  private static boolean readsClock(AccessTarget target) {
    String owner = target.getOwner().getName();
    String name = target.getName();
    boolean systemClock =
        owner.equals("java.lang.System") && List.of("nanoTime", "currentTimeMillis").contains(name);
    boolean timeNow =
        owner.startsWith("java.time.") && (name.equals("now") || name.startsWith("system"));
    return systemClock || timeNow || builtEmpty(target, "java.util.Date");
  }

  private static boolean rollsDice(AccessTarget target) {
    String owner = target.getOwner().getName();
    List<String> always =
        new ArrayList<>(
            List.of("java.util.concurrent.ThreadLocalRandom", "java.security.SecureRandom"));
    boolean math = owner.equals("java.lang.Math") && target.getName().equals("random");
    boolean uuid = owner.equals("java.util.UUID") && target.getName().equals("randomUUID");
    boolean shuffle = target.getFullName().equals("java.util.Collections.shuffle(java.util.List)");
    return always.contains(owner)
        || math
        || uuid
        || shuffle
        || builtEmpty(target, "java.util.Random")
        || builtEmpty(target, "java.util.SplittableRandom");
  }

  private static boolean builtEmpty(AccessTarget target, String type) {
    return target.getFullName().equals(type + ".<init>()");
  }
}
