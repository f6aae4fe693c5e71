package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.link.LinkException;

/**
 * Asking a vehicle through a serial CAN adapter. Identifiers, bit rates and their order: ISO
 * 15765-4; flow control: ISO 15765-2; as the transport sheet gives them, sections 1 and 2.
 */
class SerialCanVehicleTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedSerialCan adapter = new ScriptedSerialCan(drive.vehicle);

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

  @Test
  void answerAfterPendingIsTheAnswer() throws LinkException {
    SerialCanVehicle vehicle = connected();
    drive.vehicle.fixed.put("7E0 221E1C", "7E8037F2278AAAAAAAA\r7E805621E1C0640AAAA\r");

    assertThat(vehicle.ask(VehicleRequest.to("7E0", "221E1C"), Duration.ofSeconds(1)))
        .isInstanceOf(Reply.Data.class);
    assertThat(vehicle.messages().count()).isEqualTo(1);
    assertThat(vehicle.messages().message(0).payload().toString()).isEqualTo("621E1C0640");
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
  void controlUnitThatBeginsAgainAndAgainIsNotAnsweredForEver() throws LinkException {
    SerialCanVehicle vehicle = connected();
    adapter.traffic = "t7EA8100B417807170C12\r";
    adapter.repeatsTraffic = true;
    double before = adapter.clock.seconds();

    vehicle.ask(VehicleRequest.toEverybody("03"), Duration.ofSeconds(1));

    assertThat(adapter.sent.stream().filter(line -> line.startsWith("t7E2830")).count())
        .isEqualTo(32);
    assertThat(adapter.clock.seconds() - before).isLessThan(1);
  }

  // Whatever is on the bus: the gate must never have to refuse an answer to it.
  @Test
  void framesOfAnySenderAndKindAreSurvived() throws LinkException {
    long seed = 15;
    Random random = new Random(seed);
    for (CanBus bus : List.of(CanBus.SHORT_500, CanBus.LONG_500)) {
      ScriptedSerialCan scripted = vehicleOn(bus);
      SerialCanVehicle vehicle = new SerialCanVehicle(channel(scripted));
      vehicle.search("");
      for (int round = 0; round < 2000; round++) {
        scripted.traffic = frame(random, bus.isLong()) + frame(random, random.nextBoolean());
        Reply reply = vehicle.ask(VehicleRequest.toEverybody("03"), Duration.ofSeconds(1));
        assertThat(reply)
            .as("seed %d, round %d, %s", seed, round, scripted.traffic)
            .isInstanceOfAny(Reply.Data.class, Reply.NoData.class);
      }
    }
  }

  private static String frame(Random random, boolean isLong) {
    String identifier =
        isLong
            ? "T18DAF1%02X".formatted(random.nextInt(4) == 0 ? 0xF1 : random.nextInt(256))
            : "t%03X"
                .formatted(
                    random.nextInt(4) == 0 ? random.nextInt(0x800) : 0x7E8 + random.nextInt(8));
    return "%s8%01X%015X\r"
        .formatted(identifier, random.nextInt(5), random.nextLong() & 0xFFFFFFFFFFFFFFFL);
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
}
