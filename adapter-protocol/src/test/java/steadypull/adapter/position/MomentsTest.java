package steadypull.adapter.position;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** From bytes to reports, told as what receivers of different habits say. */
class MomentsTest {
  private final SentenceLines lines = new SentenceLines();
  private final Moments moments = new Moments();
  private final List<PositionReport> reports = new ArrayList<>();
  private long nanoTime;

  @Test
  void bothSentencesOfAMomentMakeOneReport() {
    hear(SpokenSentences.minimum("174512.00", 43.2), 100);
    hear(SpokenSentences.others(), 200);
    hear(SpokenSentences.fixData("174512.00", 612.4), 300);

    assertThat(reports).hasSize(1);
    PositionReport.Fixed fixed = (PositionReport.Fixed) reports.getFirst();
    assertThat(fixed.nanoTime()).isEqualTo(100);
    assertThat(fixed.altitudeMetres()).hasValue(612.4);
    assertThat(fixed.speedKilometresPerHour().orElseThrow())
        .isCloseTo(43.2 * 1.852, within(1e-9)); // 1 knot is 1.852 km/h, ISO 80000-3
    assertThat(fixed.time()).contains(Instant.parse("2026-07-15T17:45:12Z"));
    assertThat(fixed.satellites()).hasValue(11);
  }

  @Test
  void eachMomentIsReportedOnce() {
    for (int second = 10; second < 20; second++) {
      hear(SpokenSentences.fixData("1745" + second + ".00", 600 + second), second);
      hear(SpokenSentences.minimum("1745" + second + ".00", 40), second);
      pause();
    }

    assertThat(reports)
        .extracting(report -> ((PositionReport.Fixed) report).altitudeMetres().orElseThrow())
        .containsExactly(610.0, 611.0, 612.0, 613.0, 614.0, 615.0, 616.0, 617.0, 618.0, 619.0);
  }

  @Test
  void receiverThatSendsOneOfBothIsReportedWhenItPauses() {
    hear(SpokenSentences.minimum("174512.00", 43.2), 100);
    assertThat(reports).isEmpty();
    pause();

    assertThat(reports)
        .singleElement()
        .isInstanceOfSatisfying(
            PositionReport.Fixed.class, fixed -> assertThat(fixed.altitudeMetres()).isEmpty());
  }

  @Test
  void receiverThatNeverPausesIsReportedWhenTheNextMomentBegins() {
    hear(SpokenSentences.fixData("174512.00", 612.4), 100);
    hear(SpokenSentences.fixData("174512.10", 612.5), 200);
    hear(SpokenSentences.fixData("174512.20", 612.6), 300);

    assertThat(reports).extracting(PositionReport::nanoTime).containsExactly(100L, 200L);
  }

  @Test
  void speedMayComeFromTheTrackSentence() {
    hear(SpokenSentences.fixData("174512.00", 612.4), 100);
    hear(SpokenSentences.spoken("GNVTG,078.6,T,,M,43.20,N,80.01,K,A"), 200);
    pause();

    assertThat(((PositionReport.Fixed) reports.getFirst()).speedKilometresPerHour().orElseThrow())
        .isCloseTo(80.0064, within(1e-9));
  }

  @Test
  void withoutAFixThereIsNoPosition() {
    hear(SpokenSentences.spoken("GNGGA,174512.00,,,,,0,00,99.99,,,,,,"), 100);
    hear(SpokenSentences.spoken("GNRMC,174512.00,V,,,,,,,,,,N"), 200);

    assertThat(reports).containsExactly(new PositionReport.Unfixed(100));
  }

  // Receivers go on writing the last place for a while.
  @Test
  void oneOfBothSentencesThatDeniesTheFixIsEnough() {
    hear(SpokenSentences.fixData("174512.00", 612.4), 100);
    hear(
        SpokenSentences.spoken("GNRMC,174512.00,V,3513.2,N,11428.4,W,43.20,078.6,150726,,,N"), 200);

    assertThat(reports).containsExactly(new PositionReport.Unfixed(100));
  }

  @Test
  void deadReckoningIsMarkedAsSuch() {
    hear(
        SpokenSentences.spoken("GNGGA,174512.00,3513.2,N,11428.4,W,6,03,9.9,612.4,M,-29.6,M,,"),
        100);
    pause();

    FixQuality quality = ((PositionReport.Fixed) reports.getFirst()).quality();
    assertThat(quality).isEqualTo(FixQuality.ESTIMATED);
    assertThat(quality.isMeasured()).isFalse();
  }

