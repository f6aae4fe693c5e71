package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import steadypull.adapter.diagnostic.Requests;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.link.LinkException;

/** A vehicle behind a serial CAN adapter, read by the same reader. */
class SerialCanTest {
  private static final String RPM = "t7DF802010C0000000000";

  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedSerialCan adapter = new ScriptedSerialCan(drive.vehicle);

  private void go(double seconds, Runnable atEachEvent) {
    VehicleReader reader =
        new VehicleReader(adapter, drive.settings(ReaderSettings.Pace.POLITE), drive.recording);
    double end = adapter.clock.seconds() + seconds;
    drive.recording.at =
        now -> {
          atEachEvent.run();
          if (now >= end) {
            reader.close();
          }
        };
    reader.run();
  }

  @Test
  void readsAVehicleLikeThroughTheOtherKindOfAdapter() {
    go(20, () -> {});

    LinkState.Connected connected = drive.recording.connected();
    assertThat(connected.adapter()).isEqualTo("serial CAN, version 1013");
    assertThat(connected.protocol()).isEqualTo("ISO 15765-4 (CAN 11/500)");
    assertThat(drive.recording.of("01.0C")).allMatch(reading -> reading.value() == 2000);
    assertThat(drive.recording.of("01.0C")).hasSizeGreaterThan(60);
  }

  // The same vehicle, the same settings, the same span over both dialogues.
  @Test
  void bothDialoguesGiveTheSameReadings() {
    drive.vehicle.fixed.put("7E1 221E1C", "7E905621E1C0640AAAA\r");
    go(30, () -> {});
    ScriptedDrive other = new ScriptedDrive();
    other.vehicle.fixed.put("7E1 221E1C", "7E905621E1C0640AAAA\r");
    other.go(30);

    Map<String, Long> here = counts(drive.recording);
    Map<String, Long> there = counts(other.recording);
    assertThat(here.keySet()).isEqualTo(there.keySet()).contains("7E9 22.1E1C.0 60.0");
    there.forEach(
        (reading, count) ->
            assertThat((double) here.getOrDefault(reading, 0L))
                .as(reading)
                .isCloseTo(count, within(count * 0.1 + 3)));
  }

  /** How often each control unit told each signal's value. */
  private static Map<String, Long> counts(Recording recording) {
    Map<String, Long> counts = new TreeMap<>();
    recording.readings.forEach(
        reading ->
            counts.merge(
                "%s %s %s"
                    .formatted(reading.controlUnit(), reading.signal().key(), reading.value()),
                1L,
                Long::sum));
    return counts;
  }

  @Test
  void channelIsClosedAtTheEnd() {
    go(5, () -> {});

    assertThat(adapter.isOpen).isFalse();
    assertThat(adapter.sent).endsWith("C");
  }

  @Test
  void politePaceKeepsToTwentyQuestionsASecond() {
    go(30, () -> {});

    long questions =
        adapter.sent.stream()
            .filter(line -> line.matches("[tT].*"))
            .filter(line -> !line.contains("830"))
            .count();
    assertThat(questions).isBetween(100L, 600L);
  }

  // Both 500 kbit/s ways are tried before the rate changes; last of all 29 bits at 250 kbit/s.
  @Test
  void everyWayOfTheStandardIsFoundInItsOrder() throws LinkException {
    for (CanBus bus : CanBus.values()) {
      ScriptedSerialCan scripted = vehicleOn(bus);
      SerialCanVehicle vehicle = new SerialCanVehicle(channel(scripted));

      assertThat(vehicle.search("")).as(bus.inWords()).isInstanceOf(Reply.Data.class);
      assertThat(vehicle.protocolNumber()).isEqualTo(bus.number());
      assertThat(vehicle.messages().sender(0)).isEqualTo(bus.isLong() ? "18DAF110" : "7E8");
      assertThat(scripted.sent.stream().filter(line -> line.matches("S.")).toList())
          .isEqualTo(bus.kilobits() == 500 ? List.of("S6") : List.of("S6", "S5"));
    }
  }

  @Test
  void lastKnownWayIsTriedFirst() throws LinkException {
    ScriptedSerialCan scripted = vehicleOn(CanBus.LONG_250);

    new SerialCanVehicle(channel(scripted)).search("9");

    assertThat(scripted.sent).contains("S5").doesNotContain("S6");
    assertThat(scripted.disturbances).isZero();
  }

