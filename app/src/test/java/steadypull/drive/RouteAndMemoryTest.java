package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.Tour;
import steadypull.road.RoadAhead;
import steadypull.road.RoadPass;
import steadypull.road.TourDrive;
import steadypull.road.TourRoutes;
import steadypull.road.grade.PassTrace;
import steadypull.road.memory.RoadMemory;
import steadypull.road.memory.RouteLine;
import steadypull.road.memory.TileKey;
import steadypull.road.memory.TileShelf;

/** Whom a drive believes that has a route and a memory: on the route the route's way, else both. */
class RouteAndMemoryTest {
  private static final Country LARKMOOR = Country.larkmoor();
  private static final LocalDate DAY = LocalDate.of(2026, 5, 1);

  /** The climb of the Fell: 8 % from 500 m behind the fork on. */
  private static final double FORK_METRES = LARKMOOR.toTheFell().stretches().getFirst().to();

  private final Shelf shelf = new Shelf();

  @Test
  void offTheRouteWhatIsRememberedIsTold() {
    teach(LARKMOOR.overTheHarrow());
    RouteAndMemory sight =
        sight(RouteLine.of(TourRoutes.along(LARKMOOR.toTheFell(), 40, 1, _ -> true)));

    List<WatchedTour.Second> seconds =
        WatchedTour.of(TourDrive.of(LARKMOOR.overTheHarrow(), 4), sight);

    assertThat(originAt(seconds, FORK_METRES - 1000))
        .as("the way of the route, known by memory as far as it was driven")
        .isEqualTo(RoadAhead.Origin.ROUTE_AND_DRIVEN);
    assertThat(originAt(seconds, FORK_METRES + 1500)).isEqualTo(RoadAhead.Origin.DRIVEN);
    assertThat(known(seconds, FORK_METRES + 1500).certain().lengthMetres()).isGreaterThan(5000);
  }

  @Test
  void theClimbOfARouteIsToldBeforeItBegins() {
    teach(LARKMOOR.overTheHarrow());
    RouteAndMemory sight =
        sight(RouteLine.of(TourRoutes.along(LARKMOOR.toTheFell(), 40, 1, _ -> true)));

    List<WatchedTour.Second> seconds = WatchedTour.of(TourDrive.of(LARKMOOR.toTheFell(), 4), sight);

    WatchedTour.Second before = at(seconds, FORK_METRES - 300);
    ClimbAhead climb = before.climb().orElseThrow();
    assertThat(before.metres() + climb.toEndMetres())
        .as("the Fell's top is some 4.2 km behind the fork")
        .isBetween(FORK_METRES + 3800, FORK_METRES + 4600);
    assertThat(climb.meanGrade()).isBetween(0.06, 0.085);
  }

  @Test
  void aRouteWithoutElevationsThatNobodyDroveSaysSo() {
    RouteAndMemory sight = sight(RouteLine.of(TourRoutes.withoutElevations(LARKMOOR.toTheFell())));

    List<WatchedTour.Second> seconds = WatchedTour.of(TourDrive.of(LARKMOOR.toTheFell(), 4), sight);

    assertThat(seconds).noneMatch(WatchedTour.Second::isKnown);
    assertThat(at(seconds, FORK_METRES).ahead()).isEqualTo(new RoadAhead.Ungraded());
    assertThat(seconds.getFirst().ahead()).isEqualTo(new RoadAhead.Unknown());
  }

  private void teach(Tour tour) {
    TourDrive drive = TourDrive.of(tour, 1);
    PassTrace trace = new PassTrace(drive.vehicle());
    drive.samples().forEach(trace::accept);
    RoadMemory memory = new RoadMemory(shelf);
    for (RoadPass pass : trace.finish()) {
      memory.learn(pass, DAY);
    }
  }

  private RouteAndMemory sight(RouteLine line) {
    return new RouteAndMemory(line, (place, metres, taker) -> taker.accept(shelf.tiles));
  }

  private static RoadAhead.Origin originAt(List<WatchedTour.Second> seconds, double metres) {
    return known(seconds, metres).origin();
  }

  private static RoadAhead.Known known(List<WatchedTour.Second> seconds, double metres) {
    return (RoadAhead.Known) at(seconds, metres).ahead();
  }

  private static WatchedTour.Second at(List<WatchedTour.Second> seconds, double metres) {
    return seconds.stream().filter(second -> second.metres() > metres).findFirst().orElseThrow();
  }

  private static final class Shelf implements TileShelf {
    private final Map<TileKey, byte[]> tiles = new HashMap<>();

    @Override
    public Optional<byte[]> load(TileKey key) {
      return Optional.ofNullable(tiles.get(key));
    }

    @Override
    public void save(Map<TileKey, byte[]> changed, Set<TileKey> emptied) {
      tiles.putAll(changed);
      tiles.keySet().removeAll(emptied);
    }
  }
}
