package steadypull.demo;

import static com.tngtech.archunit.core.domain.JavaCall.Predicates.target;
import static com.tngtech.archunit.core.domain.properties.HasName.Predicates.nameMatching;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class DemoFloorsTest {
  private static final JavaClasses OURS =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("steadypull.demo");

  @Test
  void rulesSeeOurClasses() {
    assertThat(OURS).hasSizeGreaterThan(50);
  }

  @Test
  void onlyTheLinkPackageOfTheAdapterIsKnown() {
    classes()
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage(
            "steadypull.demo..", "steadypull.adapter.link", "java..", "org.jspecify.annotations")
        .check(OURS);
  }

  @Test
  void plantKnowsNothingOfTheProgram() {
    classes()
        .that()
        .resideInAPackage("..demo.plant")
        .should()
        .onlyDependOnClassesThat()
        .resideInAnyPackage("..demo.plant", "java.lang..", "java.util..", "org.jspecify..")
        .check(OURS);
  }

  @Test
  void packagesFormNoCycle() {
    slices().matching("steadypull.demo.(**)").should().beFreeOfCycles().check(OURS);
  }

  @Test
  void plantAndRoadNeverReadTheMachinesClock() {
    noClasses()
        .that()
        .resideInAnyPackage("..demo.plant", "..demo.road")
        .should()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.time.Instant")
        .check(OURS);
  }

  @Test
  void seasonNeverReadsTheMachinesClock() {
    noClasses()
        .that()
        .resideInAPackage("..demo.season")
        .should()
        .callMethodWhere(
            target(nameMatching("now|nanoTime|currentTimeMillis|systemDefault|getDefault")))
        .check(OURS);
  }

  @Test
  void nothingIsPrintedToTheConsole() {
    noClasses()
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .check(OURS);
  }
}
