package steadypull.adapter.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Where a device is looked for that was unplugged and plugged in again. */
class SerialPlaceTest {
  private static final UsbIdentity ADAPTER = new UsbIdentity(0x1111, 0x0001, "A7", "1-2");
  private static final UsbIdentity OTHER = new UsbIdentity(0x2222, 0x0001, "A7", "1-2");
  private static final UsbIdentity NAMELESS = new UsbIdentity(0x3333, 0x0001, "", "1-2");
  private static final UsbIdentity NAMELESS_ELSEWHERE = new UsbIdentity(0x3333, 0x0001, "", "1-4");

  @Test
  void aDeviceUnderAnotherNameIsFoundByItsIdentity() {
    assertThat(find(ADAPTER, place("/dev/ttyUSB1", ADAPTER), place("/dev/ttyS0")))
        .isEqualTo("/dev/ttyUSB1");
  }

  @Test
  void aDeviceInAnotherSocketIsFoundBySerialNumber() {
    UsbIdentity moved = new UsbIdentity(0x1111, 0x0001, "A7", "2-1");

    assertThat(find(ADAPTER, place("/dev/ttyUSB4", moved))).isEqualTo("/dev/ttyUSB4");
  }

  // A receiver took the old name while the adapter was out.
  @Test
  void anotherDeviceUnderTheOldNameIsNotMistakenForIt() {
    assertThat(find(ADAPTER, place("/dev/ttyUSB0", OTHER), place("/dev/ttyUSB1", ADAPTER)))
        .isEqualTo("/dev/ttyUSB1");
  }

  @Test
  void theOldNameIsKeptWhileTheDeviceIsThere() {
    assertThat(
            find(
                NAMELESS,
                place("/dev/ttyUSB1", NAMELESS_ELSEWHERE),
                place("/dev/ttyUSB0", NAMELESS)))
        .isEqualTo("/dev/ttyUSB0");
  }

  @Test
  void ofTwoThatCannotBeToldApartTheOneInTheOldSocketIsTaken() {
    assertThat(
            find(
                NAMELESS,
                place("/dev/ttyUSB2", NAMELESS_ELSEWHERE),
                place("/dev/ttyUSB1", NAMELESS)))
        .isEqualTo("/dev/ttyUSB1");
  }

  @Test
  void ofTwoThatCannotBeToldApartInNewSocketsNoneIsTaken() {
    UsbIdentity third = new UsbIdentity(0x3333, 0x0001, "", "1-5");

    assertThat(
            find(NAMELESS, place("/dev/ttyUSB2", NAMELESS_ELSEWHERE), place("/dev/ttyUSB1", third)))
        .isEqualTo("/dev/ttyUSB0");
  }

  @Test
  void withoutAnIdentityTheUsersNameStands() {
    assertThat(
            SerialPlace.find(
                "/dev/ttyUSB0", Optional.empty(), List.of(place("/dev/ttyUSB1", ADAPTER))))
        .isEqualTo("/dev/ttyUSB0");
    assertThat(find(ADAPTER)).isEqualTo("/dev/ttyUSB0");
  }

  @Test
  void aShortNameStandsForItsPath() {
    List<SerialPlace> present =
        List.of(new SerialPlace("\\\\.\\COM3", "COM3", Optional.of(ADAPTER)));

    assertThat(SerialPlace.whoIsAt("com3", present)).contains(ADAPTER);
    assertThat(SerialPlace.find("com3", Optional.of(ADAPTER), present)).isEqualTo("com3");
  }

  private static String find(UsbIdentity remembered, SerialPlace... present) {
    return SerialPlace.find("/dev/ttyUSB0", Optional.of(remembered), List.of(present));
  }

  private static SerialPlace place(String path, UsbIdentity identity) {
    return new SerialPlace(path, path.substring(5), Optional.of(identity));
  }

  private static SerialPlace place(String path) {
    return new SerialPlace(path, path.substring(5), Optional.empty());
  }
}
