package steadypull;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;

/** Holds the floors of the house: a room uses only rooms on floors under its own. */
class FloorsTest {
  /** Top floor first; rooms of one floor do not know each other. */
  private static final List<List<String>> FLOORS =
      List.of(
          List.of("cli"),
          List.of("ui"),
          List.of("report"),
          List.of("drive", "compare", "fleet"),
          List.of("advice", "plan", "review", "tablet"),
          List.of("thermal", "exchange"),
          List.of("store"),
          List.of("road"),
          List.of("vehicle"),
          List.of("channel"),
          List.of("toml"));

  /** The house itself; the adapter and the demo world are other modules. */
  private static final JavaClasses HOUSE =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("steadypull")
          .that(
              describe(
                  "in the app",
                  found ->
                      !found.getPackageName().startsWith("steadypull.adapter")
                          && !found.getPackageName().startsWith("steadypull.demo")));

  @Test
  void theCheckSeesOurClasses() {
    assertThat(HOUSE.size()).isGreaterThan(60);
    assertThat(HOUSE.contain("steadypull.channel.Sample")).isTrue();
    assertThat(HOUSE.contain("steadypull.Steadypull")).isTrue();
  }

  @Test
  void everyRoomHasAFloor() {
    Set<String> planned = FLOORS.stream().flatMap(List::stream).collect(Collectors.toSet());

    assertThat(rooms()).isSubsetOf(planned);
  }

  @Test
  void aRoomUsesOnlyRoomsOnFloorsUnderItsOwn() {
    List<String> notUnder = new ArrayList<>(List.of("steadypull"));
    for (List<String> floor : FLOORS) {
      floor.forEach(room -> notUnder.add("steadypull." + room + ".."));
      for (String room : floor) {
        List<String> forbidden = new ArrayList<>(notUnder);
        forbidden.remove("steadypull." + room + "..");
        noClasses()
            .that()
            .resideInAPackage("steadypull." + room + "..")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage(forbidden.toArray(String[]::new))
            .allowEmptyShould(true)
            .check(HOUSE);
      }
    }
  }

  @Test
  void roomsFormNoCircles() {
    slices().matching("steadypull.(*)..").should().beFreeOfCycles().check(HOUSE);
  }

  /** What was seen of sensors is kept by the store; the vehicle itself does not know of it. */
  @Test
  void sensorRolesStandOnTheVehicleAndOpenNothing() {
    assertThat(HOUSE.contain("steadypull.vehicle.role.SensorWatch")).isTrue();
    noClasses()
        .that()
        .resideInAPackage("steadypull.vehicle")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("steadypull.vehicle.role..")
        .check(HOUSE);
    noClasses()
        .that()
        .resideInAPackage("steadypull.vehicle.role..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.io..", "java.nio.file..", "java.net..", "java.time..")
        .check(HOUSE);
  }

  @Test
  void onlyTheDriveKnowsTheAdapter() {
    noClasses()
        .that()
        .resideOutsideOfPackages("steadypull", "steadypull.drive..")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("steadypull.adapter..")
        .check(HOUSE);
  }

  @Test
  void onlyTheRootKnowsTheDemoWorld() {
    noClasses()
        .that()
        .resideOutsideOfPackage("steadypull")
        .should()
        .dependOnClassesThat()
        .resideInAPackage("steadypull.demo..")
        .check(HOUSE);
  }

  @Test
  void theRootKnowsNoMoreOfTheAdapterThanItsLinks() {
    noClasses()
        .that()
        .resideInAPackage("steadypull")
        .should()
        .dependOnClassesThat(
            resideInAPackage("steadypull.adapter..")
                .and(not(resideInAPackage("steadypull.adapter.link.."))))
        .allowEmptyShould(true)
        .check(HOUSE);
  }

  @Test
  void onlyCommandsSpeakToTheConsole() {
    noClasses()
        .that()
        .resideOutsideOfPackage("steadypull.cli..")
        // Tolerated: hands both streams to the commands.
        .and()
        .doNotHaveFullyQualifiedName("steadypull.Steadypull")
        // Tolerated: keeps one warning of a library away from standard error, says nothing itself.
        .and()
        .doNotHaveFullyQualifiedName("steadypull.toml.TomlText")
        .should(ACCESS_STANDARD_STREAMS)
        .check(HOUSE);
  }

  /** Whatever runs beside us must end with us: the room that knows how is the only one. */
  @Test
  void onlyTheTabletStartsCommandsOfTheSystem() {
    assertThat(HOUSE.contain("steadypull.tablet.ChildAwake")).isTrue();
    noClasses()
        .that()
        .resideOutsideOfPackage("steadypull.tablet..")
        .should()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.lang.ProcessBuilder")
        .orShould()
        .dependOnClassesThat()
        .resideInAPackage("java.lang.foreign..")
        .check(HOUSE);
  }

  @Test
  void onlyTheStoreKnowsTheDatabase() {
    noClasses()
        .that()
        .resideOutsideOfPackage("steadypull.store..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.sql..", "org.sqlite..", "org.jdbi..")
        .check(HOUSE);
  }

  @Test
  void everyPackageIsNullMarked() {
    Set<String> unmarked = new TreeSet<>();
    for (JavaClass found : HOUSE) {
      boolean isMarked =
          found
              .getPackage()
              .tryGetPackageInfo()
              .map(info -> info.isAnnotatedWith(NullMarked.class))
              .orElse(false);
      if (!isMarked) {
        unmarked.add(found.getPackageName());
      }
    }
    assertThat(unmarked).isEmpty();
  }

  private static Set<String> rooms() {
    return HOUSE.stream()
        .map(JavaClass::getPackageName)
        .filter(name -> name.startsWith("steadypull."))
        .map(name -> name.split("\\.", -1)[1])
        .collect(Collectors.toCollection(TreeSet::new));
  }
}
