package steadypull.adapter.capture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/** What went over a link stands in a file, and the file is a link again. */
class CaptureTest {
  private static final Instant STARTED = Instant.parse("2026-07-15T17:45:12Z");
  private static final Duration SECOND = Duration.ofSeconds(1);

  @TempDir private Path folder;

  private final ScriptedPort port = new ScriptedPort();

  @Test
  void dialogueIsWrittenAsItGoes() throws IOException {
    try (Capture capture = begin(false)) {
      Link link = capture.around(port).open();
      say(link, "ATI\r", 0.25, "NAME\\1\0\r", 0.5, "\r>");
      assertThat(lines())
          .as("before the file is closed: a killed program leaves its capture")
          .containsExactly(
              "steadypull-capture 1",
              "address scripted:port",
              "started 2026-07-15T17:45:12Z",
              "software test 1",
              "vin masked",
              "0.000000 opened",
              "0.000000 sent ATI\\r",
              "0.250000 heard NAME\\\\1\\x00\\r",
              "0.750000 heard \\r>");
      link.close();
    }
    assertThat(lines().getLast()).isEqualTo("0.750000 closed");
  }

  @Test
  void lossesAndRefusalsAreKept() throws IOException {
    try (Capture capture = begin(false)) {
      LinkSource source = capture.around(port);
      Link link = source.open();
      port.failure = port.failure("the device has gone");
      assertThatThrownBy(() -> link.read(SECOND)).isInstanceOf(LinkException.class);
      link.close();
      assertThatThrownBy(source::open).isInstanceOf(LinkException.class);
      port.failure = null;
      source.open().close();
    }

    assertThat(lines().subList(5, lines().size()))
        .extracting(line -> line.replaceAll("^\\S+ (\\S+).*", "$1"))
        .containsExactly("opened", "lost", "refused", "opened", "closed");
    assertThat(lines().get(6)).contains("the device has gone");
  }

  @Test
  void aCaptureNeverOverwritesAnother() throws IOException {
    begin(false).close();

    assertThatThrownBy(() -> begin(false)).isInstanceOf(FileAlreadyExistsException.class);
  }

  // Whatever goes over a link and however it is cut: what comes back is the same.
  @Test
  void everyDialogueIsReplayedAsItWas() throws IOException {
    long seed = 4_711;
    Random random = new Random(seed);
    for (int round = 0; round < 60; round++) {
      Files.deleteIfExists(file());
      String[] heard = new String[8];
      try (Capture capture = begin(true)) {
        Link link = capture.around(port).open();
        for (int i = 0; i < heard.length; i++) {
          heard[i] = noise(random);
          say(link, "22%04X\r".formatted(i), 0.01 + random.nextDouble(), heard[i]);
        }
        link.close();
      }
      Link replayed = replay("?speed=max").open();
      for (int i = 0; i < heard.length; i++) {
        replayed.write(bytes("22%04X\r".formatted(i)));
        assertThat(text(replayed.read(Duration.ofSeconds(2))))
            .as("seed %d, round %d", seed, round)
            .isEqualTo(heard[i]);
      }
    }
  }

  @Test
  void answersTakeAsLongAsTheyTook() throws IOException {
    try (Capture capture = begin(false)) {
      say(capture.around(port).open(), "010C\r", 0.3, "7E804410C1F40\r\r>");
    }
    LinkSource source = replay("?speed=max");
    Link link = source.open();
    link.write(bytes("010C\r"));

    assertThat(link.read(Duration.ofMillis(299))).isEmpty();
    assertThat(text(link.read(Duration.ofMillis(1)))).isEqualTo("7E804410C1F40\r\r>");
    assertThat(source.clock().nanoTime()).isEqualTo(300_000_000);
  }