  private static ScriptedSerialCan vehicleOn(CanBus bus) {
    ScriptedVehicle vehicle =
        new ScriptedVehicle().parameter(bus.isLong() ? "18DAF110" : "7E8", 0x0C, "1F40");
    if (bus.isLong()) {
      vehicle.fixed.put("18DB33F1 0100", "18DAF1100641000010000055\r".replace("55", "AA"));
    }
    ScriptedSerialCan scripted = new ScriptedSerialCan(vehicle);
    scripted.vehicleRate = bus.kilobits() == 500 ? "S6" : "S5";
    scripted.isLong = bus.isLong();
    return scripted;
  }

  private static SerialCanChannel channel(ScriptedSerialCan scripted) throws LinkException {
    return AdapterPort.open(scripted, () -> true, Duration.ZERO).findSerialCan().orElseThrow();
  }

  @Test
  void silentVehicleLeavesTheChannelClosed() throws LinkException {
    drive.vehicle.isAwake = false;

    Reply reply = new SerialCanVehicle(channel(adapter)).search("");

    assertThat(reply).isInstanceOf(Reply.NotConnected.class);
    assertThat(adapter.isOpen).isFalse();
  }

  // A question without a search, as while the engine rests, must go where the vehicle was.
  @Test
  void afterASearchInVainTheFirstWayIsAskedNotTheLast() throws LinkException {
    ScriptedSerialCan scripted = vehicleOn(CanBus.SHORT_250);
    SerialCanVehicle vehicle = new SerialCanVehicle(channel(scripted));
    vehicle.search("8");
    scripted.vehicle.isAwake = false;
    vehicle.search("8");
    scripted.vehicle.isAwake = true;

    assertThat(vehicle.ask(VehicleRequest.toEverybody("010C"), Duration.ofSeconds(1)))
        .isInstanceOf(Reply.Data.class);
  }

  // At a wrong rate an adapter would answer everybody's frames with error frames.
  @Test
  void otherBitRateIsNotTriedWhereOthersAreHeard() throws LinkException {
    drive.vehicle.isAwake = false;
    adapter.traffic = "t1238AABBCCDDEEFF0011\r";

    new SerialCanVehicle(channel(adapter)).search("");

    assertThat(adapter.sent).contains("S6").doesNotContain("S5");
  }

  @Test
  void faultOnTheBusIsToldWithTheAdaptersFlags() throws LinkException {
    drive.vehicle.isAwake = false;
    adapter.status = "F84";

    assertThat(new SerialCanVehicle(channel(adapter)).search(""))
        .isEqualTo(new Reply.BusFault("BUS ERROR, status F84"));
  }

  // The vehicle's bus falls asleep: nobody acknowledges, and the adapter would repeat for ever.
  @Test
  void questionThatNobodyAcknowledgesIsTakenBack() throws LinkException {
    SerialCanVehicle vehicle = connected();
    drive.vehicle.isAwake = false;
    adapter.status = "F20";
    vehicle.ask(VehicleRequest.toEverybody("010C"), Duration.ofSeconds(1));
    assertThat(adapter.isOpen).isFalse();

    drive.vehicle.isAwake = true;
    assertThat(vehicle.ask(VehicleRequest.toEverybody("010C"), Duration.ofSeconds(1)))
        .isInstanceOf(Reply.Data.class);
    assertThat(adapter.isOpen).isTrue();
  }

  @Test
  void questionWithoutAnswerOnASoundBusLeavesTheChannelOpen() throws LinkException {
    SerialCanVehicle vehicle = connected();

    assertThat(vehicle.ask(VehicleRequest.toEverybody("0152"), Duration.ofSeconds(1)))
        .isInstanceOf(Reply.NoData.class);
    assertThat(adapter.isOpen).isTrue();
  }

  @Test
  void adapterThatIsAskedInVainIsSilent() throws LinkException {
    SerialCanVehicle vehicle = new SerialCanVehicle(channel(adapter));
    adapter.isMute = true;

    assertThat(vehicle.search("")).isInstanceOf(Reply.Silence.class);
    assertThat(vehicle.resynchronise()).isFalse();
  }