  // With three satellites the height is carried on from an earlier fix.
  @Test
  void heightOfAFlatFixIsNotTold() {
    hear(SpokenSentences.spoken("GNGSA,A,2,80,71,73,,,,,,,,,,1.83,1.09,1.47"), 0);
    hear(SpokenSentences.fixData("174512.00", 612.4), 100);
    hear(SpokenSentences.minimum("174512.00", 43.2), 200);
    hear(SpokenSentences.others(), 300);
    hear(SpokenSentences.fixData("174513.00", 612.4), 400);
    pause();

    assertThat(reports)
        .extracting(report -> ((PositionReport.Fixed) report).altitudeMetres().isPresent())
        .containsExactly(false, true);
  }

  @Test
  void talkerWithoutAFixDoesNotHideTheOneThatHasIt() {
    hear(SpokenSentences.spoken("GLGGA,174512.00,,,,,0,00,99.99,,,,,,"), 100);
    hear(SpokenSentences.fixData("174512.00", 612.4), 200);
    hear(SpokenSentences.minimum("174512.00", 43.2), 300);

    assertThat(reports).singleElement().isInstanceOf(PositionReport.Fixed.class);
  }

  @Test
  void streamCutAnywhereGivesTheSameReports() {
    String stream = drive();
    hear(stream, 0);
    List<PositionReport> whole = List.copyOf(reports);
    assertThat(whole).hasSize(5);
    for (int size = 1; size <= 90; size++) {
      MomentsTest cut = new MomentsTest();
      for (int at = 0; at < stream.length(); at += size) {
        cut.hear(stream.substring(at, Math.min(stream.length(), at + size)), 0);
      }
      assertThat(cut.reports).as("pieces of %d", size).isEqualTo(whole);
    }
  }

  // A checksum of eight bits tells every change of one byte.
  @Test
  void oneByteChangedAnywhereNeverGivesAnotherPosition() {
    byte[] stream = drive().getBytes(StandardCharsets.US_ASCII);
    hear(drive(), 0);
    List<PositionReport> whole = List.copyOf(reports);
    long seed = 1_183;
    Random random = new Random(seed);
    for (int at = 0; at < stream.length; at++) {
      byte[] damaged = stream.clone();
      damaged[at] ^= (byte) (1 + random.nextInt(255));
      MomentsTest other = new MomentsTest();
      other.hear(damaged);
      other.pause();
      assertThat(other.reports)
          .as("seed %d, byte %d", seed, at)
          .allSatisfy(report -> assertThat(isAmong(report, whole)).isTrue());
    }
  }

  @Test
  void noiseIsSurvivedAndSaysNothing() {
    long seed = 9_009;
    Random random = new Random(seed);
    byte[] noise = new byte[200_000];
    random.nextBytes(noise);
    hear(noise);
    assertThat(reports).as("seed %d", seed).isEmpty();

    hear(drive(), 0);
    assertThat(reports).as("seed %d", seed).isNotEmpty();
  }

  /** Half a moment may be missing, but nothing that is told differs. */
  private static boolean isAmong(PositionReport report, List<PositionReport> whole) {
    PositionReport.Fixed found = (PositionReport.Fixed) report;
    return whole.stream()
        .map(PositionReport.Fixed.class::cast)
        .anyMatch(
            fixed ->
                fixed.latitudeDegrees() == found.latitudeDegrees()
                    && fixed.longitudeDegrees() == found.longitudeDegrees()
                    && (found.altitudeMetres().isEmpty()
                        || found.altitudeMetres().equals(fixed.altitudeMetres()))
                    && (found.speedKilometresPerHour().isEmpty()
                        || found.speedKilometresPerHour().equals(fixed.speedKilometresPerHour()))
                    && (found.time().isEmpty() || found.time().equals(fixed.time())));
  }

  private static String drive() {
    StringBuilder stream = new StringBuilder("half a sentence,,*00\r\n");
    for (int second = 10; second < 15; second++) {
      stream
          .append(SpokenSentences.minimum("1745" + second + ".00", 40 + second))
          .append(SpokenSentences.others())
          .append(SpokenSentences.fixData("1745" + second + ".00", 600 + second));
    }
    return stream.toString();
  }

  private void hear(String text, long at) {
    nanoTime = at;
    hear(text.getBytes(StandardCharsets.US_ASCII));
  }

  private void hear(byte[] bytes) {
    for (String line : lines.accept(Arrays.copyOf(bytes, bytes.length))) {
      SentenceReader.read(line)
          .flatMap(sentence -> moments.accept(sentence, nanoTime))
          .ifPresent(reports::add);
    }
  }

  private void pause() {
    moments.pause(nanoTime).ifPresent(reports::add);
  }
}