  // Another version of the reader may ask in another order and for other things.
  @Test
  void otherQuestionsAreAnsweredAsFarAsTheCaptureGoes() throws IOException {
    try (Capture capture = begin(false)) {
      Link link = capture.around(port).open();
      say(link, "010C\r", 0.1, "7E804410C1F40\r\r>");
      say(link, "0105\r", 0.1, "7E803410582\r\r>");
      say(link, "010C\r", 0.1, "7E804410C2F40\r\r>");
      port.pause(Duration.ofSeconds(30));
      say(link, "010C\r", 0.1, "7E804410C3F40\r\r>");
      port.pause(Duration.ofSeconds(30));
      link.close();
    }
    Link link = replay("?speed=max").open();

    assertThat(asked(link, "0105\r")).isEqualTo("7E803410582\r\r>");
    assertThat(asked(link, "010C\r")).isEqualTo("7E804410C1F40\r\r>");
    assertThat(asked(link, "010C\r")).isEqualTo("7E804410C2F40\r\r>");
    assertThat(asked(link, "010C\r")).as("the next lies far ahead").contains("0C2F40");
    assertThat(asked(link, "010D\r")).as("never asked then").isEqualTo("NO DATA\r\r>");
    assertThat(asked(link, "ATST19\r")).isEqualTo("?\r\r>");
    link.read(Duration.ofSeconds(29));
    assertThat(asked(link, "010C\r")).isEqualTo("7E804410C3F40\r\r>");
  }

  @Test
  void portIsLostRefusesAndComesBackWhenItDid() throws IOException {
    try (Capture capture = begin(false)) {
      LinkSource source = capture.around(port);
      Link first = source.open();
      say(first, "ATI\r", 0.1, "NAME\r\r>");
      port.pause(SECOND);
      port.failure = port.failure("the device has gone");
      assertThatThrownBy(() -> first.read(SECOND)).isInstanceOf(LinkException.class);
      port.pause(SECOND);
      assertThatThrownBy(source::open).isInstanceOf(LinkException.class);
      port.failure = null;
      port.pause(SECOND);
      say(source.open(), "ATI\r", 0.1, "OTHER NAME\r\r>");
    }
    LinkSource source = replay("?speed=max");
    Link first = source.open();
    assertThat(asked(first, "ATI\r")).isEqualTo("NAME\r\r>");
    assertThatThrownBy(() -> first.read(Duration.ofSeconds(5)))
        .isInstanceOf(LinkException.class)
        .hasMessageContaining("the device has gone")
        .hasMessageContaining("recording");
    assertThatThrownBy(source::open).hasMessageContaining("the device has gone");
    assertThat(asked(source.open(), "ATI\r")).isEqualTo("OTHER NAME\r\r>");
    assertThatThrownBy(() -> source.open().read(Duration.ofSeconds(5)))
        .hasMessageContaining("ends here");
    assertThatThrownBy(source::open).hasMessageContaining("the capture ends here");
  }

