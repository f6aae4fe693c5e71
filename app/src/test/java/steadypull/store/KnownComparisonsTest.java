package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Comparisons as a workshop puts them together, kept from one opening to the next. */
class KnownComparisonsTest {
  private static final Instant DAY = Instant.parse("2026-06-25T09:30:00.123456Z");

  @TempDir Path folder;

  private static KeptComparison named(String name, Instant kept, String... afters) {
    List<KeptComparison.Source> sides =
        new ArrayList<>(List.of(new KeptComparison.Source("before", "first.csv@10-90")));
    for (String after : afters) {
      sides.add(new KeptComparison.Source("after", after));
    }
    return new KeptComparison(name, kept, "charge_air_temp_out", sides, "wind = \"calm\"\n");
  }

  @Test
  void whatIsKeptComesBackTheSameWithItsOrder() throws Exception {
    KeptComparison older = named("tank", DAY, "b", "a name with blanks.csv", "a");
    KeptComparison newer = named("fan", DAY.plusSeconds(1));
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.comparisons().keep(older);
      library.comparisons().keep(newer);
    }
    try (TripLibrary library = TripLibrary.openToRead(folder)) {
      assertThat(library.comparisons().all()).containsExactly(newer, older);
    }
  }

  @Test
  void oneOfTheSameNameIsReplacedAndCanBeForgotten() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.comparisons().keep(named("tank", DAY, "a"));
      library.comparisons().keep(named("tank", DAY.plusSeconds(5), "b"));

      assertThat(library.comparisons().all())
          .containsExactly(named("tank", DAY.plusSeconds(5), "b"));
      assertThat(library.comparisons().forget("tank")).isTrue();
      assertThat(library.comparisons().forget("tank")).isFalse();
      assertThat(library.comparisons().all()).isEmpty();
    }
  }

  @Test
  void aLibraryThatIsOpenToReadKeepsNothing() throws Exception {
    TripLibrary.open(folder).close();
    try (TripLibrary library = TripLibrary.openToRead(folder)) {
      assertThatThrownBy(() -> library.comparisons().keep(named("tank", DAY)))
          .isInstanceOf(LibraryException.class);
    }
  }

  @Test
  void noLineIsLostToALineEnd() {
    assertThatThrownBy(() -> new KeptComparison.Source("after", "a\nbefore b"))
        .isInstanceOf(IllegalArgumentException.class);
    assertThatThrownBy(() -> named("two\nlines", DAY)).isInstanceOf(IllegalArgumentException.class);
  }
}
