package org.climbwatch;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.simpleName;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaPackage;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.time.Clock;
import java.time.Instant;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;

/** Holds the arrows of the design. */
@AnalyzeClasses(packages = "org.climbwatch", importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {
  private static final String[] CORE = {
    "..reading..", "..thermocouple..", "..signal..", "..firing..", "..alarm..", "..watch.."
  };
  private static final String[] JDK = {
    "java.lang..", "java.util", "java.util.function", "java.util.stream", "java.time"
  };
  private static final Set<String> ROOMS =
      Set.of(
          "alarm",
          "app",
          "app.config",
          "app.trial",
          "export",
          "firing",
          "journal",
          "reading",
          "signal",
          "source",
          "source.modbus",
          "source.port",
          "source.recorded",
          "source.scpi",
          "source.serial",
          "source.simulated",
          "source.spi",
          "thermocouple",
          "watch",
          "web");

  /** The one class that reads a text of the jar, always the same. */
  private static final String RESOURCE_READER = "CoefficientFile";

  @ArchTest
  static final ArchRule coreKnowsItselfAndAQuietCornerOfTheJdk =
      classes()
          .that(resideInAnyPackage(CORE).and(not(simpleName(RESOURCE_READER))))
          .should()
          .onlyDependOnClassesThat(resideInAnyPackage(CORE).or(resideInAnyPackage(JDK)));

  @ArchTest
  static final ArchRule coreHasNoClockThreadOrDice =
      noClasses()
          .that()
          .resideInAnyPackage(CORE)
          .should()
          .dependOnClassesThat()
          .areAssignableTo(Clock.class)
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Thread.class)
          .orShould()
          .dependOnClassesThat()
          .areAssignableTo(Random.class)
          .orShould()
          .callMethod(Instant.class, "now")
          .orShould()
          .callMethod(Math.class, "random")
          .orShould()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis");

  @ArchTest static final ArchRule readingUsesNothing = onlyUses("reading");

  @ArchTest static final ArchRule thermocoupleUsesNothing = onlyUses("thermocouple");

  @ArchTest static final ArchRule signalUsesReading = onlyUses("signal", "reading");

  @ArchTest static final ArchRule firingUsesReading = onlyUses("firing", "reading");

  @ArchTest
  static final ArchRule alarmUsesValues = onlyUses("alarm", "reading", "signal", "firing");

  @ArchTest static final ArchRule journalKnowsNoOtherEdge = edge("journal");

  @ArchTest static final ArchRule webKnowsNoOtherEdge = edge("web");

  @ArchTest static final ArchRule exportKnowsNoOtherEdge = edge("export");

  @ArchTest static final ArchRule serialKnowsNoOtherEdge = edge("source.serial");

  @ArchTest static final ArchRule portKnowsNoOtherEdge = edge("source.port");

  @ArchTest static final ArchRule modbusKnowsNoOtherEdge = edge("source.modbus");

  @ArchTest static final ArchRule scpiKnowsNoOtherEdge = edge("source.scpi");

  /** So that its classes are loaded only when such a probe is configured. */
  @ArchTest
  static final ArchRule onlyModbusUsesItsLibrary =
      noClasses()
          .that(not(resideInAPackage("org.climbwatch.source.modbus")))
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.digitalpetri..");

  @ArchTest static final ArchRule spiKnowsNoOtherEdge = edge("source.spi");

  @ArchTest static final ArchRule recordedKnowsNoOtherEdge = edge("source.recorded");

  @ArchTest static final ArchRule simulatedKnowsNoOtherEdge = edge("source.simulated");

  @ArchTest
  static final ArchRule roomsAreFreeOfCycles =
      slices().matching("org.climbwatch.(**)").should().beFreeOfCycles();

  @ArchTest
  static void everyRoomIsOnThePlan(JavaClasses all) {
    Set<String> found = new TreeSet<>();
    JavaPackage root = all.getPackage("org.climbwatch");
    for (JavaPackage each : root.getSubpackagesInTree()) {
      if (!each.getClasses().isEmpty()) {
        found.add(each.getName().substring("org.climbwatch.".length()));
      }
    }
    assertThat(found).isEqualTo(new TreeSet<>(ROOMS));
  }

  private static ArchRule onlyUses(String room, String... others) {
    String[] allowed = new String[others.length + 1];
    allowed[0] = "org.climbwatch." + room;
    for (int i = 0; i < others.length; i++) {
      allowed[i + 1] = "org.climbwatch." + others[i];
    }
    return noClasses()
        .that()
        .resideInAPackage("org.climbwatch." + room)
        .should()
        .dependOnClassesThat(
            resideInAPackage("org.climbwatch..").and(not(resideInAnyPackage(allowed))));
  }

  private static ArchRule edge(String room) {
    String own = "org.climbwatch." + room;
    return noClasses()
        .that()
        .resideInAPackage(own + "..")
        .should()
        .dependOnClassesThat(
            resideInAPackage("org.climbwatch..")
                .and(not(resideInAnyPackage(CORE)))
                .and(not(resideInAPackage(own + "..")))
                .and(not(resideInAPackage("org.climbwatch.source")))
                .and(not(resideInAPackage("org.climbwatch.source.port"))));
  }
}
