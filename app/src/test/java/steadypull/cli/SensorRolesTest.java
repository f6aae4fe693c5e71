package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;
import steadypull.channel.Channels;

/** From a drive to a confirmed sensor role, typed at a terminal. */
@Execution(ExecutionMode.CONCURRENT)
class SensorRolesTest {
  private static final String DRIVE = "demo:long-hot-grade?speed=max&start=400";

  @TempDir private Path folder;

  private Desk desk() {
    return new Desk(folder.resolve("library"));
  }

  private static Desk.Answer record(Desk desk, String length) {
    return desk.type("record", "--port", DRIVE, "--vehicle", "My rig", "--for", length);
  }

  /** The demo's own vehicle file brings its roles; a vehicle that is known already has none. */
  @Test
  void aDriveWithBoostShowsPlacesThatAreConfirmedOnlyWhenSomebodySaysSo() {
    Desk desk = desk();
    desk.type("vehicle", "My rig", "--layout", "water-to-air");
    Desk.Answer recorded = record(desk, "8m");
    assertThat(recorded.status()).isZero();
    assertThat(recorded.err())
        .as("told once")
        .containsOnlyOnce("where these sensors sit is assumed: ")
        .containsPattern("is assumed: .*charge_air_temp_out");

    Desk.Answer proposed = desk.type("vehicle", "My rig", "--propose-roles");
    assertThat(proposed.status()).isZero();
    assertThat(proposed.out())
        .contains("charge_air_temp_in: compressor outlet sensor A (01.75.2), clear")
        .contains("charge_air_temp_out: charge air sensor 1 (01.77.1)")
        .contains("charge_coolant_temp: coolant sensor 2 (01.67.2), likely")
        .contains("exhaust_temp_before_turbine: exhaust sensor 1, bank 1 (01.78.1)")
        .containsPattern("stood at 1\\d\\d°, at 2\\d\\d kPa")
        .contains("--confirm-roles");
    assertThat(desk.type("vehicle", "My rig").out()).doesNotContain("01.75.2");

    Desk.Answer confirmed = desk.type("vehicle", "My rig", "--confirm-roles");
    assertThat(confirmed.out())
        .containsPattern("sensor charge_air_temp_in +01\\.75\\.2")
        .containsPattern("sensor exhaust_temp_after_turbine +01\\.78\\.2");
    assertThat(record(desk, "30s").err()).doesNotContain("assumed");
    assertThat(desk.type("vehicle", "My rig", "--propose-roles").out())
        .contains("(01.75.2), clear, confirmed")
        .doesNotContain("Confirm all");
  }

  @Test
  void confirmedRolesTravelWithTheVehicle() {
    String file = folder.resolve("rig.vehicle").toString();
    Desk.Answer set =
        desk()
            .type(
                "vehicle",
                "My rig",
                "--role",
                "charge_air_temp_out=01.77.2",
                "--role",
                "charge_air_temp_in=01.77.1",
                "--export",
                file);
    Desk other = new Desk(folder.resolve("other"));

    assertThat(other.type("vehicle", "Its twin", "--import", file).out())
        .isEqualTo(set.out().replace("My rig", "Its twin"))
        .containsPattern("sensor charge_air_temp_out +01\\.77\\.2");
  }

  @Test
  void aRoleSetByHandIsSeenBesideAnotherProposalAndCanGoBack() {
    Desk desk = desk();
    desk.type("vehicle", "My rig", "--role", "charge_air_temp_out=01.0F");
    record(desk, "8m");

    assertThat(desk.type("vehicle", "My rig", "--propose-roles").out())
        .contains("(01.77.1)", "but 01.0F is set");
    assertThat(desk.type("vehicle", "My rig", "--role", "charge_air_temp_out=usual").out())
        .doesNotContain("01.0F");
  }

  @Test
  void aVehicleThatWasNeverDrivenSaysWhatIsMissingAndConfirmsNothing() {
    Desk desk = desk();
    desk.type("vehicle", "My rig", "--layout", "air-to-air");

    assertThat(desk.type("vehicle", "My rig", "--propose-roles").out())
        .contains("charge_air_temp_in: cannot tell", "has not answered");
    Desk.Answer refused = desk.type("vehicle", "My rig", "--confirm-roles");
    assertThat(refused.status()).isEqualTo(1);
    assertThat(refused.err()).contains("Could not confirm", "--propose-roles");
  }

  @Test
  void reasonsComeInTheReadersLanguage() {
    Desk desk = desk();
    desk.type("vehicle", "My rig", "--layout", "air-to-air");

    assertThat(desk.type("--language", "de", "vehicle", "My rig", "--propose-roles").out())
        .contains("Das Fahrzeug hat");
  }

  @Test
  void aRoleNamesAChannelAndASignal() {
    assertThat(new RoleOption().convert("charge_air_temp_out=01.77.1"))
        .isEqualTo(new RoleOption.Role(Channels.CHARGE_AIR_TEMP_OUT, Optional.of("01.77.1")));
    assertThat(new RoleOption().convert("charge_air_temp_out = usual").signalKey()).isEmpty();
    assertThat(new RoleOption().convert("engine_oil_temp=22.1E1C.0").signalKey())
        .contains("22.1E1C.0");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "charge_air_temp_out",
        "=01.77.1",
        "charge_air_tmp_out=01.77.1",
        "charge_air_temp_out=77",
        "charge_air_temp_out=01.77.9",
        "charge_air_temp_out="
      })
  void whatIsNoRoleIsRefused(String text) {
    assertThatThrownBy(() -> new RoleOption().convert(text))
        .isInstanceOf(TypeConversionException.class);
  }
}
