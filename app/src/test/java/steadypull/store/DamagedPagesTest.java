package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.PassPoint;
import steadypull.road.RoadPass;
import steadypull.road.climb.ClimbLine;
import steadypull.road.climb.KnownClimb;
import steadypull.road.memory.RoadMemory;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.Vehicle;

/**
 * Whatever page is overwritten: the salvage invents no sample, keeps all that lies elsewhere, and
 * says truly what is lost. What a page held is told by SQLite's own dbstat table, which knows
 * nothing of our reading of pages (https://www.sqlite.org/dbstat.html).
 */
@Execution(ExecutionMode.CONCURRENT)
class DamagedPagesTest {
  private static final int PAGE_OCTETS = 4096;
  private static final int SECTOR_OCTETS = 512;
  private static final List<Channel> CHANNELS =
      List.of(Channels.ENGINE_COOLANT_TEMP, Channels.VEHICLE_SPEED, Channels.ENGINE_SPEED);

  /** Tables of which a row can go without another row telling so, and what they hold. */
  private static final Map<String, String> THINGS =
      Map.ofEntries(
          Map.entry("trip", "trips"),
          Map.entry("event", "events"),
          Map.entry("route", "routes"),
          Map.entry("table_mapping", "mappings"),
          Map.entry("vehicle", "vehicles"),
          Map.entry("road_tile", "remembered roads"),
          Map.entry("road_learned", "notes of what was learned from trips"),
          Map.entry("road_quiet", "places kept out of the memory of roads"),
          Map.entry("climb", "climbs"),
          Map.entry("configuration", "what was fitted to vehicles"),
          Map.entry("trip_heat", "what trips have taught of vehicles' heat"),
          Map.entry("comparison", "comparisons"));

  private static final KeptComparison TANK =
      new KeptComparison(
          "tank",
          Instant.parse("2026-06-02T08:00:00.000001Z"),
          "charge_coolant_temp",
          List.of(
              new KeptComparison.Source("before", "20260510T100000Z-abcd@120-480"),
              new KeptComparison.Source("after", "20260601T100000Z-efgh")),
          "wind = \"calm\"\n");

  private static final Configuration FITTED =
      new Configuration(
          "second fan",
          Instant.parse("2026-06-01T08:00:00Z"),
          Set.of(Circuit.ENGINE_COOLANT),
          LearntHeat.NOTHING);

  private static final QuietPlace HOME = new QuietPlace(-41.4, -118.25, 300);

  private static final KnownClimb CLIMB =
      new KnownClimb(
          "k7c2",
          "",
          new ClimbLine(
              List.of(new ClimbLine.Vertex(-41.4, -118.01), new ClimbLine.Vertex(-41.38, -118.01))),
          2200,
          66);

  @TempDir Path place;

  private int remembered;
  private int heatLessons;

  private Path folder = Path.of("");
  private final Map<String, List<TripEntry>> written = new HashMap<>();

