package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleJson;
import steadypull.vehicle.role.SensorEvidence;
import steadypull.vehicle.role.SensorWatch;

/** What was seen of a vehicle's sensors stays with the vehicle. */
class SensorEvidenceKeptTest {
  private static final Vehicle WATTLE = Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR);
  private static final SensorWatch WATCH = new SensorWatch(SensorEvidence.none());

  @TempDir Path folder;

  @BeforeAll
  static void see() {
    for (int second = 0; second < 20; second++) {
      WATCH.heard(new Sample(Channels.MANIFOLD_PRESSURE, second * 1_000_000L, 200));
      WATCH.heard("01.77.1", second * 1_000_000L, 60 + second);
    }
  }

  @Test
  void evidenceSurvivesTheProgramAndAnotherSavingOfTheVehicle() throws LibraryException {
    SensorEvidence seen = WATCH.evidence();
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(WATTLE);
      library.keep("Wattle 2", seen);
      library.save(WATTLE.withLayout(CoolingLayout.AIR_TO_AIR));
    }

    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(seen).isNotEqualTo(SensorEvidence.none());
      assertThat(library.sensorEvidence("Wattle 2")).isEqualTo(seen);
      assertThat(library.vehicle("Wattle 2").orElseThrow().layout())
          .isEqualTo(CoolingLayout.AIR_TO_AIR);
    }
  }

  @Test
  void ofAVehicleThatIsNotKnownNothingIsKept() throws LibraryException {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.keep("Nobody", WATCH.evidence());

      assertThat(library.sensorEvidence("Nobody")).isEqualTo(SensorEvidence.none());
      assertThat(library.vehicleNames()).isEmpty();
    }
  }

  /** A user's library of the first form must open with everything that is in it. */
  @Test
  void aLibraryOfTheFirstFormIsBroughtUpToDate() throws Exception {
    Path file = folder.resolve("library.sqlite");
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      statement.executeUpdate(Sql.of("sqlite.migration.V1"));
      statement.executeUpdate("pragma user_version = 1");
      statement.executeUpdate(
          "insert into vehicle values ('Wattle 2', '%s', 1)"
              .formatted(VehicleJson.write(WATTLE).replace("'", "''")));
    }

    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.vehicle("Wattle 2")).contains(WATTLE);
      assertThat(library.sensorEvidence("Wattle 2")).isEqualTo(SensorEvidence.none());
      library.keep("Wattle 2", WATCH.evidence());
      assertThat(library.sensorEvidence("Wattle 2")).isEqualTo(WATCH.evidence());
    }
  }
}
