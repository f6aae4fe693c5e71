package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.link.LinkException;

/**
 * Vehicles that answer service 22 only, with the parameters behind F400 to F4FF: SAE J1979-2, from
 * memory, not verified.
 */
class ByIdentifierTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedVehicle vehicle = drive.vehicle;

  @BeforeEach
  void answerByIdentifierOnly() {
    vehicle.knowsService01 = false;
    vehicle.byIdentifier = true;
    drive.defined = List.of();
  }

  @Test
  void vehicleIsRecognisedAndReadAsIfItKnewService01() {
    drive.go(30);

    assertThat(drive.recording.connected().protocol())
        .isEqualTo("AUTO, ISO 15765-4 (CAN 11/500), by identifier");
    assertThat(values(drive.recording)).isEqualTo(valuesOfTheUsualVehicle());
    assertThat(drive.adapter.sent).anyMatch(line -> line.matches("22(F4..){3}"));
  }

  private static Map<String, Set<Double>> valuesOfTheUsualVehicle() {
    ScriptedDrive usual = new ScriptedDrive();
    usual.defined = List.of();
    usual.go(30);
    return values(usual.recording);
  }

  private static Map<String, Set<Double>> values(Recording recording) {
    return recording.readings.stream()
        .collect(
            Collectors.groupingBy(
                reading -> reading.controlUnit() + " " + reading.signal().key(),
                Collectors.mapping(Reading::value, Collectors.toCollection(TreeSet::new))));
  }

  @Test
  void serialCanReadsSuchAVehicleToo() {
    ScriptedSerialCan adapter = new ScriptedSerialCan(vehicle);
    VehicleReader reader =
        new VehicleReader(adapter, drive.settings(ReaderSettings.Pace.POLITE), drive.recording);
    drive.recording.at =
        now -> {
          if (now > 31) {
            reader.close();
          }
        };
    reader.run();

    assertThat(values(drive.recording)).isEqualTo(valuesOfTheUsualVehicle());
    assertThat(drive.recording.connected().protocol())
        .isEqualTo("ISO 15765-4 (CAN 11/500), by identifier");
  }

  @Test
  void controlUnitThatAllowsOneIdentifierIsAskedSingly() {
    vehicle.answersSeveral = false;
    drive.go(60);

    assertThat(values(drive.recording)).isEqualTo(valuesOfTheUsualVehicle());
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(59);
  }

  // ISO 14229-1: 13 is the answer of one that refuses several identifiers.
  @Test
  void refusalOfSeveralIdentifiersIsObeyed() {
    vehicle.refusesSeveral = true;
    drive.go(60);

    assertThat(values(drive.recording)).isEqualTo(valuesOfTheUsualVehicle());
    assertThat(drive.adapter.sent.stream().filter(line -> line.matches("22(F4..){2,3}")).count())
        .isBetween(1L, 3L);
  }

  @Test
  void nothingButIdentifiersIsAskedOnceTheVehicleIsKnown() {
    drive.go(30);

    int search = drive.adapter.sent.indexOf("22F400");
    assertThat(drive.adapter.sent.subList(search, drive.adapter.sent.size()))
        .noneMatch(line -> line.matches("0.*"));
  }

  @Test
  void vehicleThatFellSilentIsFoundAgainWithoutAskingForService01() {
    drive.go(60, now -> vehicle.isAwake = now < 20 || now > 30);

    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(58);
    int silent = drive.adapter.sent.lastIndexOf("ATTP6");
    assertThat(silent).isPositive();
    assertThat(drive.recording.story()).contains("VehicleSilent");
  }

  // Only its own identifier of ISO 14229-1 tells the number here; F802 is not supported.
  @Test
  void identificationNumberIsAskedByEitherIdentifier() {
    vehicle.fixed.put(
        "7DF 22F190", "7E8101462F190315A5A\r7E82154503941473152\r7E82230303030303432\r");
    drive.go(30);

    assertThat(drive.recording.connected().vin()).isEqualTo("1ZZTP9AG1R0000042");
    assertThat(drive.adapter.sent).containsSubsequence("22F802", "22F190");
  }

  // A question without a search, as while the engine rests, must reach the vehicle that is known.
  @Test
  void vehicleThatFellSilentIsStillAskedByIdentifier() throws LinkException {
    IdentifierVehicle port = port(new ScriptedSerialCan(vehicle));
    assertThat(port.search("")).isInstanceOf(Reply.Data.class);
    String known = port.protocolNumber();
    vehicle.isAwake = false;
    assertThat(port.search(known)).isInstanceOf(Reply.NotConnected.class);
    vehicle.isAwake = true;

    assertThat(port.ask(VehicleRequest.toEverybody("010C"), Duration.ofSeconds(1)))
        .isInstanceOf(Reply.Data.class);
    assertThat(port.messages().message(0).payload().toString()).isEqualTo("410C1F40");
  }

  // A vehicle that answered service 01 and is silent now most likely sleeps.
  @Test
  void knownUsualVehicleIsSeldomDoubted() throws LinkException {
    ScriptedSerialCan adapter = new ScriptedSerialCan(vehicle);
    IdentifierVehicle port = port(adapter);
    vehicle.isAwake = false;
    for (int search = 0; search < 10; search++) {
      port.search("6");
    }

    assertThat(adapter.sent.stream().filter(line -> line.startsWith("t7DF80322F400")).count())
        .isEqualTo(4);
  }

  private static IdentifierVehicle port(ScriptedSerialCan adapter) throws LinkException {
    return new IdentifierVehicle(
        new SerialCanVehicle(
            AdapterPort.open(adapter, () -> true, Duration.ZERO).findSerialCan().orElseThrow()));
  }

  @Test
  void usualVehicleIsNeverAskedByIdentifier() {
    vehicle.knowsService01 = true;
    drive.go(30);

    assertThat(drive.adapter.sent).noneMatch(line -> line.startsWith("22F4"));
    assertThat(drive.recording.connected().protocol()).doesNotContain("identifier");
  }
}
