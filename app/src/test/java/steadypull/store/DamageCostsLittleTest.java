package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * A bit that flips or a page that is lost: every trip still opens, is read, drawn and checked, no
 * sample is invented, and what is missing is told. Which pages hold samples is told by SQLite's own
 * dbstat table (https://www.sqlite.org/dbstat.html).
 */
class DamageCostsLittleTest {
  private static final int PAGE_OCTETS = 4096;
  private static final List<Channel> CHANNELS =
      List.of(
          Channels.ENGINE_COOLANT_TEMP,
          Channels.VEHICLE_SPEED,
          Channels.ENGINE_SPEED,
          Channels.CHARGE_AIR_TEMP_OUT);

  private static final int SAMPLES = 3 * TripWriter.LONG_SEGMENT + 5_000;

  @TempDir Path place;

  private Path folder = Path.of("");
  private Path file = Path.of("");
  private byte[] whole = new byte[0];
  private final Map<String, List<Sample>> written = new HashMap<>();

  @BeforeEach
  void writeALibraryOfTwoTrips() throws Exception {
    folder = place.resolve("library");
    file = folder.resolve("library.sqlite");
    try (TripLibrary library = TripLibrary.open(folder)) {
      keep(library, 1, SAMPLES);
      keep(library, 2, 9_000);
    }
    whole = Files.readAllBytes(file);
  }

  /** CRC-32C tells every single bit that flips. */
  @Test
  void aFlippedBitOfTheSamplesCostsOneChannelOrOneStretch() throws Exception {
    List<Integer> pages = pagesOf("segment");
    SplittableRandom random = new SplittableRandom(71);
    int costly = 0;
    for (int round = 0; round < 24; round++) {
      byte[] damaged = whole.clone();
      int octet =
          (pages.get(random.nextInt(pages.size())) - 1) * PAGE_OCTETS
              + 16
              + random.nextInt(PAGE_OCTETS - 16);
      damaged[octet] ^= (byte) (1 << random.nextInt(8));
      long lost = lost(damaged, "octet " + octet);
      // Of four channels none has half of the samples; only a segment's head takes all of it along.
      costly += lost > TripWriter.LONG_SEGMENT / 2 ? 1 : 0;
      assertThat(lost).as("octet %s", octet).isLessThanOrEqualTo(TripWriter.LONG_SEGMENT);
    }
    assertThat(costly).isLessThanOrEqualTo(2);
  }

  @Test
  void aFlippedBitAnywhereInventsNothing() throws Exception {
    SplittableRandom random = new SplittableRandom(72);
    for (int round = 0; round < 20; round++) {
      byte[] damaged = whole.clone();
      int octet = random.nextInt(damaged.length);
      damaged[octet] ^= (byte) (1 << random.nextInt(8));
      lost(damaged, "octet " + octet);
    }
  }

  @Test
  void aLostPageCostsTheSegmentsThatItHeld() throws Exception {
    List<Integer> pages = pagesOf("segment");
    SplittableRandom random = new SplittableRandom(73);
    for (int round = 0; round < 15; round++) {
      byte[] damaged = whole.clone();
      int page = pages.get(random.nextInt(pages.size()));
      Arrays.fill(damaged, (page - 1) * PAGE_OCTETS, page * PAGE_OCTETS, (byte) 0);
      lost(damaged, "page " + page);
    }
  }

  @Test
  void aLostPageOfOverviewsCostsNoSample() throws Exception {
    for (int page : pagesOf("overview")) {
      byte[] damaged = whole.clone();
      Arrays.fill(damaged, (page - 1) * PAGE_OCTETS, page * PAGE_OCTETS, (byte) 0);
      assertThat(lost(damaged, "page " + page)).as("page %s", page).isZero();
    }
  }

  /** Reads, draws and checks, and says how many samples are missing; 0 where all is refused. */
  private long lost(byte[] damaged, String what) throws Exception {
    Files.write(file, damaged);
    Files.deleteIfExists(LibraryFile.logOf(file));
    long lost = 0;
    try (TripLibrary library = TripLibrary.open(folder)) {
      for (TripSummary trip : library.trips(Optional.empty())) {
        List<Sample> read = new ArrayList<>();
        library.replay(
            trip.id(),
            entry -> {
              if (entry instanceof TripEntry.OfSample(Sample sample)) {
                read.add(sample);
              }
            });
        TripDamage damage = library.damage(trip.id());
        List<Sample> before = written.getOrDefault(trip.id(), List.of());
        assertNothingIsInvented(what, before, read);
        assertThat(damage.samples()).as(what).isEqualTo(before.size() - read.size());
        assertIsTold(what, before, read, damage.parts());
        draw(library, trip);
        lost += damage.samples();
      }
    } catch (LibraryException e) {
      // What says where everything lies is gone: refused as before, with check as the way out.
      assertThat(e).as(what).hasMessageContaining("expected");
    }
    LibraryCheck.look(folder);
    return lost;
  }

  private static void assertNothingIsInvented(String what, List<Sample> before, List<Sample> read) {
    int next = 0;
    for (Sample sample : read) {
      while (next < before.size() && !before.get(next).equals(sample)) {
        next++;
      }
      assertThat(next).as("%s: %s was never written there", what, sample).isLessThan(before.size());
      next++;
    }
  }

  private static void assertIsTold(
      String what, List<Sample> before, List<Sample> read, List<LostPart> parts) {
    int kept = 0;
    for (Sample sample : before) {
      if (kept < read.size() && read.get(kept).equals(sample)) {
        kept++;
      } else {
        assertThat(parts).as("%s: %s", what, sample).anyMatch(part -> holds(part, sample));
      }
    }
  }

  private static boolean holds(LostPart part, Sample sample) {
    double seconds = sample.timeMicros() / 1e6;
    return part.fromSeconds() <= seconds
        && seconds <= part.toSeconds().orElse(seconds)
        && (part.channels().isEmpty() || part.channels().contains(sample.channel()));
  }

  private static void draw(TripLibrary library, TripSummary trip) throws LibraryException {
    long endMicros = Math.round(trip.durationSeconds() * 1e6);
    try (TripDrawing drawing = library.draw(trip.id())) {
      for (int channel = 0; channel < CHANNELS.size(); channel++) {
        assertThat(drawing.line(channel, 0, endMicros, 300).columns()).isEqualTo(300);
        assertThat(drawing.line(channel, endMicros / 3, endMicros / 2, 9_000).columns())
            .isEqualTo(9_000);
      }
      // What was unpacked for drawing is not read once more; the rest is, and all is told.
      while (drawing.examine()) {
        assertThat(drawing.damage().tripId()).isEqualTo(trip.id());
      }
      assertThat(drawing.damage()).isEqualTo(library.damage(trip.id()));
    }
  }

  /** Every value and every time occurs once, so that none can stand for another. */
  private void keep(TripLibrary library, int number, int samples) throws LibraryException {
    SplittableRandom random = new SplittableRandom(number);
    List<Sample> all = new ArrayList<>();
    for (int i = 0; i < samples; i++) {
      long timeMicros = 25_000L * (i - i % 2) + number;
      Channel channel = CHANNELS.get(i % 4 == 3 && i % 40 != 3 ? 2 : i % 4);
      all.add(
          new Sample(
              channel,
              timeMicros + (channel.equals(CHANNELS.get(3)) ? 9 : 0),
              i + random.nextInt(4) / 4.0));
    }
    NewTrip trip =
        new NewTrip(
            Vehicle.unknown("Wattle " + number, CoolingLayout.AIR_TO_AIR),
            Instant.parse("2026-07-15T17:45:12Z").plusSeconds(number),
            "baseline",
            "test",
            "0.1.0");
    written.put(library.keep(trip, all, 25_000L * samples), all);
  }

  private List<Integer> pagesOf(String table) throws Exception {
    List<Integer> pages = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery(
                "select pageno from dbstat where name = '" + table + "' order by pageno")) {
      while (row.next()) {
        pages.add(row.getInt(1));
      }
    }
    assertThat(pages).isNotEmpty();
    return pages;
  }
}
