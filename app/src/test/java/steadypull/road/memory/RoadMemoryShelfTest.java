package steadypull.road.memory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import steadypull.demo.road.Country;
import steadypull.demo.road.Road;
import steadypull.road.RoadPass;

/** What of a memory lies on its shelf: saved, forgotten, damaged. */
class RoadMemoryShelfTest {
  private static final Country LARKMOOR = Country.larkmoor();
  private static final TourPass DRIVEN = TourPass.of(LARKMOOR.overTheHarrow(), 100);

  /** A shelf whose every tile can be touched, and that can be full. */
  private static final class OpenShelf implements TileShelf {
    private final Map<TileKey, byte[]> tiles = new HashMap<>();
    private boolean isFull;

    @Override
    public Optional<byte[]> load(TileKey key) {
      return Optional.ofNullable(tiles.get(key)).map(byte[]::clone);
    }

    @Override
    public void save(Map<TileKey, byte[]> changed, Set<TileKey> emptied) {
      if (isFull) {
        throw new IllegalStateException("full");
      }
      tiles.putAll(changed);
      tiles.keySet().removeAll(emptied);
    }

    private byte[] octets(TileKey key) {
      return Objects.requireNonNull(tiles.get(key));
    }

    private int octets() {
      return tiles.values().stream().mapToInt(octets -> octets.length).sum();
    }
  }

  private final OpenShelf shelf = new OpenShelf();

  @Test
  void whatWasLearntIsThereWhenTheProgramStartsAgain() {
    Set<TileKey> saved = learn(new RoadMemory(shelf));

    assertThat(saved).isEqualTo(shelf.tiles.keySet()).hasSizeGreaterThan(3);
    assertThat(knownShare(new RoadMemory(shelf))).isGreaterThan(0.9);
  }

  @Test
  void bothWaysOfARoadNeedLessThanAHundredOctetsFor50Metres() {
    learn(new RoadMemory(shelf));

    double pieces = LARKMOOR.overTheHarrow().length() / 50;
    assertThat(shelf.octets() / pieces).isBetween(10.0, 100.0);
  }

  @Test
  void roadsAroundAPlaceAreForgottenAndTheRestIsNot() {
    RoadMemory memory = new RoadMemory(shelf);
    learn(memory);
    Road.Place home = LARKMOOR.overTheHarrow().at(9000);
    Set<TileKey> changed = memory.forgetAround(home.latitude(), home.longitude(), 1500);

    assertThat(changed).isNotEmpty();
    RoadMemory again = new RoadMemory(shelf);
    assertThat(again.graph().nodesNear(home.latitude(), home.longitude(), 1000)).isEmpty();
    LookAheadFigures figures = LookAheadFigures.of(DRIVEN, new RoadMatcher(again));
    assertThat(figures.claims())
        .filteredOn(claim -> claim.tourMetres() + claim.aheadMetres() > 7700)
        .filteredOn(claim -> claim.tourMetres() < 10_400)
        .isEmpty();
    assertThat(figures.knownShare()).isCloseTo(0.86, within(0.05));
    for (byte[] octets : shelf.tiles.values()) {
      assertThat(octets).isNotEmpty();
    }
  }

  @Test
  void whatWasForgottenMayBeLearntAgain() {
    RoadMemory memory = new RoadMemory(shelf);
    learn(memory);
    Road.Place home = LARKMOOR.overTheHarrow().at(9000);
    memory.forgetAround(home.latitude(), home.longitude(), 1500);
    learn(memory);

    assertThat(knownShare(memory)).isGreaterThan(0.95);
  }

  @Test
  void forgettingEverythingEmptiesTheShelf() {
    RoadMemory memory = new RoadMemory(shelf);
    learn(memory);
    Road.Place middle = LARKMOOR.overTheHarrow().at(12_000);
    memory.forgetAround(middle.latitude(), middle.longitude(), 40_000);

    assertThat(shelf.tiles).isEmpty();
  }

  @Test
  void aDamagedTileIsToldLeftAloneAndTheOthersServe() {
    learn(new RoadMemory(shelf));
    TileKey broken = tileAt(9000);
    byte[] octets = shelf.octets(broken);
    octets[octets.length / 2] ^= 0x10;
    byte[] damaged = octets.clone();
    RoadMemory memory = new RoadMemory(shelf);

    assertThat(knownShare(memory)).isBetween(0.3, 0.95);
    assertThat(learn(memory)).doesNotContain(broken);
    assertThat(shelf.tiles.get(broken)).isEqualTo(damaged);
    assertThat(memory.damaged())
        .singleElement()
        .satisfies(found -> assertThat(found).hasMessageContaining("check sum"));
  }

  @Test
  void aDamagedTileIsLearntAnewOnceItsRoadsAreForgotten() {
    learn(new RoadMemory(shelf));
    shelf.octets(tileAt(9000))[20] ^= 0x10;
    RoadMemory memory = new RoadMemory(shelf);
    Road.Place place = LARKMOOR.overTheHarrow().at(9000);
    memory.forgetAround(place.latitude(), place.longitude(), 50);
    learn(memory);

    assertThat(memory.damaged()).isEmpty();
    assertThat(knownShare(new RoadMemory(shelf))).isGreaterThan(0.95);
  }

  /** A tile that is gone, its neighbours still linking into it, is only a road that ends. */
  @Test
  void aTileThatIsGoneIsARoadThatEnds() {
    learn(new RoadMemory(shelf));
    shelf.tiles.remove(tileAt(9000));
    RoadMemory memory = new RoadMemory(shelf);

    assertThat(knownShare(memory)).isBetween(0.3, 0.95);
    learn(memory);
    assertThat(knownShare(memory)).isGreaterThan(0.9);
  }

  @Test
  void aFullShelfLeavesTheMemoryAsItWas() {
    RoadMemory memory = new RoadMemory(shelf);
    learn(memory);
    Map<TileKey, byte[]> before = Map.copyOf(shelf.tiles);
    shelf.isFull = true;

    assertThatThrownBy(() -> learn(memory)).hasMessage("full");
    assertThat(shelf.tiles).isEqualTo(before);
    shelf.isFull = false;
    assertThat(knownShare(memory)).isGreaterThan(0.9);
  }

  private static Set<TileKey> learn(RoadMemory memory) {
    RoadPass pass = DRIVEN.passes().getFirst();
    return memory.learn(pass, RoadsDriven.DAY);
  }

  private static TileKey tileAt(double metres) {
    Road.Place place = LARKMOOR.overTheHarrow().at(metres);
    return TileKey.of(place.latitude(), place.longitude());
  }

  private static double knownShare(RoadMemory memory) {
    return LookAheadFigures.of(DRIVEN, new RoadMatcher(memory)).knownShare();
  }
}
