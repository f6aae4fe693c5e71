package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.diagnostic.SupportMap;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;

/** The vehicle of before, found anew while answers are lost or damaged. */
class VehicleFoundAnewTest {
  private static final String NUMBER = "1ZZTP9AG1R0000042";
  private static final String MAP = "18 1A 80 03";
  private static final String SECOND_MAP = "00 02 00 01";

  private final VehicleKnowledge earlier = vehicle(NUMBER, MAP);

  @Test
  void aMapThatWasLostTakesNothingThatWasAnsweredBefore() {
    earlier.unit("7E8").learnSupport(0x20, Payload.ofHex(SECOND_MAP));
    answered(earlier, "7E8", 0x2F);
    VehicleKnowledge anew = vehicle(NUMBER, MAP);

    assertThat(anew.recognises(earlier)).isTrue();
    assertThat(anew.unitFor(0x2F)).contains("7E8");
    assertThat(anew.unit("7E8").lengths()[0x2F]).isEqualTo(1);
  }

  @Test
  void aMapThatWasLostBeforeIsTakenNow() {
    VehicleKnowledge anew = vehicle("", MAP);
    anew.unit("7E8").learnSupport(0x20, Payload.ofHex(SECOND_MAP));

    assertThat(anew.recognises(earlier)).isTrue();
    assertThat(anew.isSupported(0x2F)).isTrue();
  }

  // What was claimed by mistake would be asked for at every new connection.
  @Test
  void whatWasNeverAnsweredAndIsClaimedNoMoreIsForgotten() {
    VehicleKnowledge anew = vehicle("", "18 18 80 03");

    assertThat(earlier.isSupported(0x0F)).isTrue();
    assertThat(anew.recognises(earlier)).isTrue();
    assertThat(anew.isSupported(0x0F)).isFalse();
    assertThat(anew.isSupported(0x0C)).isTrue();
  }

  // The lower address would be believed, and what the other goes on answering would be lost.
  @Test
  void aDamagedClaimDoesNotDisplaceWhoHasAnswered() {
    earlier.unit("7E9").learnSupport(0, Payload.ofHex("02 00 00 00"));
    answered(earlier, "7E9", 0x07);
    VehicleKnowledge anew = vehicle(NUMBER, "1A 1A 80 03");
    anew.unit("7E0").learnSupport(0, Payload.ofHex("02 00 00 00"));

    assertThat(anew.unitFor(0x07)).contains("7E0");
    assertThat(anew.recognises(earlier)).isTrue();
    assertThat(anew.unitFor(0x07)).contains("7E9");
  }

  @Test
  void aControlUnitThatMissedTheSearchIsKept() {
    earlier.unit("7E9").learnSupport(0, Payload.ofHex("02 00 00 00"));
    answered(earlier, "7E9", 0x07);
    VehicleKnowledge anew = vehicle(NUMBER, MAP);

    assertThat(anew.recognises(earlier)).isTrue();
    assertThat(anew.unitFor(0x07)).contains("7E9");
  }

  @ParameterizedTest
  @CsvSource({
    // The number is that of the vehicle, or one character of it damaged: whatever the maps say.
    "1ZZTP9AG1R0000042, FFFFFFFF, true",
    "1ZZTP9AG1R0000043, FFFFFFFF, true",
    // Another number beside equal maps, and beside maps with one difference.
    "1ZZTP9AG1R0000999, 181A8003, true",
    "1ZZTP9AG1R0000999, 181A8001, false",
    // No number: two differences, and three.
    "'', 18198003, true",
    "'', 18198001, false",
  })
  void numberAndMapsTellWhetherItIsTheVehicle(String number, String map, boolean isSame) {
    assertThat(vehicle(number, map).recognises(earlier)).isEqualTo(isSame);
  }

  @Test
  void anotherProtocolIsAnotherVehicleUnlessTheAdapterDoesNotTell() {
    VehicleKnowledge slow = vehicle("8", NUMBER, MAP);
    VehicleKnowledge untold = vehicle("", NUMBER, MAP);

    assertThat(slow.recognises(earlier)).isFalse();
    assertThat(untold.recognises(earlier)).isTrue();
  }

  @Test
  void anotherControlUnitAloneIsAnotherVehicle() {
    VehicleKnowledge other = new VehicleKnowledge(MessageFormat.CAN_11_BIT, "6", "");
    other.unit("7E9").learnSupport(0, Payload.ofHex(MAP));

    assertThat(other.recognises(earlier)).isFalse();
  }

  /** A whole drive: the adapter restarts, and the maps are lost while the vehicle is found anew. */
  @ParameterizedTest
  @ValueSource(strings = {"0120", "0140", "0160"})
  void everythingIsReadOnWhereAMapIsLostAfterARestart(String lost) {
    ScriptedDrive drive = new ScriptedDrive();
    boolean[] isRestarted = {false};
    drive.adapter.wire =
        reply -> {
          boolean isDue = !isRestarted[0] && drive.adapter.clock.seconds() > 30;
          isRestarted[0] |= isDue;
          return isDue ? "LV RESET\r\r>" : reply;
        };
    drive.go(
        60,
        now -> {
          if (now > 29) {
            drive.vehicle.fixed.put("7DF " + lost, "NO DATA\r");
          }
        });

    assertThat(isRestarted[0]).isTrue();
    assertThat(drive.adapter.sent.stream().filter(lost::equals).count()).isGreaterThan(2);
    for (String key : List.of("01.0C", "01.33", "01.46", "01.61", "01.67.1", "01.77.1")) {
      assertThat(drive.lastReadAt(key)).as(key).isGreaterThan(48);
    }
  }

  private static VehicleKnowledge vehicle(String number, String map) {
    return vehicle("6", number, map);
  }

  private static VehicleKnowledge vehicle(String protocol, String number, String map) {
    VehicleKnowledge vehicle =
        new VehicleKnowledge(MessageFormat.CAN_11_BIT, protocol, "ISO 15765-4");
    vehicle.unit("7E8").learnSupport(0, Payload.ofHex(map.replace(" ", "")));
    vehicle.learnVin(number);
    return vehicle;
  }

  private static void answered(VehicleKnowledge vehicle, String unit, int parameter) {
    vehicle.unit(unit).learn(parameter, Payload.ofHex("55"));
  }

  @Test
  void mapsThatOnlyOneHasContradictNothing() {
    SupportMap first = SupportMap.empty().with(0, Payload.ofHex("181A8003"));
    SupportMap both = first.with(0x20, Payload.ofHex("FFFFFFFF"));

    assertThat(first.differencesFrom(both)).isZero();
    assertThat(both.differencesFrom(first)).isZero();
    assertThat(first.differencesFrom(SupportMap.empty().with(0, Payload.ofHex("181B8002"))))
        .isEqualTo(2);
  }
}
