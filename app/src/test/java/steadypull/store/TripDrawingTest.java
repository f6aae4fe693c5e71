package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.store.column.PixelLine;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A trip is drawn from its library; {@code TripLinesTest} holds what is drawn to every sample. */
class TripDrawingTest {
  private static final NewTrip TRIP =
      new NewTrip(
          Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR),
          Instant.parse("2026-07-15T17:45:12Z"),
          "",
          "test",
          "0.1.0");

  /** Two long segments and one that is shorter. */
  private static final int MANY = 2 * TripWriter.LONG_SEGMENT + 7_000;

  private static final int SPIKE = TripWriter.LONG_SEGMENT + 77;
  private static final int COLUMNS = 500;

  @TempDir Path folder;

  @Test
  void aSpikeOfOneSampleIsSeenInTheWholeTripWhetherItIsSealedOrNot() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder);
        TripRecorder recorder = library.begin(TRIP)) {
      for (int number = 0; number < MANY; number++) {
        recorder.append(sample(number));
        if (number % 5_000 == 0) {
          recorder.commit(number);
        }
      }
      recorder.commit(MANY);
      assertSpikeIsSeen(library, recorder.tripId());
      recorder.seal(MANY);
      assertSpikeIsSeen(library, recorder.tripId());
    }
  }

  @Test
  void aTripThatIsNotThereIsNamed() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThatThrownBy(() -> library.draw("nothing"))
          .isInstanceOf(LibraryException.class)
          .hasMessageContaining("nothing");
    }
  }

  private static void assertSpikeIsSeen(TripLibrary library, String tripId) throws Exception {
    try (TripDrawing drawing = library.draw(tripId)) {
      PixelLine line = drawing.line(0, 0, MANY * 200_000L, COLUMNS);
      int column = (int) ((long) SPIKE * COLUMNS / MANY);
      for (int each = 0; each < COLUMNS; each++) {
        assertThat(line.isEmpty(each)).as("column %d", each).isFalse();
        assertThat(line.least(each)).isEqualTo(90);
        boolean isSpike = line.greatest(each) == 140;
        assertThat(isSpike).as("column %d", each).isEqualTo(each == column);
      }
      assertThat(drawing.line(0, SPIKE * 200_000L, SPIKE * 200_000L + 1, 1).last(0)).isEqualTo(140);
      assertThat(drawing.damaged()).isEmpty();
    }
  }

  private static Sample sample(int number) {
    double value = number == SPIKE ? 140 : 90 + number % 3;
    return new Sample(Channels.ENGINE_COOLANT_TEMP, number * 200_000L, value);
  }
}
