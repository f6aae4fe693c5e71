package steadypull.adapter.diagnostic;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.frame.Payload;

/**
 * Message shapes of SAE J1979 (ISO 15031-5) services 02 and 09; widths of the items of service 09
 * from memory.
 */
class VehicleServicesTest {
  private static final String CALIBRATION = "4341312D30303037"; // CA1-0007
  private static final String FILLER = "0000000000000000";

  @Test
  void freezeFrameIsAskedForByParameterAndFrame() {
    assertThat(FreezeFrame.request(0x05)).isEqualTo("020500");
    assertThat(FreezeFrame.request(FreezeFrame.CODE_PARAMETER)).isEqualTo("020200");
  }

  @Test
  void frozenDataStandBehindParameterAndFrame() {
    assertThat(FreezeFrame.data(0x0C, Payload.ofHex("42 0C 00 1F 40")))
        .contains(Payload.ofHex("1F40"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"42 0C 01 1F 40", "42 0D 00 50", "41 0C 1F 40", "42 0C 00", "7F 02 12"})
  void answersToSomethingElseAreNoFrozenData(String hex) {
    assertThat(FreezeFrame.data(0x0C, Payload.ofHex(hex))).isEmpty();
  }

  @Test
  void theCodeThatStoredTheFrameIsTold() {
    assertThat(FreezeFrame.code(Payload.ofHex("42 02 00 02 99")))
        .contains(new TroubleCode("P0299"));
    assertThat(FreezeFrame.code(Payload.ofHex("42 02 00 00 00"))).as("no frame").isEmpty();
    assertThat(FreezeFrame.code(Payload.ofHex("42 02 00 02"))).as("cut short").isEmpty();
  }

  @Test
  void onCanCalibrationsAreCounted() {
    assertThat(
            InformationItem.CALIBRATIONS.read(
                true,
                List.of(Payload.ofHex("49 04 02" + CALIBRATION + FILLER + FILLER + CALIBRATION))))
        .containsExactly("CA1-0007", "CA1-0007");
  }

  @Test
  void beforeCanFieldsComeFourBytesAMessageInAnyOrder() {
    assertThat(
            InformationItem.CALIBRATIONS.read(
                false,
                List.of(
                    Payload.ofHex("49 04 02 30 30 30 37"),
                    Payload.ofHex("49 04 01 43 41 31 2D"),
                    Payload.ofHex("49 04 03 00 00 00 00"),
                    Payload.ofHex("49 04 04 00 00 00 00"))))
        .containsExactly("CA1-0007");
  }

  @Test
  void aMissingMessageIsNotGuessed() {
    assertThat(
            InformationItem.CALIBRATIONS.read(
                false,
                List.of(
                    Payload.ofHex("49 04 01 43 41 31 2D"),
                    Payload.ofHex("49 04 02 30 30 30 37"),
                    Payload.ofHex("49 04 04 00 00 00 00"),
                    Payload.ofHex("49 04 05 00 00 00 00"))))
        .isEmpty();
  }

  @Test
  void verificationNumbersAreToldAsHex() {
    assertThat(
            InformationItem.VERIFICATION_NUMBERS.read(
                true, List.of(Payload.ofHex("49 06 02 12 34 AB CD 00 00 00 01"))))
        .containsExactly("1234ABCD", "00000001");
  }

  // A short name, a zero, a long name: twenty bytes.
  @Test
  void nameIsShortAndLong() {
    String name = "45434D00" + "2D456E67696E65436F6E74726F6C0000";

    assertThat(InformationItem.NAME.read(true, List.of(Payload.ofHex("49 0A 01" + name))))
        .containsExactly("ECM -EngineControl");
    assertThat(InformationItem.NAME.request()).isEqualTo("090A");
  }

  @ParameterizedTest
  @CsvSource({
    "49 0A 01 45 43 4D", // cut short
    "49 0A 02 45434D002D456E67696E65436F6E74726F6C0000", // counts more than there is
    "49 04 01 45434D002D456E67696E65436F6E74726F6C0000", // another item
    "7F 09 12"
  })
  void answersOfAnotherLengthOrItemAreNone(String hex) {
    assertThat(InformationItem.NAME.read(true, List.of(Payload.ofHex(hex)))).isEmpty();
  }

  @Test
  void fillerAloneIsNoName() {
    assertThat(
            InformationItem.NAME.read(true, List.of(Payload.ofHex("49 0A 01" + "00".repeat(20)))))
        .isEmpty();
  }

  // SAE J1979: maps go on to C0 and E0; the last bit of E0 has no map behind it.
  @Test
  void theLastSupportMapsAreReadLikeTheFirst() {
    SupportMap map =
        SupportMap.empty()
            .with(0xC0, Payload.ofHex("80 00 00 01"))
            .with(0xE0, Payload.ofHex("80 00 00 03"));

    assertThat(map.supports(0xE0)).isTrue();
    assertThat(map.parameters()).containsExactly(0xC1, 0xE1, 0xFF);
  }
}
