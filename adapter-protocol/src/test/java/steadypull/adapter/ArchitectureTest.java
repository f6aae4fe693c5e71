package steadypull.adapter;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkSource;

/** The walls of this module. */
class ArchitectureTest {
  private static final String ROOM = "steadypull.adapter";
  private static final JavaClasses CLASSES =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages(ROOM);

  // Rules pass on nothing; this one makes sure that there was something.
  @Test
  void rulesSawOurClasses() {
    assertThat(CLASSES.size()).isGreaterThan(60);
    for (String room :
        new String[] {
          "link", "dialogue", "frame", "diagnostic", "polling", "position", "capture"
        }) {
      assertThat(CLASSES.stream().anyMatch(c -> c.getPackageName().equals(ROOM + "." + room)))
          .as(room)
          .isTrue();
    }
  }

  @Test
  void onlyLinkOpensPorts() {
    noClasses()
        .that()
        .resideOutsideOfPackage(ROOM + ".link")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.net..", "java.nio.channels..", "com.fazecast..")
        .check(CLASSES);
  }

  // A capture is a file that a person asked for, no port: it is written by one class, read by one.
  @Test
  void onlyLinkAndTwoClassesOfCaptureOpenFiles() {
    noClasses()
        .that()
        .resideOutsideOfPackage(ROOM + ".link")
        .and()
        .doNotHaveFullyQualifiedName(ROOM + ".capture.Capture")
        .and()
        .doNotHaveFullyQualifiedName(ROOM + ".capture.CaptureFile")
        .should()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.nio.file.Files")
        .orShould()
        .dependOnClassesThat()
        .haveNameMatching("java\\.io\\.(File|RandomAccess|InputStream|OutputStream).*")
        .check(CLASSES);
  }

  @Test
  void everyByteToAnAdapterGoesThroughTheGate() {
    noClasses()
        .that()
        .areNotAssignableTo(Link.class)
        .should()
        .callMethod(Link.class, "write", byte[].class)
        .check(CLASSES);
    noClasses()
        .that()
        .doNotHaveSimpleName("AdapterPort")
        // Has no way to send anything.
        .and()
        .doNotHaveSimpleName("ListeningSource")
        // Keeps what the reader opens.
        .and()
        .doNotHaveSimpleName("CapturedSource")
        .should()
        .callMethod(LinkSource.class, "open")
        .check(CLASSES);
  }

  @Test
  void codecsUseNoRoomAboveThem() {
    for (String room : new String[] {"link", "dialogue", "frame"}) {
      noClasses()
          .that()
          .resideInAPackage(ROOM + "." + room)
          .should()
          .dependOnClassesThat(
              resideInAPackage(ROOM + "..").and(resideOutsideOfPackage(ROOM + "." + room)))
          .check(CLASSES);
    }
    noClasses()
        .that()
        .resideInAPackage(ROOM + ".diagnostic")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(ROOM, ROOM + ".link", ROOM + ".dialogue", ROOM + ".polling")
        .check(CLASSES);
    noClasses()
        .that()
        .resideInAPackage(ROOM + ".polling")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(ROOM, ROOM + ".link", ROOM + ".dialogue", ROOM + ".frame")
        .check(CLASSES);
  }

  // Both stand beside the reader: it knows neither, and neither knows it. What a message says, and
  // how long its parts are, a replay has to know.
  @Test
  void capturesAndReceiversKnowOnlyLinksAndFrames() {
    for (String room : new String[] {"position", "capture"}) {
      String messages = room.equals("capture") ? ROOM + ".diagnostic" : ROOM + ".frame";
      noClasses()
          .that()
          .resideInAPackage(ROOM + "." + room)
          .should()
          .dependOnClassesThat(
              resideInAPackage(ROOM + "..")
                  .and(resideOutsideOfPackage(ROOM + "." + room))
                  .and(resideOutsideOfPackage(ROOM + ".link"))
                  .and(resideOutsideOfPackage(messages))
                  .and(resideOutsideOfPackage(ROOM + ".frame")))
          .check(CLASSES);
      noClasses()
          .that()
          .resideOutsideOfPackage(ROOM + "." + room)
          .should()
          .dependOnClassesThat()
          .resideInAPackage(ROOM + "." + room)
          .check(CLASSES);
    }
  }

  @Test
  void receiversAreOnlyListenedTo() {
    noClasses()
        .that()
        .resideInAPackage(ROOM + ".position")
        .should()
        .dependOnClassesThat()
        .areAssignableTo(Link.class)
        .orShould()
        .dependOnClassesThat()
        .areAssignableTo(LinkSource.class)
        .check(CLASSES);
  }

  @Test
  void roomsHaveNoCycles() {
    slices().matching(ROOM + ".(*)..").should().beFreeOfCycles().check(CLASSES);
  }

  @Test
  void onlyLinkReadsTheMachinesClock() {
    noClasses()
        .that()
        .resideOutsideOfPackage(ROOM + ".link")
        .should()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .dependOnClassesThat()
        .areAssignableTo(java.time.Clock.class)
        .orShould()
        .callMethod(LinkClock.class, "machine")
        .check(CLASSES);
  }

  @Test
  void nothingPrints() {
    noClasses()
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .orShould()
        .callMethod(Throwable.class, "printStackTrace")
        .check(CLASSES);
  }
}
