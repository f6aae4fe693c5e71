package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.NewTrip;
import steadypull.store.TripLibrary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * A trip of which one piece is damaged: the rest of it can be worked with, and what is missing is
 * told.
 */
class DamagedTripTest {
  private static final int ROWS = 40_000;

  @TempDir Path place;

  private Desk desk;
  private String trip;

  @BeforeEach
  void damageTheLastChannelOfTheFirstSegment() throws Exception {
    Path folder = place.resolve("library");
    desk = new Desk(folder);
    try (TripLibrary library = TripLibrary.open(folder)) {
      trip = library.keep(described(), samples(), 100_000L * ROWS);
    }
    flipTheLastOctetButFour(folder.resolve("library.sqlite"));
  }

  @Test
  void aTableHasAllThatIsSoundAndTheCommandSaysWhatIsMissing() throws Exception {
    Path table = place.resolve("run.csv");

    Desk.Answer answer = desk.type("export", trip, "--to", table.toString(), "--measured-only");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.err())
        .contains("Wrote 63616 samples to " + table)
        .contains("Could not read all of trip " + trip)
        .contains("expected every sample, found damage: 16384 samples of charge_air_temp_out")
        .contains("from 0.0 s to 1638.3 s", "steadypull check", "Everything else was taken");
    List<String> rows = Files.readAllLines(table);
    assertThat(rows).hasSize(1 + ROWS);
    // Nothing stands in for what is missing.
    assertThat(rows.get(1 + 16_383)).isEqualTo("1638.3,,81");
    assertThat(rows.get(1 + 16_384)).isEqualTo("1638.4,32,88");
  }

  @Test
  void aTripFileIsAWholeTripThatSaysWhatIsMissing() {
    Path file = place.resolve("x.trip");

    assertThat(desk.type("export", trip, "--to", file.toString()).status()).isEqualTo(1);

    Desk other = new Desk(place.resolve("other"));
    Desk.Answer imported = other.type("import", file.toString());
    assertThat(imported.status()).as(imported.err()).isZero();
    assertThat(other.type("check").status()).isZero();
    assertThat(other.type("trip", trip).out()).contains("63616").contains("recording 1");
  }

  @Test
  void adviceIsGivenOnWhatIsSound() {
    Desk.Answer answer = desk.type("advise", trip);

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.lines().getLast()).isEqualTo("{\"time_s\":4000.0,\"event\":\"end\"}");
    assertThat(answer.err()).contains("16384 samples of charge_air_temp_out");
  }

  @Test
  void aComparisonTakesWhatIsSoundAndSaysOnceWhatIsMissing() {
    Desk.Answer answer =
        desk.type(
            "compare",
            "--before",
            trip + "@0-2000",
            "--after",
            trip + "@2000-4000",
            "--channel",
            "charge_air_temp_out");

    assertThat(answer.status()).isEqualTo(1);
    assertThat(answer.out()).startsWith("Not proven yet");
    assertThat(answer.err()).containsOnlyOnce("16384 samples of charge_air_temp_out");
  }

  @Test
  void theTripShowsTheGapWithItsReason() throws Exception {
    Desk.Answer shown = desk.type("trip", trip);

    assertThat(shown.status()).isZero();
    assertThat(shown.out()).containsPattern("damaged gap .* 16384 samples of charge_air_temp_out");
    JsonNode gap =
        new ObjectMapper().readTree(desk.type("trip", trip, "--json").out()).get("damaged").get(0);
    assertThat(gap.get("samples").asInt()).isEqualTo(16_384);
    assertThat(gap.get("channels").get(0).asText()).isEqualTo("charge_air_temp_out");
    assertThat(gap.get("from_s").asDouble()).isZero();
    assertThat(gap.get("to_s").asDouble()).isEqualTo(1638.3);
  }

  @Test
  void theSalvageKeepsTheOtherChannel() throws Exception {
    JsonNode report = new ObjectMapper().readTree(desk.type("check", "--json").line());

    JsonNode lost = report.get("damaged").get(0);
    assertThat(lost.get("samples").asInt()).isEqualTo(16_384);
    assertThat(lost.get("channels").get(0).asText()).isEqualTo("charge_air_temp_out");
    Desk salvaged = new Desk(Path.of(report.get("salvaged").asText()));
    assertThat(salvaged.type("check").status()).isZero();
    assertThat(salvaged.type("trip", trip).out()).contains("63616");
  }

  /** The last octet of values lies before the check of four. */
  private static void flipTheLastOctetButFour(Path file) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement select = connection.createStatement();
        PreparedStatement update =
            connection.prepareStatement("update segment set samples = ? where first_sample = 0")) {
      byte[] samples;
      try (ResultSet row =
          select.executeQuery("select samples from segment where first_sample = 0")) {
        samples = row.getBytes(1);
      }
      samples[samples.length - 5] ^= 1;
      update.setBytes(1, samples);
      update.executeUpdate();
    }
  }

  private static NewTrip described() {
    return new NewTrip(
        Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
        Instant.parse("2026-07-15T17:45:12Z"),
        "baseline",
        "test",
        "0.1.0");
  }

  private static List<Sample> samples() {
    List<Sample> samples = new ArrayList<>();
    for (int row = 0; row < ROWS; row++) {
      long timeMicros = 100_000L * row;
      samples.add(new Sample(Channels.VEHICLE_SPEED, timeMicros, 40 + row * 7L % 80));
      samples.add(new Sample(Channels.CHARGE_AIR_TEMP_OUT, timeMicros, 30 + row % 90 / 2.0));
    }
    return samples;
  }
}
