package steadypull.drive;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;
import steadypull.adapter.VehicleReader;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkSource;

/** In the whole product one class talks to adapters, and it does so behind the read-only gate. */
class OnlyReadsTest {
  private static final JavaClasses PRODUCT =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("steadypull");

  @Test
  void theCheckSeesAllModules() {
    assertThat(PRODUCT.contain(VehicleReader.class)).isTrue();
    assertThat(PRODUCT.contain(LiveDrive.class)).isTrue();
    assertThat(PRODUCT.contain("steadypull.demo.DemoWorld")).isTrue();
  }

  @Test
  void linksAreOpenedAndUsedByTheReaderAlone() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("steadypull.adapter.AdapterPort")
        // Has no way to send anything.
        .and()
        .doNotHaveFullyQualifiedName("steadypull.adapter.link.ListeningSource")
        // Keeps what the reader opens and says.
        .and()
        .doNotHaveFullyQualifiedName("steadypull.adapter.capture.CapturedSource")
        .should()
        .callMethod(LinkSource.class, "open")
        .check(PRODUCT);
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("steadypull.adapter.AdapterPort")
        .and()
        .doNotHaveFullyQualifiedName("steadypull.adapter.link.ReadOnlyGate")
        .and()
        .doNotHaveFullyQualifiedName("steadypull.adapter.capture.CapturedSource$Captured")
        .should()
        .callMethod(Link.class, "write", byte[].class)
        .check(PRODUCT);
  }

  @Test
  void nothingBesidesTheAdaptersLinksOpensSerialPorts() {
    noClasses()
        .that()
        .resideOutsideOfPackage("steadypull.adapter.link")
        .should()
        .dependOnClassesThat(resideInAPackage("com.fazecast.."))
        .check(PRODUCT);
  }
}
