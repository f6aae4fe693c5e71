package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

class BenchLinksTest {
  private static final List<String> SOME_DRIVING =
      List.of("ATZ", "ATE0", "ATS0", "ATH1", "0100", "0105", "010C0D0F", "0167", "ATRV", "0902");

  /** Longer than a search that finds nothing. */
  private static final Duration PATIENCE = Duration.ofSeconds(12);

  private final BenchLinks links = new BenchLinks();

  @Test
  void addressOfAnotherKindIsNotOurs() throws Exception {
    assertThat(links.find("/dev/ttyUSB0")).isEmpty();
    assertThat(links.find("tcp://localhost:35000")).isEmpty();
  }

  @Test
  void misspeltScenarioIsAnsweredWithTheNearestAndTheList() {
    assertThatThrownBy(() -> links.find("demo:long-hot-grad"))
        .isInstanceOf(LinkException.class)
        .hasMessageContaining("long-hot-grad\"")
        .hasMessageContaining("Did you mean long-hot-grade?")
        .hasMessageContaining("cool-day")
        .hasMessageContaining("dyno-pull");
  }

  @Test
  void wordFarFromEveryScenarioGetsTheListOnly() {
    assertThatThrownBy(() -> links.find("demo:submarine"))
        .isInstanceOf(LinkException.class)
        .hasMessageNotContaining("Did you mean")
        .hasMessageContaining("long-hot-grade");
  }

  @Test
  void settingThatIsNotUnderstoodIsNamed() {
    for (String setting : List.of("speed=fast", "pace=2", "start=-1", "start=9999", "fault=fire")) {
      assertThatThrownBy(() -> links.find("demo:cool-day?" + setting))
          .as(setting)
          .isInstanceOf(LinkException.class)
          .hasMessageContaining("Write demo:SCENARIO");
    }
  }

  @Test
  void sameSeedGivesTheSameBytesAtAnySpeed() throws Exception {
    byte[] unpaced = conversation("demo:long-hot-grade?speed=max&seed=5", Slicing.WHOLE);
    byte[] paced = conversation("demo:long-hot-grade?speed=2000&seed=5", Slicing.WHOLE);
    byte[] another = conversation("demo:long-hot-grade?speed=max&seed=6", Slicing.WHOLE);

    assertThat(paced).isEqualTo(unpaced);
    assertThat(another).isNotEqualTo(unpaced);
  }

  @Test
  void commandsCutAnywhereAreAnsweredAlike() throws Exception {
    byte[] whole = conversation("demo:cool-day?speed=max&start=300", Slicing.WHOLE);

    assertThat(conversation("demo:cool-day?speed=max&start=300", Slicing.SINGLE_BYTES))
        .isEqualTo(whole);
    for (long seed = 1; seed <= 5; seed++) {
      Random cuts = new Random(seed);
      assertThat(conversation("demo:cool-day?speed=max&start=300", most -> 1 + cuts.nextInt(most)))
          .as("slicing seed %d", seed)
          .isEqualTo(whole);
    }
  }

  @Test
  void timePassesByWhatTheLineCarriesAndByPatience() throws Exception {
    LinkSource source = links.find("demo:cool-day?speed=max").orElseThrow();
    Link link = source.open();
    long start = source.clock().nanoTime();
    link.write(new byte[100]);

    // 115200 baud, ten bits a character: 86.8 us each (sheet of transports, section 4).
    assertThat(source.clock().nanoTime() - start).isBetween(8_600_000L, 8_800_000L);
    assertThat(link.read(Duration.ofSeconds(3))).isEmpty();
    assertThat(source.clock().nanoTime() - start).isBetween(3_008_000_000L, 3_010_000_000L);
  }

  @Test
  void vanishedPortFailsUntilItComesBack() throws Exception {
    LinkSource source = links.find("demo:cool-day?speed=max&fault=vanish@10-20").orElseThrow();
    Link link = source.open();
    source.clock().pause(Duration.ofSeconds(12));

    assertThatThrownBy(() -> link.read(Duration.ofMillis(10)))
        .isInstanceOf(LinkException.class)
        .hasMessageContaining("the port is gone");
    assertThatThrownBy(() -> link.write(new byte[] {'\r'})).isInstanceOf(LinkException.class);
    assertThatThrownBy(source::open).isInstanceOf(LinkException.class);
    source.clock().pause(Duration.ofSeconds(9));
    assertThat(source.open().read(Duration.ZERO)).isEmpty();
  }

  @Test
  void closedLinkCannotBeUsed() throws Exception {
    Link link = links.find("demo:cool-day?speed=max").orElseThrow().open();
    link.close();
    link.close();

    assertThatThrownBy(() -> link.read(Duration.ZERO)).isInstanceOf(LinkException.class);
  }

  @Test
  void faultsDoWhatTheirNamesSay() throws Exception {
    assertThat(oneReply("fault=silent")).isEmpty();
    assertThat(oneReply("fault=engine-off")).contains("UNABLE TO CONNECT");
    assertThat(oneReply("fault=nonsense")).isNotEmpty().doesNotContain("41 0C");
    Link stuck = links.find("demo:cool-day?speed=max&fault=echo").orElseThrow().open();
    exchange(stuck, "ATE0", Slicing.WHOLE);
    assertThat(text(exchange(stuck, "ATI", Slicing.WHOLE))).startsWith("ATI\r");
  }

  @Test
  void driveBehindAnAddressLastsUntilTheScenariosEnd() throws Exception {
    assertThat(BenchLinks.lasts("demo:dyno-pull?start=50")).hasValue(Duration.ofSeconds(150));
    assertThat(BenchLinks.lasts("/dev/ttyUSB0")).isEmpty();
  }

  private String oneReply(String fault) throws Exception {
    Link link = links.find("demo:cool-day?speed=max&" + fault).orElseThrow().open();
    return text(exchange(link, "010C", Slicing.WHOLE));
  }

  private byte[] conversation(String address, Slicing slicing) throws Exception {
    Link link = links.find(address).orElseThrow().open();
    ByteArrayOutputStream heard = new ByteArrayOutputStream();
    for (String command : SOME_DRIVING) {
      heard.writeBytes(exchange(link, command, slicing));
    }
    return heard.toByteArray();
  }

  /** Writes in slices, then reads until nothing more comes for a while. */
  private static byte[] exchange(Link link, String command, Slicing slicing) throws Exception {
    byte[] bytes = (command + "\r").getBytes(StandardCharsets.US_ASCII);
    for (int from = 0; from < bytes.length; ) {
      int count = slicing.next(bytes.length - from);
      link.write(java.util.Arrays.copyOfRange(bytes, from, from + count));
      from += count;
    }
    ByteArrayOutputStream heard = new ByteArrayOutputStream();
    for (byte[] part = link.read(PATIENCE); part.length > 0; part = link.read(PATIENCE)) {
      heard.writeBytes(part);
    }
    return heard.toByteArray();
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.ISO_8859_1);
  }

  /** How many of the bytes left go out next. */
  private interface Slicing {
    Slicing WHOLE = most -> most;
    Slicing SINGLE_BYTES = _ -> 1;

    int next(int most);
  }
}
