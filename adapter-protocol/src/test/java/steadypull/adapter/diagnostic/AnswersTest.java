package steadypull.adapter.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.adapter.frame.Payload;

/** Message shapes: SAE J1979 (ISO 15031-5) services 01 and 09, ISO 14229-1 service 22 and 7F. */
class AnswersTest {
  // An answer that came after the adapter's own time-out appears in the next reply.
  @Test
  void lateAnswerToAnotherRequestIsAStray() {
    assertThat(Answers.toOne(0x05, Payload.ofHex("41 0D 50"))).isEqualTo(new Answer.Stray());
    assertThat(Answers.toIdentifier(0x1E1C, Payload.ofHex("62 1E 1D 00")))
        .isEqualTo(new Answer.Stray());
    assertThat(Answers.toOne(0x05, Payload.ofHex("7F 22 31"))).isEqualTo(new Answer.Stray());
  }

  @Test
  void parameterAskedAloneTellsItsOwnLength() {
    assertThat(Answers.toOne(0x68, Payload.ofHex("41 68 03 43 5A")))
        .isEqualTo(new Answer.CurrentData(Map.of(0x68, Payload.ofHex("03435A"))));
  }

  @Test
  void identifierAnswerIsEverythingAfterIt() {
    assertThat(Answers.toIdentifier(0x1E1C, Payload.ofHex("62 1E 1C 08 20")))
        .isEqualTo(new Answer.IdentifiedData(Payload.ofHex("0820")));
  }

  // ISO 14229-1 table of negative response codes.
  @ParameterizedTest
  @CsvSource({
    "78, PENDING",
    "21, BUSY",
    "22, NOT_NOW",
    "13, TOO_MUCH",
    "14, TOO_MUCH",
    "11, NEVER",
    "12, NEVER",
    "31, NEVER",
    "33, NEVER",
    "7E, NEVER",
    "7F, NEVER",
    "10, GENERAL",
    "99, GENERAL"
  })
  void refusalsAreReadByWhatToDo(String code, NegativeCode meaning) {
    assertThat(Answers.toIdentifier(0x1E1C, Payload.ofHex("7F 22 " + code)))
        .isEqualTo(new Answer.Refused(meaning));
  }

  // Made-up number with a right check digit (49 CFR 565 weights).
  @Test
  void identificationNumberComesInOneMessageOnCanAndInFiveBefore() {
    Payload can = Payload.ofHex("49 02 01 315A5A5450394147315230303030303432");
    List<Payload> before =
        List.of(
            Payload.ofHex("49 02 02 5A 5A 54 50"),
            Payload.ofHex("49 02 01 00 00 00 31"),
            Payload.ofHex("49 02 03 39 41 47 31"),
            Payload.ofHex("49 02 04 52 30 30 30"),
            Payload.ofHex("49 02 05 30 30 34 32"));

    assertThat(VehicleIdentification.read(List.of(can))).contains("1ZZTP9AG1R0000042");
    assertThat(VehicleIdentification.read(before)).contains("1ZZTP9AG1R0000042");
  }

  @Test
  void brokenIdentificationNumberIsNone() {
    assertThat(VehicleIdentification.read(List.of())).isEqualTo(Optional.empty());
    assertThat(VehicleIdentification.read(List.of(Payload.ofHex("49 02 01 315A5A")))).isEmpty();
    assertThat(
            VehicleIdentification.read(
                List.of(Payload.ofHex("49 02 01 FFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFFF"))))
        .isEmpty();
  }

  // SAE J1979 support maps: bit 7 of byte A is the next number, bit 0 of byte D the next map.
  @Test
  void supportMapsAreReadBitByBit() {
    SupportMap map = SupportMap.empty().with(0x60, Payload.ofHex("8E 00 0B 01"));

    assertThat(map.parameters()).containsExactly(0x61, 0x65, 0x66, 0x67, 0x75, 0x77, 0x78);
    assertThat(map.supports(0x80)).as("the next map").isTrue();
    assertThat(map.supports(0x62)).isFalse();
  }

  @Test
  void supportMapsAddUp() {
    SupportMap map = SupportMap.empty().with(0, Payload.ofHex("98 3B A0 13"));

    assertThat(map.parameters())
        .containsExactly(0x01, 0x04, 0x05, 0x0B, 0x0C, 0x0D, 0x0F, 0x10, 0x11, 0x13, 0x1C, 0x1F);
    assertThat(map.supports(0x20)).isTrue();
    assertThat(map.with(0x20, Payload.ofHex("00 00 20 00")).supports(0x33)).isTrue();
    assertThat(map.with(0x20, Payload.ofHex("FF FF"))).as("cut short").isEqualTo(map);
  }

  @Test
  void requestsHoldSixParametersAtMost() {
    assertThat(Requests.currentData(List.of(0x04, 0x05, 0x0B, 0x0C, 0x0D, 0x0F)))
        .isEqualTo("0104050B0C0D0F");
    assertThat(Requests.currentData(List.of(0xA4))).isEqualTo("01A4");
    assertThat(Requests.identifier(0xF190)).isEqualTo("22F190");
    assertThat(Requests.identifier(0x1C)).isEqualTo("22001C");
    assertThatThrownBy(() -> Requests.currentData(List.of(1, 2, 3, 4, 5, 6, 7)))
        .hasMessageContaining("1 to 6");
  }
}