  @Test
  void adapterThatDoesNotAcknowledgeFramesIsReadToo() {
    adapter.acknowledgesFrames = false;
    go(10, () -> {});

    assertThat(drive.recording.of("01.0C")).hasSizeGreaterThan(25);
  }

  @Test
  void longAnswersOfTwoControlUnitsAreAnsweredByFlowControlToEach() throws LinkException {
    drive.vehicle.fixed.put(
        "7DF 0178",
        "7E8100B417807170C12\r7E9100B417801FFFFFF\r7E8215C0FA00000AAAA\r7E921FFFF00000000\r");
    SerialCanVehicle vehicle = connected();

    assertThat(vehicle.ask(VehicleRequest.toEverybody("0178"), Duration.ofSeconds(1)))
        .isInstanceOf(Reply.Data.class);
    assertThat(vehicle.messages().messages().toString()).contains("417807170C125C0FA00000");
    assertThat(adapter.sent).contains("t7E083000000000000000", "t7E183000000000000000");
  }

  private SerialCanVehicle connected() throws LinkException {
    SerialCanVehicle vehicle = new SerialCanVehicle(channel(adapter));
    assertThat(vehicle.search("")).isInstanceOf(Reply.Data.class);
    return vehicle;
  }

  // Everybody's question waits for everybody; one control unit's answer ends its question at once.
  @Test
  void questionToOneControlUnitEndsWithItsAnswer() throws LinkException {
    drive.vehicle.fixed.put("7E1 221E1C", "7E905621E1C0640AAAA\r");
    SerialCanVehicle vehicle = connected();
    double before = adapter.clock.seconds();
    vehicle.ask(VehicleRequest.to("7E1", "221E1C"), Duration.ofSeconds(1));
    double toOne = adapter.clock.seconds() - before;
    vehicle.ask(VehicleRequest.toEverybody("03"), Duration.ofSeconds(1));
    double toAll = adapter.clock.seconds() - before - toOne;

    assertThat(toOne).isCloseTo(0.008, within(0.001));
    assertThat(toAll).isBetween(0.05, 0.15);
  }

  // SAE J1979: who does not support a parameter keeps silent, so the support maps tell who answers.
  @Test
  void questionToEverybodyEndsWhenAllWhoSupportItHaveAnswered() throws LinkException {
    SerialCanVehicle vehicle = connected();
    double before = adapter.clock.seconds();
    vehicle.ask(VehicleRequest.toEverybody("010C04"), Duration.ofSeconds(1));

    assertThat(adapter.clock.seconds() - before).isCloseTo(0.008, within(0.001));
    assertThat(vehicle.messages().count()).isEqualTo(2);
  }

  @Test
  void answerThatDoesNotComeIsNotWaitedForBeyondTheTimeOfAnAnswer() throws LinkException {
    SerialCanVehicle vehicle = connected();
    drive.vehicle.without(0x0C);
    drive.vehicle.parameter("7E8", 0x0C, "1F40");
    double before = adapter.clock.seconds();
    vehicle.ask(VehicleRequest.toEverybody("010C"), Duration.ofSeconds(1));

    assertThat(adapter.clock.seconds() - before).isBetween(0.05, 0.15);
    assertThat(vehicle.messages().count()).isEqualTo(1);
  }

  @Test
  void answerOfAnotherControlUnitToAPersonalQuestionIsLeftOut() throws LinkException {
    drive.vehicle.fixed.put("7E1 221E1C", "7E805621E1C0000AAAA\r7E905621E1C0640AAAA\r");
    SerialCanVehicle vehicle = connected();

    vehicle.ask(VehicleRequest.to("7E1", "221E1C"), Duration.ofSeconds(1));

    assertThat(vehicle.messages().count()).isEqualTo(1);
    assertThat(vehicle.messages().sender(0)).isEqualTo("7E9");
  }

  @Test
  void headerThatTheGateWouldRefuseIsNotAsked() throws LinkException {
    SerialCanVehicle vehicle = connected();
    for (String header : List.of("7E8", "7B0", "6A8", "18DA10F1", "7DF")) {
      assertThat(vehicle.canAddress(header)).as(header).isFalse();
      assertThat(vehicle.ask(VehicleRequest.to(header, "221E1C"), Duration.ofSeconds(1)))
          .isInstanceOf(Reply.NotUnderstood.class);
    }
  }

