package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.load.RigWorld;
import steadypull.store.NewTrip;
import steadypull.store.TripLibrary;

/** A kept trip that knows better than its owner what was towed. */
class WeighedTripTest {
  private static final ObjectMapper JSON = new ObjectMapper();

  /** On the first climb of the road over the Harrow and back, 6.6 t. */
  private static final RigWorld WORLD = RigWorld.of(15);

  private static final List<Sample> SAMPLES = WORLD.samples();

  @TempDir private Path folder;

  private String keep(RigWorld world, List<Sample> samples) throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(world.vehicle());
      return library.keep(
          new NewTrip(world.vehicle(), Desk.NOW, "", "x", "0.0-test"),
          samples,
          samples.getLast().timeMicros());
    }
  }

  @Test
  void theEstimateIsAnIntervalAndTheOwnersErrorASentence() throws Exception {
    double light = WORLD.massKilograms() * 0.7;
    String trip = keep(WORLD.entering(OptionalDouble.of(light)), SAMPLES);
    Desk desk = new Desk(folder);

    JsonNode told = JSON.readTree(desk.type("trip", trip, "--json").out());
    Desk.Answer shown = desk.type("trip", trip);

    JsonNode mass = told.get("mass_estimate_kg");
    assertThat(mass.get("p05").asDouble()).isBetween(light, WORLD.massKilograms());
    assertThat(mass.get("p95").asDouble()).isGreaterThan(WORLD.massKilograms());
    assertThat(told.get("drag_area_estimate_m2").get("p50").asDouble()).isPositive();
    assertThat(told.has("no_mass_estimate")).isFalse();
    assertThat(shown.out()).containsPattern("rig +The rig seems [\\d,]+ kg heavier than entered");
    assertThat(shown.out()).contains("scale");
    assertThat(shown.lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void whoEnteredItRightIsToldNothing() throws Exception {
    String trip = keep(WORLD.entering(OptionalDouble.of(WORLD.massKilograms())), SAMPLES);

    assertThat(new Desk(folder).type("trip", trip).out()).doesNotContain("seems", "scale");
  }

  @Test
  void aMassThatIsCorrectedAfterwardsEndsTheMatter() throws Exception {
    String trip = keep(WORLD.entering(OptionalDouble.of(3000)), SAMPLES);
    Desk desk = new Desk(folder);
    String right = Long.toString(Math.round(WORLD.massKilograms()));

    assertThat(desk.type("trip", trip).out()).contains("heavier");
    assertThat(desk.type("trip", trip, "--mass", right).out()).doesNotContain("seems");
  }

  @Test
  void withoutAReceiverNothingIsSaidAndTheReasonIsThereForMachines() throws Exception {
    String trip =
        keep(
            WORLD,
            SAMPLES.stream()
                .filter(sample -> !sample.channel().equals(Channels.ALTITUDE))
                .toList());
    Desk desk = new Desk(folder);

    JsonNode told = JSON.readTree(desk.type("trip", trip, "--json").out());

    assertThat(told.get("no_mass_estimate").asText()).isEqualTo("no_altitude");
    assertThat(told.has("mass_estimate_kg")).isFalse();
    assertThat(desk.type("trip", trip).out()).doesNotContain("seems");
  }

  /** What the list knows of a damaged trip is shown all the same. */
  @Test
  void aTripWhoseSamplesAreDamagedIsShownWithoutItsEstimate() throws Exception {
    String trip = keep(WORLD, SAMPLES);
    try (Connection connection =
            DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("library.sqlite"));
        Statement meddling = connection.createStatement()) {
      meddling.execute("update segment set samples = x'535053ff'");
    }

    Desk.Answer answer = new Desk(folder).type("trip", trip, "--json");

    assertThat(answer.status()).isZero();
    assertThat(JSON.readTree(answer.out()).get("no_mass_estimate").asText())
        .isEqualTo("unreadable");
  }
}
