package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** Trips are found by what was measured, marked and asked on them. */
class TripFindTest {
  @TempDir private Path folder;
  private TripLibrary library;
  private String marked;

  @BeforeEach
  void twoTrips() throws Exception {
    library = TripLibrary.open(folder);
    marked = trip("Cedar 4", "second gully", "VLINK-9");
    trip("Cedar 5", "", "");
  }

  @AfterEach
  void close() {
    library.close();
  }

  private String trip(String vehicle, String mark, String adapter) throws LibraryException {
    return library.addTrips(
        adder -> {
          AddedTrip trip =
              adder.begin(
                  new NewTrip(
                      Vehicle.unknown(vehicle, CoolingLayout.AIR_TO_AIR),
                      Instant.parse("2026-07-15T10:00:00Z"),
                      "",
                      "a port",
                      "1"));
          trip.describe(new LinkIdentity(adapter, "CAN 11/500", ""));
          trip.append(new Sample(Channels.VEHICLE_SPEED, 0, 80));
          if (!mark.isEmpty()) {
            trip.append(new Sample(Channels.ENGINE_OIL_TEMP, 0, 90));
            trip.append(new TripEntry.OfEvent(new TripEvent(1, TripEvent.Kind.MARK, mark)));
            trip.append(new TripEntry.OfEvent(new TripEvent(2, TripEvent.Kind.ADVICE, "ease off")));
          }
          return trip.seal(1_000_000);
        });
  }

  private List<String> found(String text) throws LibraryException {
    return library.trips(Optional.of(text)).stream().map(TripSummary::id).toList();
  }

  @ParameterizedTest
  @ValueSource(strings = {"GULLY", "engine_oil", "engine oil temp", "vlink-9", "cedar 4"})
  void byMarkChannelAdapterAndVehicleInWhateverCase(String text) throws Exception {
    assertThat(found(text)).containsExactly(marked);
  }

  @Test
  void whatAllShareFindsAllAndWhatIsInNoneFindsNone() throws Exception {
    assertThat(found("vehicle speed")).hasSize(2);
    assertThat(found("ease off")).isEmpty();
    assertThat(found("transmission")).isEmpty();
  }

  @Test
  void aTripThatWasThrownAwayIsNotFoundByItsMark() throws Exception {
    library.remove(marked);
    assertThat(found("gully")).isEmpty();
  }
}
