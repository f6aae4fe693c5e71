package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkException;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Country;
import steadypull.demo.road.Course;
import steadypull.demo.road.Drive;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Tour;

/** A receiver on the bench sees and errs as one behind a windscreen does. */
class BenchReceiverTest {
  private static final Tour HARROW = Country.larkmoor().overTheHarrow();
  private static final Scenario USUAL = DemoWorld.scenario("cool-day").orElseThrow();

  @Test
  void theSameSeedErrsTheSameAndAnotherOtherwise() throws LinkException {
    List<String> said =
        said(new BenchReceiver("demo-receiver:cool-day", settings(USUAL, 4, 0)), 60);

    assertThat(said(new BenchReceiver("demo-receiver:cool-day", settings(USUAL, 4, 0)), 60))
        .isEqualTo(said);
    assertThat(said(new BenchReceiver("demo-receiver:cool-day", settings(USUAL, 5, 0)), 60))
        .isNotEqualTo(said);
  }

  /** The tunnel of the Harrow lies between 12 000 and 12 900 m. */
  @Test
  void inATunnelThereIsNoFix() throws LinkException {
    Scenario tour = tour();
    Drive truth = DemoWorld.drive(tour, 4);
    double start = 0;
    while (truth.place().orElseThrow().metres() < 11_800) {
      truth.advanceTo(++start);
    }
    BenchReceiver receiver = new BenchReceiver("demo-receiver:tour", settings(tour, 4, start));

    int inside = 0;
    int outside = 0;
    for (String said : said(receiver, 70)) {
      truth.advanceTo(++start);
      if (truth.isUnderRoof()) {
        inside++;
        assertThat(said).as("%.0f s", start).contains(",V,");
      } else if (said.contains(",A,")) {
        outside++;
      }
    }
    assertThat(inside).isGreaterThan(20);
    assertThat(outside).isGreaterThan(10);
  }

  /** So that both are at one place whatever pace the day has. */
  @Test
  void itLivesInTheTimeOfTheVehicleThatItSitsIn() throws LinkException {
    BenchClock vehicle = new BenchClock(OptionalDouble.empty());
    BenchReceiver receiver = new BenchReceiver("demo-receiver:cool-day", settings(USUAL, 4, 0));
    receiver.follow(vehicle);
    vehicle.advanceTo(seconds(30.5));
    try (Link link = receiver.open()) {
      vehicle.advanceTo(seconds(31));
      assertThat(text(link)).contains("RMC,120031.00,A");
      vehicle.advanceTo(seconds(33.5));
      assertThat(text(link)).as("a second that was missed is told late").contains("RMC,120032");
      assertThat(receiver.clock().nanoTime()).isEqualTo(seconds(33.5));
    }
  }

  private static long seconds(double seconds) {
    return (long) (seconds * 1e9);
  }

  private static List<String> said(BenchReceiver receiver, int seconds) throws LinkException {
    List<String> said = new ArrayList<>();
    try (Link link = receiver.open()) {
      while (said.size() < seconds) {
        said.add(text(link));
      }
    }
    return said;
  }

  private static String text(Link link) throws LinkException {
    return new String(link.read(Duration.ofSeconds(1)), StandardCharsets.US_ASCII);
  }

  private static BenchSettings settings(Scenario scenario, long seed, double start)
      throws LinkException {
    BenchSettings usual = BenchAddress.parse("demo:cool-day?speed=10000");
    return new BenchSettings(
        scenario, usual.speed(), seed, start, usual.vehicle(), usual.adapter(), usual.faults());
  }

  private static Scenario tour() {
    Course.OnRoad road = (Course.OnRoad) USUAL.course();
    return new Scenario(
        "tour",
        HARROW.name(),
        Duration.ofMinutes(50),
        USUAL.vehicleName(),
        USUAL.vehicleFile(),
        USUAL.rig(),
        new Course.OnRoad(HARROW, road.weather(), HARROW.speeds(22), road.start()));
  }
}
