package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.Circuit;
import steadypull.vehicle.Configuration;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.HeatQuantity;
import steadypull.vehicle.HeatTold;
import steadypull.vehicle.LearntHeat;
import steadypull.vehicle.LearntQuantity;
import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;

/** A library learns from each trip once, and knows what a vehicle was fitted with. */
@Execution(ExecutionMode.CONCURRENT)
class KnownHeatTest {
  private static final Vehicle WATTLE = Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR);
  private static final Instant START = Instant.parse("2026-05-01T08:00:00Z");
  private static final HeatQuantity THERMOSTAT =
      new HeatQuantity(
          "engine_coolant.thermostat_opens_degC", Circuit.ENGINE_COOLANT, false, 85, 4);

  @TempDir Path folder;

  /** Tells the temperature of a trip's last sample, whatever that may be of use for. */
  static final class LastTemperature implements HeatTeacher {
    @Override
    public Look begin(Vehicle vehicle, TripDetails details) {
      return new Look() {
        private double last;

        @Override
        public void accept(TripEntry entry) {
          if (entry instanceof TripEntry.OfSample(Sample sample)) {
            last = sample.value();
          }
        }

        @Override
        public TripHeat finish() {
          return new TripHeat(1, List.of(new HeatTold(THERMOSTAT, last, 0.5)), List.of());
        }
      };
    }
  }

  /** A trip on the given day; its temperatures rise to the given one. */
  static String keep(TripLibrary library, int day, double celsius) throws LibraryException {
    List<Sample> samples = new ArrayList<>();
    for (int second = 1; second <= 600; second++) {
      samples.add(
          new Sample(
              Channels.ENGINE_COOLANT_TEMP, second * 1_000_000L, celsius - (600 - second) / 60.0));
    }
    NewTrip trip = new NewTrip(WATTLE, START.plus(Duration.ofDays(day)), "", "test", "0.1.0");
    return library.keep(trip, samples, 601_000_000L);
  }

  private static int learn(TripLibrary library) throws LibraryException {
    int trips = 0;
    while (library.heat().learnNext(new LastTemperature())) {
      trips++;
    }
    return trips;
  }

  private static LearntQuantity known(TripLibrary library) throws LibraryException {
    return library.vehicle("Wattle 2").orElseThrow().learnt().of(THERMOSTAT.id()).orElseThrow();
  }

  @Test
  void everyTripIsLearntFromOnceWhateverHappensToItLater() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      String first = keep(library, 1, 88);
      keep(library, 2, 88);
      assertThat(library.heat().waiting()).isEqualTo(2);

      assertThat(learn(library)).isEqualTo(2);

      assertThat(learn(library)).isZero();
      assertThat(known(library).trips()).isEqualTo(2);
      assertThat(known(library).mean()).isBetween(87.0, 88.0);
      library.remove(first);
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.trips(Optional.empty())).hasSize(1);
      assertThat(known(library).trips()).as("it has taught what it taught").isEqualTo(2);
    }
  }

  @Test
  void savingTheVehicleLeavesWhatWasLearnt() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      Vehicle before = library.vehicle("Wattle 2").orElseThrow();
      keep(library, 1, 88);
      learn(library);

      library.save(before.withLayout(CoolingLayout.AIR_TO_AIR));

      assertThat(known(library).trips()).isEqualTo(1);
      assertThat(library.vehicle("Wattle 2").orElseThrow().layout())
          .isEqualTo(CoolingLayout.AIR_TO_AIR);
    }
  }

  @Test
  void whatWasFittedBeginsAnewFromTheNextTripOn() throws Exception {
    Configuration cooler =
        new Configuration(
            "new thermostat",
            START.plus(Duration.ofDays(5)),
            Set.of(Circuit.ENGINE_COOLANT),
            LearntHeat.NOTHING);
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      keep(library, 1, 88);
      keep(library, 2, 88);
      library.heat().fit("Wattle 2", cooler);
      keep(library, 7, 80);
      learn(library);

      Vehicle vehicle = library.vehicle("Wattle 2").orElseThrow();
      assertThat(vehicle.configurations()).hasSize(2);
      assertThat(known(library).trips()).isEqualTo(1);
      assertThat(known(library).mean()).isBetween(79.0, 82.0);
      assertThat(
              library
                  .heat()
                  .settingOut(WATTLE, START.plus(Duration.ofDays(4)))
                  .learnt()
                  .of(THERMOSTAT.id())
                  .orElseThrow()
                  .mean())
          .as("a trip of before sets out as it was fitted then")
          .isBetween(87.0, 88.0);
      assertThatThrownBy(() -> library.heat().fit("Wattle 2", cooler))
          .isInstanceOf(IllegalArgumentException.class);
    }
  }

  @Test
  void whatIsForgottenIsNotLearntAgain() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      keep(library, 1, 88);
      learn(library);
      keep(library, 2, 88);

      assertThat(library.heat().forget("Wattle 2")).isEqualTo(1);

      assertThat(library.heat().waiting()).as("trips up to now teach nothing").isZero();
      assertThat(library.vehicle("Wattle 2").orElseThrow().learnt()).isEqualTo(LearntHeat.NOTHING);
      keep(library, 3, 80);
      assertThat(learn(library)).isEqualTo(1);
      assertThat(known(library).trips()).isEqualTo(1);
    }
  }

  /** What another library has learnt is gone on with by trips that come after. */
  @Test
  void aVehicleThatIsBroughtBringsWhatItKnows() throws Exception {
    Vehicle brought;
    try (TripLibrary library = TripLibrary.open(folder.resolve("there"))) {
      library.save(WATTLE);
      keep(library, 1, 88);
      keep(library, 2, 88);
      learn(library);
      brought = library.vehicle("Wattle 2").orElseThrow();
    }
    try (TripLibrary library = TripLibrary.open(folder.resolve("here"))) {
      library.save(brought);
      library.heat().keep("Wattle 2", brought.configurations());
      assertThat(library.vehicle("Wattle 2")).contains(brought);
      keep(library, 3, 88);
      learn(library);
      assertThat(known(library).trips()).isEqualTo(3);
    }
  }

  /** A trip's file carries what the trip began with, and nothing of what others taught since. */
  @Test
  void aTripFileTeachesTheOtherLibraryItsOwnTripAlone() throws Exception {
    Path file = folder.resolve("away.trip");
    try (TripLibrary library = TripLibrary.open(folder.resolve("there"))) {
      library.save(WATTLE);
      String trip = keep(library, 1, 88);
      keep(library, 2, 88);
      learn(library);
      try (var out = Files.newOutputStream(file)) {
        PortableTrip.write(library, library.find(trip), _ -> true, out);
      }
    }
    try (TripLibrary library = TripLibrary.open(folder.resolve("here"));
        PortableTrip trip = PortableTrip.open(file)) {
      library.addTrips(adder -> adder.merge(trip, details -> details));
      assertThat(library.heat().waiting()).isEqualTo(1);
      learn(library);
      assertThat(known(library).trips()).isEqualTo(1);
    }
  }

  @Test
  void twoProgramsThatLearnAtTheSameTimeLearnFromEachTripOnce() throws Exception {
    try (TripLibrary one = TripLibrary.open(folder);
        TripLibrary other = TripLibrary.open(folder)) {
      one.save(WATTLE);
      for (int day = 1; day <= 6; day++) {
        keep(one, day, 88);
      }
      one.heat().learnBeside(new LastTemperature());
      other.heat().learnBeside(new LastTemperature());
      one.heat().awaitLearned();
      other.heat().awaitLearned();

      assertThat(one.heat().waiting()).isZero();
      assertThat(known(one).trips()).isEqualTo(6);
    }
  }

  @Test
  void aRowThatIsDamagedCostsItsTripAlone() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      keep(library, 1, 88);
      keep(library, 2, 88);
      learn(library);
    }
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("library.sqlite"));
        Statement statement = connection.createStatement()) {
      statement.executeUpdate("update trip_heat set told = substr(told, 1, 40) where heat_key = 1");
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(known(library).trips()).isEqualTo(1);
    }
  }

  /** Whoever goes on comes to the same as one that was never disturbed. */
  @Test
  void aProgramThatIsKilledLeavesEachTripLearntFromOrWaiting() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      for (int day = 1; day <= 30; day++) {
        keep(library, day, 85 + day % 5);
      }
    }
    for (int kill = 0; kill < 3; kill++) {
      learnAndKill(folder);
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      int left = library.heat().waiting();
      assertThat(left).as("killed on the way").isBetween(1, 29);
      assertThat(learn(library)).isEqualTo(left);
      assertThat(known(library).trips()).isEqualTo(30);
    }
  }

  /** Killed as soon as it says that it has learnt from some trips, in whatever it is at then. */
  private static void learnAndKill(Path folder) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                Learner.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    for (int line = 0; line < 3; line++) {
      assertThat(process.inputReader().readLine()).isEqualTo("learnt");
    }
    process.toHandle().destroyForcibly();
    process.waitFor();
  }

  /** A program of its own that learns until it is killed; it never closes its library. */
  static final class Learner {
    private Learner() {}

    public static void main(String[] arguments) throws LibraryException {
      TripLibrary library = TripLibrary.open(Path.of(arguments[0]));
      int left = library.heat().waiting();
      while (left > 1 && library.heat().learnNext(new LastTemperature())) {
        left--;
        System.out.println("learnt");
      }
      try {
        System.in.read();
      } catch (IOException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /** Fails on a trip that ends above 100 degC, whichever it is. */
  private static final class AfraidOfHeat implements HeatTeacher {
    private int looks;

    @Override
    public Look begin(Vehicle vehicle, TripDetails details) {
      looks++;
      Look calm = new LastTemperature().begin(vehicle, details);
      return new Look() {
        @Override
        public void accept(TripEntry entry) {
          if (entry instanceof TripEntry.OfSample(Sample sample) && sample.value() > 100) {
            throw new IllegalStateException("too hot");
          }
          calm.accept(entry);
        }

        @Override
        public TripHeat finish() {
          return calm.finish();
        }
      };
    }
  }

  @Test
  void aTripAtWhichTheModelsFailIsToldAndLeftOutWhileTheOthersTeach() throws Exception {
    String hot;
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      hot = keep(library, 1, 105);
      keep(library, 2, 88);
      keep(library, 3, 88);
      AfraidOfHeat teacher = new AfraidOfHeat();
      while (library.heat().learnNext(teacher)) {
        // One trip after the other.
      }

      assertThat(known(library).trips()).isEqualTo(2);
      assertThat(teacher.looks).as("nobody tries again meanwhile").isEqualTo(3);
      assertThat(library.heat().unlearnt())
          .singleElement()
          .asString()
          .startsWith("Could not learn how the vehicle takes heat of trip " + hot)
          .contains("expected", "found IllegalStateException (too hot)", "tried again when");
      assertThat(library.heat().waiting()).isEqualTo(1);
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(learn(library)).as("it waits for the next time").isEqualTo(1);
      assertThat(library.heat().unlearnt()).isEmpty();
    }
  }

  @Test
  void learningBesideGoesOnBehindATripAtWhichTheModelsFail() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      keep(library, 1, 105);
      keep(library, 2, 88);
      library.heat().learnBeside(new AfraidOfHeat());
      library.heat().awaitLearned();
      assertThat(known(library).trips()).isEqualTo(1);
    }
  }
}
