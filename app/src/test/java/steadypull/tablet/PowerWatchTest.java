package steadypull.tablet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Stories of batteries and chargers. Marks of 20 % and 5 %: the owner's; 15 % and 10 %: ours. */
class PowerWatchTest {
  private final PowerWatch watch = new PowerWatch();

  private Optional<TabletNews> onCharger(int percent) {
    return watch.take(new Power.Battery(percent, true, false));
  }

  private Optional<TabletNews> unplugged(int percent) {
    return watch.take(new Power.Battery(percent, false, true));
  }

  /** A charger too weak for a bright screen. */
  private Optional<TabletNews> onWeakCharger(int percent) {
    return watch.take(new Power.Battery(percent, true, true));
  }

  @Test
  void aTabletOnItsChargerIsNoNews() {
    assertThat(onCharger(100)).isEmpty();
    assertThat(onCharger(3)).as("empty, but filling").isEmpty();
  }

  @Test
  void anUnpluggedChargerIsToldOnceAndSoIsItsReturn() {
    onCharger(80);
    assertThat(unplugged(79)).contains(new TabletNews.OnBattery(79));
    assertThat(unplugged(78)).isEmpty();
    assertThat(onCharger(78)).contains(new TabletNews.Charging(78));
    assertThat(onCharger(79)).isEmpty();
    assertThat(unplugged(79)).contains(new TabletNews.OnBattery(79));
  }

  @Test
  void aDriveThatBeginsOnTheBatteryIsTold() {
    assertThat(unplugged(55)).contains(new TabletNews.OnBattery(55));
  }

  @Test
  void aDrainingBatteryIsToldAtEveryMarkOnce() {
    unplugged(21);
    assertThat(unplugged(20)).isEmpty();
    assertThat(unplugged(19)).contains(new TabletNews.BatteryUnder(20, 19));
    assertThat(unplugged(18)).isEmpty();
    assertThat(unplugged(14)).contains(new TabletNews.BatteryUnder(15, 14));
    assertThat(unplugged(15)).as("a gauge that wavers").isEmpty();
    assertThat(unplugged(14)).isEmpty();
    assertThat(unplugged(9)).contains(new TabletNews.BatteryUnder(10, 9));
    assertThat(unplugged(6)).isEmpty();
    assertThat(unplugged(5)).contains(new TabletNews.BatteryNearlyEmpty(5));
    assertThat(unplugged(4)).isEmpty();
  }

  @Test
  void aBatteryFoundLowIsToldAtOnceAndOnlyForWhatItIs() {
    assertThat(unplugged(8)).contains(new TabletNews.BatteryUnder(10, 8));
    assertThat(unplugged(7)).isEmpty();
  }

  // Otherwise a trip would be sealed whenever the charger's plug shakes.
  @Test
  void aChargerThatIsTooWeakDoesNotBringTheSameMarkAgainAndAgain() {
    assertThat(onWeakCharger(5)).contains(new TabletNews.BatteryNearlyEmpty(5));
    assertThat(onCharger(5)).contains(new TabletNews.Charging(5));
    for (int round = 0; round < 10; round++) {
      assertThat(onWeakCharger(5)).isEmpty();
      assertThat(onCharger(6)).isEmpty();
    }
  }

  @Test
  void aBatteryThatWasFilledAndRunsLowAgainIsToldAgain() {
    assertThat(unplugged(5)).contains(new TabletNews.BatteryNearlyEmpty(5));
    assertThat(onCharger(60)).contains(new TabletNews.Charging(60));
    assertThat(unplugged(19)).contains(new TabletNews.BatteryUnder(20, 19));
    assertThat(unplugged(5)).contains(new TabletNews.BatteryNearlyEmpty(5));
  }

  @Test
  void whatIsNotThereOrNotKnownIsSilentAndForgetsNothing() {
    assertThat(watch.take(new Power.NoBattery())).isEmpty();
    assertThat(watch.take(new Power.CouldNotTell())).isEmpty();
    unplugged(50);
    assertThat(watch.take(new Power.CouldNotTell())).isEmpty();
    assertThat(unplugged(50)).isEmpty();
  }
}
