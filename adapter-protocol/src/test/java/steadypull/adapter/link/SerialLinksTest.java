package steadypull.adapter.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SerialLinksTest {
  private static final String MISSING = "/dev/steadypull-no-such-port";

  private final SerialLinks links = new SerialLinks();

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/dev/ttyUSB0",
        "/dev/pts/7",
        "COM3",
        "com12",
        "/dev/cu.usbserial-1",
        "ttyACM0",
        "rfcomm0",
        "/dev/ttyUSB0?baud=38400",
        "COM3?baud=115200"
      })
  void deviceNamesAreRecognised(String address) throws LinkException {
    assertThat(links.find(address)).map(LinkSource::address).contains(address);
  }

  @ParameterizedTest
  @ValueSource(strings = {"tcp://host:1", "demo:dyno-pull", "demo:dyno-pull?speed=20", "", "COM"})
  void otherKindsOfAddressAreLeftToOthers(String address) throws LinkException {
    assertThat(links.find(address)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"COM3?baud=fast", "/dev/ttyUSB0?", "/dev/ttyUSB0?speed=9600"})
  void malformedBaudRateIsRefusedWithTheForm(String address) {
    assertThatThrownBy(() -> links.find(address))
        .isInstanceOf(LinkException.class)
        .hasMessageContaining("baud=38400");
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void missingPortIsToldTogetherWithThePortsThatExist() throws LinkException {
    LinkSource source = links.find(MISSING).orElseThrow();

    assertThatThrownBy(source::open)
        .isInstanceOf(LinkException.class)
        .hasMessageContaining(MISSING)
        .hasMessageContaining("there is no such port")
        .hasMessageMatching("(?s).*(Ports present: |No serial port is present).*");
  }

  @Test
  @EnabledOnOs({OS.LINUX, OS.MAC})
  void fileThatIsNoPortIsToldAsSuch() throws LinkException {
    LinkSource source = links.find("/dev/null").orElseThrow();

    assertThatThrownBy(source::open)
        .isInstanceOf(LinkException.class)
        .hasMessageContaining("/dev/null");
  }

  // Without a rate each opening tries the next usual one, so that many openings are worth trying.
  @Test
  void openingsAreWorthRepeatingOnlyWhileTheRateIsOpen() throws LinkException {
    assertThat(links.find("COM3").orElseThrow().waysToOpen()).isGreaterThan(1);
    assertThat(links.find("COM3?baud=9600").orElseThrow().waysToOpen()).isEqualTo(1);
  }

  // Error numbers: IEEE Std 1003.1 <errno.h> with Linux numbering; Windows system error codes.
  @ParameterizedTest
  @CsvSource({
    "2, Linux, NO_SUCH_PORT",
    "13, Linux, NOT_ALLOWED",
    "16, Linux, IN_USE",
    "11, Linux, IN_USE",
    "35, Mac OS X, IN_USE",
    "25, Linux, NOT_A_PORT",
    "5, Linux, OTHER",
    "5, Windows 11, IN_USE",
    "2, Windows 11, NO_SUCH_PORT",
    "13, Windows 11, OTHER"
  })
  void systemErrorsAreReadAsCauses(int code, String system, OpenFailure cause) {
    assertThat(OpenFailure.of(code, system)).isEqualTo(cause);
  }

  @Test
  void missingPermissionNamesTheGroup() {
    assertThat(OpenFailure.NOT_ALLOWED.remedy()).contains("dialout");
  }

  // The library's behaviour, version 2.11.4: a missing port fails when asked for, not when opened.
  @Test
  @EnabledOnOs(OS.LINUX)
  void libraryRefusesAMissingPortBeforeOpening() {
    assertThatThrownBy(() -> SerialPort.getCommPort(MISSING))
        .isInstanceOf(SerialPortInvalidPortException.class);
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void pseudoTerminalIsASerialPortToo() throws Exception {
    try (PseudoTerminalPair pair = PseudoTerminalPair.open();
        Link link = links.find(pair.path()).orElseThrow().open()) {
      assertThatThrownBy(() -> link.write("04\r".getBytes(StandardCharsets.US_ASCII)))
          .as("whoever opens a real port gets it behind the gate")
          .isInstanceOf(RefusedRequestException.class);
      link.write("ATI\r".getBytes(StandardCharsets.US_ASCII));
      assertThat(pair.read(4)).isEqualTo("ATI\r");

      assertThat(link.read(Duration.ZERO)).isEmpty();
      pair.write("NAME\r\r>");
      assertThat(link.read(Duration.ofSeconds(10))).startsWith('N');
    }
  }

  // What stands behind a device that is pulled out: the other side of the terminal is gone.
  @Test
  @EnabledOnOs(OS.LINUX)
  void deviceThatHangsUpEndsTheLink() throws Exception {
    try (PseudoTerminalPair pair = PseudoTerminalPair.open();
        Link link = links.find(pair.path()).orElseThrow().open()) {
      pair.hangUp();

      assertThatThrownBy(() -> link.read(Duration.ofSeconds(30)))
          .isInstanceOf(LinkException.class)
          .hasMessageContaining(pair.path())
          .hasMessageContaining("Check the plug");
    }
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void rateThatBroughtAPromptIsKeptAndOthersAreTriedUntilThen() throws Exception {
    try (PseudoTerminalPair pair = PseudoTerminalPair.open()) {
      LinkSource source = links.find(pair.path()).orElseThrow();
      source.open().close();
      long second = pair.baudRateWhile(source);
      long third = pair.baudRateWhile(source);
      try (Link link = source.open()) {
        pair.write("NAME\r\r>");
        assertThat(link.read(Duration.ofSeconds(10))).isNotEmpty();
      }
      long afterPrompt = pair.baudRateWhile(source);

      assertThat(second).isNotEqualTo(third);
      assertThat(afterPrompt).isNotEqualTo(second).isNotEqualTo(third);
    }
  }
}
