package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Queue;
import javafx.stage.FileChooser.ExtensionFilter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.drive.ExportTarget;
import steadypull.store.TripSummary;
import steadypull.ui.TripsModel.Listed;

/** What the trips screen knows, without a screen. */
class TripsModelTest {
  @TempDir Path folder;

  private final Queue<Runnable> waiting = new ArrayDeque<>();

  private static List<String> vehicles(TripsModel model) {
    return model.listedProperty().get() instanceof Listed.Found(TripHits hits)
        ? hits.trips().stream().map(TripSummary::vehicleName).toList()
        : List.of();
  }

  @Test
  void anAnswerThatNobodyWaitsForAnyMoreIsDropped() {
    TripsModel model = new TripsModel();
    long first = model.look(TripQuery.ALL.withText("w"));
    long second = model.look(TripQuery.ALL.withText("wa"));
    model.listed(second, new Listed.Refused("second"));
    model.listed(first, new Listed.Refused("first"));

    assertThat(model.isWanted(first)).isFalse();
    assertThat(model.listedProperty().get()).isEqualTo(new Listed.Refused("second"));
  }

  /** Whoever types faster than the disk answers waits for the last answer alone. */
  @Test
  void searchesThatWereTypedOverAreNotEvenAsked() throws Exception {
    try (TripShelf shelf = new TripShelf(folder)) {
      shelf.fill();
      Words words = new Words(Locale.ENGLISH);
      TripsDesk desk =
          new TripsDesk(
              shelf.desk(),
              words,
              waiting::add,
              new TripExports(shelf.desk(), words, Runnable::run));
      Fx.run(
          () -> {
            desk.look(TripQuery.ALL.withText("q"));
            desk.look(TripQuery.ALL.withText("quarry"));
          });
      waiting.remove().run();
      Fx.settle();
      assertThat(desk.model().listedProperty().get()).isInstanceOf(Listed.Looking.class);
      waiting.remove().run();
      Fx.settle();
      assertThat(vehicles(desk.model())).containsExactly("Quarry tipper");
    }
  }

  @Test
  void filtersAndSearchHoldTogether() throws Exception {
    try (TripShelf shelf = new TripShelf(folder)) {
      shelf.fill();
      TripQuery hot = TripQuery.ALL.withTag(Optional.of("hot"));
      assertThat(TripHits.ask(shelf.desk(), hot).trips()).hasSize(2);
      assertThat(TripHits.ask(shelf.desk(), hot.withText("GUSTY ")).trips()).hasSize(1);
      assertThat(TripHits.ask(shelf.desk(), hot.withVehicle(Optional.of("Quarry tipper"))).trips())
          .isEmpty();

      TripHits all = TripHits.ask(shelf.desk(), TripQuery.ALL);
      assertThat(all.vehicles()).containsExactly("Quarry tipper", "Wattle 2");
      assertThat(all.tags()).containsExactly("hot", "north ramp");
      assertThat(all.trips()).isSortedAccordingTo((a, b) -> b.start().compareTo(a.start()));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "a.csv, *.csv, a.csv",
    "a.csv, *.trip, a.trip",
    "a, *.gpx, a.gpx",
    "a.gpx, *.gpx, a.gpx",
    "run 3.5, *.csv, run 3.5.csv"
  })
  void theChosenKindDecidesTheEndingOfTheFile(String typed, String kind, String written) {
    ExtensionFilter filter = new ExtensionFilter("kind", kind);
    assertThat(FileDialog.named(Path.of(typed), filter)).isEqualTo(Path.of(written));
    assertThat(FileDialog.named(Path.of(typed), null)).isEqualTo(Path.of(typed));
  }

  @ParameterizedTest
  @CsvSource({
    "trips.asTable, *.csv, false",
    "trips.asTableWithoutPlaces, *.csv, true",
    "trips.asTrip, *.trip, false",
    "trips.asTripWithoutPlaces, *.trip, true"
  })
  void theChosenKindDecidesWhetherPlacesLeaveTheTablet(
      String key, String pattern, boolean isWithoutPositions) {
    for (Words words : List.of(new Words(Locale.ENGLISH), new Words(Locale.GERMAN))) {
      ExtensionFilter kind = new ExtensionFilter(words.say(key), pattern);

      ExportTarget target = FileDialog.target(words, Path.of("a"), kind);

      assertThat(target.isWithoutPositions()).isEqualTo(isWithoutPositions);
      assertThat(target.file()).isEqualTo(Path.of("a" + pattern.substring(1)));
    }
  }
}