  @Test
  void captureOfAKilledProgramIsReplayedUpToItsLastWholeLine() throws IOException {
    try (Capture capture = begin(false)) {
      say(capture.around(port).open(), "ATI\r", 0.1, "NAME\r\r>");
    }
    Files.writeString(file(), "9.9999", StandardOpenOption.APPEND);

    assertThat(asked(replay("?speed=max").open(), "ATI\r")).isEqualTo("NAME\r\r>");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "nonsense",
        "1.5 heard NAME",
        "1.500000 dreamt NAME",
        "1.500000 heard NA\\qME",
        "1.500000 heard NA\\xZZ",
        "1.500000 heard NA\\",
        "99999999999999999999.500000 heard NAME"
      })
  void damagedLineIsNamed(String line) throws IOException {
    begin(false).close();
    Files.writeString(file(), "0.000000 opened\n" + line + "\n", StandardOpenOption.APPEND);

    assertThatThrownBy(() -> replay(""))
        .isInstanceOf(LinkException.class)
        .hasMessageContaining("line 7")
        .hasMessageContaining(line.substring(0, 5));
  }

  @Test
  void whatIsNoCaptureIsToldApart() throws IOException {
    begin(false).close();
    Files.writeString(file(), "time[s],engine_speed[r/min]\n");

    assertThatThrownBy(() -> replay("")).hasMessageContaining("steadypull-capture 1");
    assertThatThrownBy(() -> new CaptureLinks().find("capture:" + folder.resolve("none")))
        .hasMessageContaining("no such file");
    assertThatThrownBy(() -> new CaptureLinks().find("capture:"))
        .hasMessageContaining("capture:FILE");
    assertThat(new CaptureLinks().find("/dev/ttyUSB0")).isEmpty();
    assertThat(CaptureLinks.lasts("demo:cool-day")).isEmpty();
  }

  // Damaged by hand or by a disk: refused with a message or replayed, never anything else.
  @Test
  void anyDamageIsSurvived() throws IOException {
    try (Capture capture = begin(false)) {
      Link link = capture.around(port).open();
      for (int i = 0; i < 10; i++) {
        say(link, "010C\r", 0.1, "7E804410C1F40\r\r>");
      }
    }
    byte[] whole = Files.readAllBytes(file());
    long seed = 1_961;
    Random random = new Random(seed);
    int replayed = 0;
    for (int round = 0; round < 400; round++) {
      byte[] damaged = whole.clone();
      for (int hits = 0; hits <= random.nextInt(3); hits++) {
        damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
      }
      Files.write(file(), damaged);
      try {
        asked(replay("?speed=max").open(), "010C\r");
        replayed++;
      } catch (LinkException toldInWords) {
        assertThat(toldInWords.getMessage()).as("seed %d", seed).isNotBlank();
      }
    }
    assertThat(replayed).as("seed %d", seed).isPositive();
  }

  // A replay that went on telling the last speed would invent a drive.
  @Test
  void whatTheVehicleNoLongerSaidIsNotHeardAgain() throws IOException {
    try (Capture capture = begin(false)) {
      Link link = capture.around(port).open();
      say(link, "0902\r", 0.1, "7E806490201000000\r\r>");
      say(link, "010C\r", 0.1, "7E804410C1F40\r\r>");
      for (int i = 0; i < 6; i++) {
        say(link, "010D\r", 5.0, "7E803410D50\r\r>");
      }
      say(link, "ATRV\r", 40.0, "12.4V\r\r>");
    }
    LinkSource source = replay("?speed=max");
    Link link = source.open();
    assertThat(asked(link, "010C\r")).startsWith("7E8");

    pauseUntil(source, 17);
    assertThat(asked(link, "010C\r")).as("measured long ago").startsWith("NO DATA");
    assertThat(asked(link, "010D\r")).isEmpty(); // takes its 5 s
    assertThat(asked(link, "0902\r")).as("what a vehicle is stays so").startsWith("7E8");

    pauseUntil(source, 50);
    assertThat(asked(link, "0902\r")).as("nobody was heard").startsWith("NO DATA");
    assertThat(asked(link, "010D\r")).startsWith("NO DATA");
  }

  private static void pauseUntil(LinkSource source, double seconds) {
    try {
      source.clock().pause(Duration.ofNanos(Math.round(seconds * 1e9) - source.clock().nanoTime()));
    } catch (InterruptedException hurried) {
      throw new AssertionError(hurried);
    }
  }

  @Test
  void notesOfTheHeadAreReadAgainAsTheyWere() throws IOException {
    Map<String, String> notes = Map.of("vehicle", "{\n  \"name\": \"a\\\\b\"\n}", "pace", "FULL");
    Capture.begin(file(), new CaptureHead("p", STARTED, "test", false, notes)).close();

    String address = "capture:" + file();
    assertThat(CaptureLinks.note(address, "vehicle")).contains(notes.get("vehicle"));
    assertThat(CaptureLinks.note(address, "pace")).contains("FULL");
    assertThat(CaptureLinks.note(address, "weather")).isEmpty();
    assertThat(CaptureLinks.note("/dev/ttyUSB0", "pace")).isEmpty();
  }

  private Path file() {
    return folder.resolve("captures").resolve("one.capture");
  }

  private Capture begin(boolean keepsVin) throws IOException {
    return Capture.begin(
        file(), new CaptureHead(port.address(), STARTED, "test 1", keepsVin, Map.of()));
  }

  private LinkSource replay(String option) throws IOException {
    return new CaptureLinks().find("capture:" + file() + option).orElseThrow();
  }

  private List<String> lines() throws IOException {
    return Files.readAllLines(file(), StandardCharsets.US_ASCII);
  }

  /** Asks over a captured link and hears pieces, each after so many seconds. */
  private void say(Link link, String request, Object... delaysAndPieces) throws LinkException {
    for (int i = 0; i < delaysAndPieces.length; i += 2) {
      port.says((Double) delaysAndPieces[i], (String) delaysAndPieces[i + 1]);
    }
    link.write(bytes(request));
    for (int i = 0; i < delaysAndPieces.length; i += 2) {
      link.read(SECOND);
    }
  }

  private static String asked(Link link, String request) throws LinkException {
    link.write(bytes(request));
    return text(link.read(SECOND));
  }

  private static String noise(Random random) {
    byte[] noise = new byte[1 + random.nextInt(60)];
    random.nextBytes(noise);
    return text(noise).replaceAll("[\r\n>]", "#") + ">";
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.ISO_8859_1);
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }
}
