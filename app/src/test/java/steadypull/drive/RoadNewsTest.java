package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Random;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.store.TripEvent;

/** What a trip keeps of the road ahead says the same when it is read, and rubbish says nothing. */
class RoadNewsTest {
  private static final int WORLDS = 300;

  /** Half a step of 0.01 %. */
  private static final double ROUNDED = 0.5e-4;

  private static final long SECOND_7 = 6_999_999;

  @Test
  void whatIsKnownIsReadAsItWasWrittenButForItsRounding() {
    for (int seed = 0; seed < WORLDS; seed++) {
      RoadAhead.Known ahead = known(new Random(seed));

      RoadAhead.Known read = (RoadAhead.Known) readAgain(ahead);

      assertThat(read.origin()).as("seed %d", seed).isEqualTo(ahead.origin());
      assertSame(read.certain(), ahead.certain(), seed);
      assertThat(read.branches()).as("seed %d", seed).hasSameSizeAs(ahead.branches());
      for (int i = 0; i < ahead.branches().size(); i++) {
        RoadAhead.Branch branch = ahead.branches().get(i);
        assertThat(read.branches().get(i).odds()).isCloseTo(branch.odds(), within(1e-4));
        assertSame(read.branches().get(i).profile(), branch.profile(), seed);
      }
    }
  }

  /** A replay goes by what is read, and so must the live drive: read twice is read once. */
  @Test
  void whatWasReadIsWrittenWithoutAFurtherRounding() {
    for (int seed = 0; seed < WORLDS; seed++) {
      TripEvent once = RoadNews.event(SECOND_7, known(new Random(seed)));

      assertThat(RoadNews.event(SECOND_7, RoadNews.read(once))).as("seed %d", seed).isEqualTo(once);
    }
  }

  @Test
  void thatNothingIsKnownAndThatTheGradesAreNotIsReadAgain() {
    assertThat(readAgain(new RoadAhead.Unknown())).isEqualTo(new RoadAhead.Unknown());
    assertThat(readAgain(new RoadAhead.Ungraded())).isEqualTo(new RoadAhead.Ungraded());
  }

  @Test
  void aRoutesHeightIsReadToATenthOfAMetreAndTellsNoRoad() {
    TripEvent event = RoadNews.event(SECOND_7, 1234.5678);

    assertThat(event.timeMicros()).isEqualTo(SECOND_7);
    assertThat(RoadNews.routeHeight(event)).hasValue(1234.6);
    assertThat(RoadNews.read(event)).isEqualTo(new RoadAhead.Unknown());
    assertThat(RoadNews.routeHeight(RoadNews.event(SECOND_7, known(new Random(1))))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "{\"route_height_m\":",
        "{\"route_height_m\":\"12\"}",
        "{\"route_height_m\":null}",
        "{\"route_height_m\":1e300}",
      })
  void rubbishTellsNoHeight(String detail) {
    assertThat(RoadNews.routeHeight(new TripEvent(SECOND_7, TripEvent.Kind.ROAD, detail)))
        .isEmpty();
  }

  @Test
  void aWayThatIsCutOffAnywhereIsRefused() {
    for (int seed = 0; seed < 40; seed++) {
      String text = WayText.write(known(new Random(seed)).certain());
      for (int end = 0; end < text.length(); end++) {
        String cut = text.substring(0, end);
        assertThatThrownBy(() -> WayText.read(cut, 50))
            .as("seed %d, %d letters", seed, end)
            .isInstanceOf(IllegalArgumentException.class);
      }
    }
  }

