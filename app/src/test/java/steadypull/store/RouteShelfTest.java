package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RouteShelfTest {
  private static final RouteFile CLIMB = new RouteFile("Quarry climb", "<gpx>1</gpx>");
  private static final RouteFile WITHOUT_NAME = new RouteFile("", "<gpx>2</gpx>");

  @TempDir Path folder;

  @Test
  void routesOutliveTheProgram() throws Exception {
    List<String> ids;
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.routes()).isEmpty();
      ids = library.keepRoutes(List.of(CLIMB, WITHOUT_NAME));
    }
    try (TripLibrary library = TripLibrary.open(folder)) {
      assertThat(library.routes())
          .containsExactly(
              new KeptRoute(ids.get(0), "Quarry climb"), new KeptRoute(ids.get(1), ""));
      assertThat(library.route(ids.get(0))).contains(CLIMB);
      assertThat(library.route(ids.get(1))).contains(WITHOUT_NAME);
      assertThat(library.route("route-none")).isEmpty();
    }
  }

  @Test
  void theSameRouteIsKeptOnceAndHasTheSameIdEverywhere() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder.resolve("one"));
        TripLibrary other = TripLibrary.open(folder.resolve("other"))) {
      List<String> ids = library.keepRoutes(List.of(CLIMB));

      assertThat(library.keepRoutes(List.of(CLIMB, CLIMB)))
          .containsExactly(ids.getFirst(), ids.getFirst());
      assertThat(library.routes()).hasSize(1);
      assertThat(other.keepRoutes(List.of(CLIMB))).isEqualTo(ids);
    }
  }
}