  @BeforeEach
  void writeALibraryOfSeveralTrips() throws Exception {
    folder = place.resolve("library");
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR));
      library.save(Vehicle.unknown("Banksia", CoolingLayout.WATER_TO_AIR));
      library.keepMapping("Time,Coolant [C]", "[time]");
      library.comparisons().keep(TANK);
      record(library, "Wattle 2", 40_000, 2_000, true);
      record(library, "Banksia", 600, 20, true);
      record(library, "Wattle 2", 900, 15, false);
      ToldTours.learn(library);
      library.heat().fit("Banksia", FITTED);
      while (library.heat().learnNext(new KnownHeatTest.LastTemperature())) {
        heatLessons++;
      }
    }
    keepRoads();
    try (TripLibrary library = TripLibrary.openToRead(folder)) {
      for (TripSummary trip : library.trips(Optional.empty())) {
        written.put(trip.id(), entries(library, trip.id()));
      }
    }
  }

  @Test
  void aWholeLibraryIsWell() throws Exception {
    CheckReport report = LibraryCheck.check(folder);

    assertThat(report).isEqualTo(CheckReport.ok(3));
    try (var files = Files.list(place)) {
      assertThat(files).containsExactly(folder);
    }
  }

  /** Rows are told by the number and the types of their columns. */
  @Test
  void theFormsAreThoseOfTheTables() throws Exception {
    Map<String, RowForm> forms =
        Map.ofEntries(
            Map.entry("trip", LibraryRows.TRIP),
            Map.entry("trip_twin", LibraryRows.TRIP_TWIN),
            Map.entry("segment", LibraryRows.SEGMENT),
            Map.entry("event", LibraryRows.EVENT),
            Map.entry("channel", LibraryRows.CHANNEL),
            Map.entry("trip_vehicle", LibraryRows.TRIP_VEHICLE),
            Map.entry("vehicle", LibraryRows.VEHICLE),
            Map.entry("route", LibraryRows.ROUTE),
            Map.entry("table_mapping", LibraryRows.TABLE_MAPPING),
            Map.entry("road_tile", LibraryRows.ROAD_TILE),
            Map.entry("road_learned", LibraryRows.ROAD_LEARNED),
            Map.entry("road_quiet", LibraryRows.ROAD_QUIET),
            Map.entry("climb", LibraryRows.CLIMB),
            Map.entry("configuration", LibraryRows.CONFIGURATION),
            Map.entry("trip_heat", LibraryRows.TRIP_HEAT),
            Map.entry("comparison", LibraryRows.COMPARISON));
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("library.sqlite"));
        Statement statement = connection.createStatement()) {
      for (Map.Entry<String, RowForm> form : forms.entrySet()) {
        StringBuilder letters = new StringBuilder();
        try (ResultSet column =
            statement.executeQuery("pragma table_info(" + form.getKey() + ")")) {
          while (column.next()) {
            letters.append(
                letter(
                    column.getString("type"),
                    column.getInt("notnull") == 1,
                    column.getInt("pk") == 1));
          }
        }
        assertThat(form.getValue().letters()).as(form.getKey()).isEqualTo(letters.toString());
      }
    }
    assertThat(forms.values()).doesNotHaveDuplicates();
  }

  private static char letter(String type, boolean isNotNull, boolean isKey) {
    return switch (type) {
      // The number of the row, which its record holds as null.
      case "INTEGER" -> isKey ? 'n' : isNotNull ? 'i' : 'o';
      case "REAL" -> 'r';
      case "TEXT" -> 't';
      case "BLOB" -> 'b';
      default -> throw new AssertionError("A type that no column has: " + type);
    };
  }

  @Test
  void whateverPageIsOverwrittenOnlyWhatItHeldIsLost() throws Exception {
    Path file = folder.resolve("library.sqlite");
    byte[] whole = Files.readAllBytes(file);
    List<PageUse> pages = pages(file);
    SplittableRandom random = new SplittableRandom(41);
    for (PageUse page : pages) {
      byte[] damaged = whole.clone();
      byte[] noise = new byte[PAGE_OCTETS];
      random.nextBytes(noise);
      System.arraycopy(noise, 0, damaged, (page.number - 1) * PAGE_OCTETS, PAGE_OCTETS);
      Files.write(file, damaged);

      CheckReport report = LibraryCheck.check(folder);

      assertThat(Files.readAllBytes(file)).isEqualTo(damaged);
      assertThat(report.isDamaged()).as("%s", page).isTrue();
      try (TripLibrary salvaged = TripLibrary.open(report.salvaged().orElseThrow())) {
        Verdict verdict = judge(page, report, salvaged);
        assertThat(verdict.lostSegments).as("%s", page).isLessThanOrEqualTo(page.segments());
        assertThat(verdict.lostTrips).as("%s", page).isLessThanOrEqualTo(page.trips());
        String thing = THINGS.get(page.table);
        if (thing != null) {
          assertThat(report.doubt().orElse("")).as("%s", page).contains(thing, "may be missing");
        } else if (!page.table.startsWith("sqlite_")) {
          assertThat(report.doubt()).as("%s %s", page, report.findings()).isEmpty();
        }
        if (page.holdsNoRows()) {
          assertThat(report.losses()).as("%s", page).isEmpty();
          assertThat(salvaged.vehicleNames()).containsExactlyInAnyOrder("Banksia", "Wattle 2");
          assertThat(salvaged.mapping("Time,Coolant [C]")).contains("[time]");
          assertThat(salvaged.roads().quietPlaces()).containsExactly(HOME);
          assertThat(salvaged.roads().waiting()).as("only what had not ended").isLessThan(2);
        }
        if (!page.table.equals("configuration")) {
          assertThat(salvaged.vehicle("Banksia").map(each -> each.configuration().fitted()))
              .as("%s", page)
              .isIn(Optional.of("second fan"), Optional.empty());
        }
        int heatKept =
            salvaged.heat().lessons("Wattle 2").size() + salvaged.heat().lessons("Banksia").size();
        if (!page.table.equals("trip_heat")) {
          assertThat(heatKept).as("%s", page).isEqualTo(heatLessons);
        }
        if (!page.table.equals("road_tile")) {
          assertThat(remembered(salvaged)).as("%s", page).isEqualTo(remembered);
        }
        if (!page.table.equals("comparison")) {
          assertThat(salvaged.comparisons().all()).as("%s", page).containsExactly(TANK);
        }
        if (page.table.equals("road_learned")) {
          assertThat(salvaged.roads().waiting()).as("no trip is learned twice").isZero();
        }
      }
    }
    assertThat(pages.stream().map(PageUse::table))
        .contains(
            "segment",
            "trip",
            "trip_twin",
            "event",
            "channel",
            "trip_vehicle",
            "sqlite_schema",
            "road_tile",
            "road_learned",
            "road_quiet",
            "climb",
            "configuration",
            "trip_heat",
            "comparison");
  }

  @Test
  void whateverSectorsAreOverwrittenNoSampleIsInventedAndWhatIsLostIsTold() throws Exception {
    Path file = folder.resolve("library.sqlite");
    byte[] whole = Files.readAllBytes(file);
    SplittableRandom random = new SplittableRandom(42);
    for (int run = 0; run < 40; run++) {
      byte[] damaged = whole.clone();
      int sectors = random.nextInt(1, 6);
      for (int sector = 0; sector < sectors; sector++) {
        byte[] noise = new byte[SECTOR_OCTETS];
        random.nextBytes(noise);
        int at = random.nextInt(whole.length / SECTOR_OCTETS) * SECTOR_OCTETS;
        System.arraycopy(noise, 0, damaged, at, SECTOR_OCTETS);
      }
      Files.write(file, damaged);

      CheckReport report = LibraryCheck.check(folder);

      Path salvaged = report.salvaged().orElse(folder);
      try (TripLibrary library = TripLibrary.openToRead(salvaged)) {
        judge(new PageUse(run, PageUse.SEVERAL, "sectors", 0), report, library);
      }
    }
  }

  /** Compares the salvaged trips with what was written. */
  private Verdict judge(PageUse page, CheckReport report, TripLibrary salvaged) throws Exception {
    int lostTrips = 0;
    int lostSegments = 0;
    for (String id : written.keySet()) {
      List<LostPart> lost =
          report.lostParts().stream().filter(part -> part.tripId().equals(id)).toList();
      List<Sample> before = samples(written.getOrDefault(id, List.of()));
      if (salvaged.trips(Optional.empty()).stream().noneMatch(trip -> trip.id().equals(id))) {
        lostTrips++;
        assertThat(report.lostParts()).as("%s", page).anyMatch(part -> isWhole(part, id));
      } else {
        lostSegments += lost.size();
        assertLostIsToldTruly(page, before, samples(entries(salvaged, id)), lost);
      }
    }
    return new Verdict(lostTrips, lostSegments);
  }

  private static void assertLostIsToldTruly(
      PageUse page, List<Sample> before, List<Sample> after, List<LostPart> lost) {
    List<Sample> missing = new ArrayList<>();
    int kept = 0;
    for (Sample sample : before) {
      if (kept < after.size() && isSame(page, sample, after.get(kept))) {
        kept++;
      } else {
        missing.add(sample);
      }
    }
    assertThat(kept).as("samples of the original, in its order; %s", page).isEqualTo(after.size());
    for (Sample sample : missing) {
      assertThat(lost).as("%s: %s", page, sample).anyMatch(part -> holds(part, sample));
    }
    for (LostPart part : lost) {
      assertThat(missing).as("%s: %s", page, part).anyMatch(sample -> holds(part, sample));
    }
  }

  /** A channel whose name lay on the damaged page has lost it, and nothing else. */
  private static boolean isSame(PageUse page, Sample before, Sample after) {
    boolean isNamed =
        after.channel().equals(before.channel())
            || (page.mayHoldChannels() && after.channel().id().startsWith("unnamed_"));
    return isNamed && before.timeMicros() == after.timeMicros() && before.value() == after.value();
  }

  private static boolean isWhole(LostPart part, String id) {
    return part.isWholeTrip()
        && (part.tripId().equals(id) || part.tripId().startsWith("a trip without its id"));
  }

  private static boolean holds(LostPart part, Sample sample) {
    double seconds = sample.timeMicros() / 1e6;
    return part.fromSeconds() <= seconds && seconds <= part.toSeconds().orElse(1e9);
  }

  /** A straight road, a climb on it, and a place that is kept out. */
  private void keepRoads() throws LibraryException {
    try (LibraryConnection library = LibraryConnection.open(folder, Duration.ofSeconds(5))) {
      TileDraft draft = new TileDraft(library);
      new RoadMemory(draft).learn(straightRoad(), LocalDate.EPOCH);
      library.change(
          "keep roads",
          handle -> {
            RoadRows.keepQuiet(handle, HOME);
            ClimbRows.save(handle, CLIMB);
            return draft.keep(handle);
          });
    }
    try (TripLibrary library = TripLibrary.openToRead(folder)) {
      remembered = remembered(library);
      assertThat(remembered).isGreaterThan(600);
    }
  }

  private static RoadPass straightRoad() {
    List<PassPoint> points = new ArrayList<>();
    for (int point = 0; point < 1000; point++) {
      double latitude = -41.49 + point * 0.00018;
      points.add(
          new PassPoint(
              point,
              point * 20,
              Optional.of(new PassPoint.Place(latitude, -118.01, 3)),
              point * 0.6,
              0.03,
              0.004));
    }
    return new RoadPass(points);
  }

  private static int remembered(TripLibrary library) throws LibraryException {
    return library.roads().tilesAround(-41.4, -118, 60_000).entrySet().stream()
        .mapToInt(tile -> RoadTiles.contents(tile.getKey().number(), tile.getValue()).pieces())
        .sum();
  }

  private static void record(
      TripLibrary library, String vehicle, int samples, int samplesPerCommit, boolean isSealed)
      throws LibraryException {
    SplittableRandom random = new SplittableRandom(samples);
    NewTrip trip =
        new NewTrip(
            Vehicle.unknown(vehicle, CoolingLayout.AIR_TO_AIR),
            Instant.parse("2026-07-15T17:45:12Z").plusSeconds(samples),
            "baseline",
            "test",
            "0.1.0");
    try (TripRecorder recorder = library.begin(trip)) {
      for (int number = 0; number < samples; number++) {
        long micros = number * 20_000L;
        if (number % 500 == 0) {
          recorder.append(new TripEvent(micros, TripEvent.Kind.MARK, "mark " + number));
        }
        Channel channel = CHANNELS.get(number % CHANNELS.size());
        recorder.append(new Sample(channel, micros, random.nextInt(256)));
        if ((number + 1) % samplesPerCommit == 0) {
          recorder.commit(micros);
        }
      }
      if (isSealed) {
        recorder.seal(samples * 20_000L);
      }
    }
  }

  private static List<TripEntry> entries(TripLibrary library, String id) throws LibraryException {
    List<TripEntry> entries = new ArrayList<>();
    library.replay(id, entries::add);
    return entries;
  }

  private static List<Sample> samples(List<TripEntry> entries) {
    return entries.stream()
        .filter(TripEntry.OfSample.class::isInstance)
        .map(entry -> ((TripEntry.OfSample) entry).sample())
        .toList();
  }

  private static List<PageUse> pages(Path file) throws Exception {
    List<PageUse> pages = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement();
        ResultSet row =
            statement.executeQuery("select pageno, name, pagetype, ncell from dbstat order by 1")) {
      while (row.next()) {
        pages.add(new PageUse(row.getInt(1), row.getString(2), row.getString(3), row.getInt(4)));
      }
    }
    return pages;
  }

  /** What SQLite says that a page is used for. */
  private record PageUse(int number, String table, String type, int cells) {
    static final String SEVERAL = "several";

    boolean mayHoldChannels() {
      return table.equals("channel") || table.equals(SEVERAL);
    }

    boolean holdsNoRows() {
      return type.equals("internal") || table.startsWith("sqlite_");
    }

    int segments() {
      return !table.equals("segment") ? 0 : type.equals("leaf") ? cells : isOverflow() ? 1 : 0;
    }

    /** A trip that has ended is told twice, on different pages: only the unfinished one can go. */
    int trips() {
      return table.equals("trip") && type.equals("leaf") ? 1 : 0;
    }

    private boolean isOverflow() {
      return type.equals("overflow");
    }
  }

  private record Verdict(int lostTrips, int lostSegments) {}
}