  /** Put together by hand: one piece, its grade, then a run of one error, 0.2 %. */
  @Test
  void aGradeBeyondTheVerticalIsRefused() throws Exception {
    assertThat(WayText.read(way(1, 20_000, 1, 20), 50).grade(0)).isEqualTo(1);
    assertThatThrownBy(() -> WayText.read(way(1, 20_002, 1, 20), 50))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("10001 steps");
    assertThatThrownBy(() -> WayText.read(way(1, 20_000, 1, 10_001), 50))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private static String way(int... numbers) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Deflater raw = new Deflater(9, true);
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, raw)) {
      for (int number : numbers) {
        for (; number > 127; number >>>= 7) {
          out.write((number & 127) | 128);
        }
        out.write(number);
      }
    } finally {
      raw.end();
    }
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes.toByteArray());
  }

  @Test
  void ofAnEventThatIsCutOffAnywhereNothingIsKnown() {
    String detail = RoadNews.event(SECOND_7, known(new Random(3))).detail();
    for (int end = 0; end < detail.length(); end++) {
      assertThat(read(detail.substring(0, end))).isEqualTo(new RoadAhead.Unknown());
    }
  }

  /** Whatever a damaged library hands over: it is read or it is not, and never a surprise later. */
  @Test
  void anEventWithAnyLetterChangedTellsARoadOrNothing() {
    Random random = new Random(11);
    String detail = RoadNews.event(SECOND_7, known(new Random(3))).detail();
    for (int run = 0; run < 20_000; run++) {
      char[] letters = detail.toCharArray();
      for (int change = random.nextInt(3); change >= 0; change--) {
        letters[random.nextInt(letters.length)] = (char) (' ' + random.nextInt(95));
      }
      RoadTold told = new RoadTold();
      told.take(new TripEvent(SECOND_7, TripEvent.Kind.ROAD, new String(letters)));
      for (int second = 0; second < 40; second++) {
        told.moved(1000);
        if (told.ahead() instanceof RoadAhead.Known known) {
          assertThat(known.certain().lengthMetres()).as("run %d", run).isBetween(0.0, 4e6);
        }
      }
    }
  }

  /** What each of the following is but for its one fault. */
  @Test
  void anEmptyWayIsOneToo() {
    assertThat(read("{\"known\":\"driven\",\"piece_m\":50,\"certain\":\"YwAA\",\"branches\":[]}"))
        .isInstanceOf(RoadAhead.Known.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "null",
        "[]",
        "{}",
        "{\"known\":\"moon\"}",
        "{\"known\":\"driven\"}",
        "{\"known\":\"driven\",\"piece_m\":0,\"certain\":\"YwAA\",\"branches\":[]}",
        "{\"known\":\"driven\",\"piece_m\":1e-300,\"certain\":\"YwAA\",\"branches\":[]}",
        "{\"known\":\"driven\",\"piece_m\":1e300,\"certain\":\"YwAA\",\"branches\":[]}",
        "{\"known\":\"driven\",\"piece_m\":50,\"certain\":\"not letters of it\",\"branches\":[]}",
        "{\"known\":\"driven\",\"piece_m\":50,\"certain\":\"YwAA\",\"branches\":[{\"odds\":2,\"way\":\"YwAA\"}]}",
        "{\"known\":\"driven\",\"piece_m\":50,\"certain\":\"YwAA\",\"branches\":[{\"odds\":0.6,\"way\":\"YwAA\"},{\"odds\":0.6,\"way\":\"YwAA\"}]}",
      })
  void rubbishTellsNothing(String detail) {
    assertThat(read(detail)).isEqualTo(new RoadAhead.Unknown());
  }

  private static RoadAhead readAgain(RoadAhead ahead) {
    return read(RoadNews.event(SECOND_7, ahead).detail());
  }

  private static RoadAhead read(String detail) {
    return RoadNews.read(new TripEvent(SECOND_7, TripEvent.Kind.ROAD, detail));
  }

  private static void assertSame(GradeProfile read, GradeProfile written, int seed) {
    assertThat(read.pieceMetres()).isEqualTo(written.pieceMetres());
    assertThat(read.size()).as("seed %d", seed).isEqualTo(written.size());
    for (int piece = 0; piece < written.size(); piece++) {
      assertThat(read.grade(piece)).isCloseTo(written.grade(piece), within(ROUNDED * 1.0001));
      assertThat(read.error(piece)).isCloseTo(written.error(piece), within(ROUNDED * 1.0001));
    }
  }

  /** Roads long and short, smooth and wild, with up to six ways to choose from. */
  private static RoadAhead.Known known(Random random) {
    double piece = 1 + random.nextInt(200);
    List<RoadAhead.Branch> branches = new ArrayList<>();
    double left = 1;
    for (int ways = random.nextInt(7); ways > 0; ways--) {
      double odds = left * (0.05 + 0.9 * random.nextDouble());
      left -= odds;
      branches.add(new RoadAhead.Branch(odds, profile(random, piece)));
    }
    RoadAhead.Origin[] origins = RoadAhead.Origin.values();
    return new RoadAhead.Known(
        profile(random, piece), branches, origins[random.nextInt(origins.length)]);
  }

  private static GradeProfile profile(Random random, double piece) {
    int size = random.nextInt(10) == 0 ? random.nextInt(4001) : random.nextInt(300);
    double[] grades = new double[size];
    double[] errors = new double[size];
    double grade = 0;
    double error = 0.002;
    for (int i = 0; i < size; i++) {
      grade = Math.clamp(grade + 0.01 * random.nextGaussian(), -1, 1);
      error = random.nextInt(8) == 0 ? Math.min(1, Math.abs(0.01 * random.nextGaussian())) : error;
      grades[i] = grade;
      errors[i] = error;
    }
    return new GradeProfile(piece, grades, errors);
  }
}
