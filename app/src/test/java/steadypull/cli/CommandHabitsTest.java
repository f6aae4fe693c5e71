package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;

/** What all commands have in common, and those that need no drive. */
class CommandHabitsTest {
  private static final String TABLE = "time[s],vehicle_speed[km/h]\n0,80\n";

  @TempDir private Path folder;

  @Test
  void theLibraryMayBeNamedBeforeOrAfterTheCommandOrByTheEnvironment() throws Exception {
    String library = folder.resolve("library").toString();
    Desk desk = new Desk(folder.resolve("library"));
    desk.type("import", Files.writeString(folder.resolve("a.csv"), TABLE).toString());
    String trips = desk.type("trips").out();

    assertThat(trips.lines()).hasSize(1);
    assertThat(Desk.typeOnly(Map.of(), "trips", "--library", library).out()).isEqualTo(trips);
    assertThat(Desk.typeOnly(Map.of("STEADYPULL_LIBRARY", library), "trips").out())
        .isEqualTo(trips);
    assertThat(
            Desk.typeOnly(Map.of("STEADYPULL_LIBRARY", "/nowhere"), "--library", library, "trips")
                .out())
        .isEqualTo(trips);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "advise",
        "export",
        "import",
        "ports",
        "record",
        "road-load",
        "scenarios",
        "trip",
        "trips",
        "vehicle"
      })
  void helpOfEveryCommandFitsEightyColumns(String command) {
    Desk.Answer answer =
        command.isEmpty()
            ? Desk.typeOnly(Map.of(), "--help")
            : Desk.typeOnly(Map.of(), command, "--help");

    assertThat(answer.status()).isZero();
    assertThat(answer.err()).isEmpty();
    assertThat(answer.out()).contains("Usage: steadypull", "--library=DIR", "--help");
    assertThat(answer.lines()).allMatch(line -> line.length() <= 80);
  }

  /** The parser formats them, and complains of a "%" past our streams, on standard error. */
  @Test
  void noTextOfTheHelpIsABrokenFormat() {
    List<CommandSpec> commands =
        Stream.of(SteadypullCommand.class.getAnnotation(Command.class).subcommands())
            .map(CommandSpec::forAnnotatedObject)
            .toList();

    assertThat(commands).hasSizeGreaterThan(12);
    assertThat(commands.stream().flatMap(CommandHabitsTest::texts))
        .hasSizeGreaterThan(100)
        .allSatisfy(text -> assertThat(String.format(text)).doesNotContain("%%"));
  }

  private static Stream<String> texts(CommandSpec command) {
    return Stream.concat(
            Stream.of(command.usageMessage().header(), command.usageMessage().description()),
            command.args().stream().map(ArgSpec::description))
        .flatMap(Stream::of);
  }

  @Test
  void everyScenarioIsListedWithItsLength() {
    Desk.Answer answer = Desk.typeOnly(Map.of(), "scenarios");

    assertThat(answer.lines())
        .anyMatch(line -> line.matches("long-hot-grade +\\d+ min  \\S.*"))
        .anyMatch(line -> line.startsWith("cool-day"))
        .anyMatch(line -> line.startsWith("dyno-pull"));
  }

  @Test
  void aVehicleIsCarriedFromOneLibraryToAnother() {
    String file = folder.resolve("rig.vehicle").toString();
    Desk desk = new Desk(folder.resolve("library"));
    Desk other = new Desk(folder.resolve("other"));
    Desk.Answer set =
        desk.type(
            "vehicle",
            "Wattle 2",
            "--layout",
            "water-to-air",
            "--limit",
            "charge_air_temp_out=98.5:maker, handbook p. 12",
            "--speed-range",
            "55..85",
            "--cap",
            "0.5:workshop, stamped on it",
            "--export",
            file);

    Desk.Answer carried = other.type("vehicle", "Wattle 2", "--import", file);

    assertThat(set.out())
        .contains("water-to-air", "55 to 85 km/h")
        .containsPattern("charge_air_temp_out +98\\.5 degC  maker: handbook p\\. 12")
        .contains("coolant cap 0.5 bar workshop: stamped on it")
        .contains("at 2000 m coolant boils at 115 degC: 107 counts")
        .containsPattern("engine_oil_temp +130\\.0 degC  cautious default, not confirmed");
    assertThat(carried.out()).isEqualTo(set.out());
    assertThat(other.type("vehicle", "Wattle 2").out()).isEqualTo(set.out());
  }
}