  // A reset by low supply closes the channel: frames are refused from then on.
  @Test
  void restartedAdapterIsOpenedAgain() {
    List<Double> restarts = new ArrayList<>();
    go(
        30,
        () -> {
          if (adapter.clock.seconds() > 10 && restarts.isEmpty()) {
            restarts.add(adapter.clock.seconds());
            adapter.restart();
          }
        });

    double after = restarts.getFirst();
    assertThat(drive.recording.of("01.0C"))
        .anyMatch(r -> r.nanoTime() / 1e9 > after && r.nanoTime() / 1e9 < after + 5);
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(29.5);
  }

  @Test
  void adapterThatFallsSilentIsLostAndFoundAgain() {
    go(60, () -> adapter.isMute = adapter.clock.seconds() > 10 && adapter.clock.seconds() < 25);

    assertThat(drive.recording.story()).contains("Lost");
    assertThat(drive.lastReadAt("01.0C")).isGreaterThan(58);
  }

  @Test
  void adapterWithoutStatusOrTimeStampsIsReadToo() {
    adapter.refusing("F", "Z0", "N");
    go(10, () -> {});

    assertThat(drive.recording.of("01.0C")).hasSizeGreaterThan(25);
  }

  @Test
  void damagedLinesNeverGiveAWrongValueOrEndTheReading() {
    long seed = 8;
    Random random = new Random(seed);
    adapter.wire =
        line -> {
          if (random.nextInt(20) != 0) {
            return line;
          }
          int at = random.nextInt(line.length());
          // Lost, repeated or no digit: what a length or kind could tell.
          return switch (random.nextInt(3)) {
            case 0 -> line.substring(0, at) + line.substring(at + 1);
            case 1 -> line.substring(0, at) + line.charAt(at) + line.substring(at);
            default -> line.substring(0, at) + "\u0000" + line.substring(at + 1);
          };
        };
    go(120, () -> {});

    assertThat(new TreeSet<>(drive.recording.of("01.0C").stream().map(Reading::value).toList()))
        .as("seed %d", seed)
        .containsExactly(2000.0);
    assertThat(drive.lastReadAt("01.0C")).as("seed %d", seed).isGreaterThan(115);
  }

  @Test
  void pendingAnswerIsWaitedFor() throws LinkException {
    SerialCanVehicle vehicle = connected();
    drive.vehicle.fixed.put("7E0 22F190", "7E8037F2278AAAAAAAA\r");
    double before = adapter.clock.seconds();

    Reply reply = vehicle.ask(VehicleRequest.to("7E0", "22F190"), Duration.ofSeconds(1));

    assertThat(reply).isInstanceOf(Reply.NoData.class);
    assertThat(adapter.clock.seconds() - before).isBetween(5.0, 6.0);
  }

  @Test
  void probeTellsThisKindOfAdapterToo() {
    assertThat(AdapterProbe.probe(adapter))
        .isEqualTo(
            new ProbeResult.Adapter(
                "serial CAN, version 1013",
                /* showsSenders= */ true,
                OptionalDouble.empty(),
                new ProbeResult.Vehicle(
                    "ISO 15765-4 (CAN 11/500)", List.of("7E8", "7E9"), 11, "")));
  }

  // Before the adapter is known nothing but questions for identity and version goes out.
  @Test
  void portThatIsNoAdapterSeesOnlyIdentityQuestions() {
    adapter.isMute = true;

    assertThat(AdapterProbe.probe(adapter)).isEqualTo(new ProbeResult.NothingAnswered());
    assertThat(new TreeSet<>(adapter.sent)).containsExactly("ATI", "V");
  }

  @Test
  void everyRequestIsOneFrameOfEightBytes() {
    go(10, () -> {});

    assertThat(adapter.sent.stream().filter(line -> line.startsWith("t")).toList())
        .isNotEmpty()
        .allMatch(line -> line.length() == RPM.length());
    assertThat(adapter.sent).contains("t7DF8020100" + "0".repeat(10));
    assertThat(Requests.currentData(List.of(0))).isEqualTo("0100");
  }
}
