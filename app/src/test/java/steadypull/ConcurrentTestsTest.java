package steadypull;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Locale;
import java.util.TimeZone;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.parallel.Execution;

/** Tests that run beside others in one program do not disturb them; fails if it sees none. */
class ConcurrentTestsTest {
  private static final JavaClasses TESTS =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.ONLY_INCLUDE_TESTS)
          .importPackages("steadypull");

  @Test
  void whatRunsBesideOthersShowsNoScreen() {
    noClasses()
        .that()
        .areAnnotatedWith(Execution.class)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("javafx..", "steadypull.ui..")
        .check(TESTS);
  }

  @Test
  void whatRunsBesideOthersSetsNothingThatHoldsForAll() {
    noClasses()
        .that()
        .areAnnotatedWith(Execution.class)
        .should()
        .callMethod(System.class, "setProperty", String.class, String.class)
        .orShould()
        .callMethod(System.class, "clearProperty", String.class)
        .orShould()
        .callMethod(Locale.class, "setDefault", Locale.class)
        .orShould()
        .callMethod(TimeZone.class, "setDefault", TimeZone.class)
        .check(TESTS);
  }
}
