package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.road.load.Interval;
import steadypull.road.load.RigFinding;
import steadypull.vehicle.Rig;

class RigWordsTest {
  private static final RigFinding FOUND =
      new RigFinding.Weighed(new Interval(7350, 7600, 7850), new Interval(2.9, 4.0, 5.6));

  private static List<String> said(RigFinding finding, Rig rig) {
    return words(Locale.ENGLISH, UnitSystem.METRIC).sentences(finding, rig);
  }

  private static RigWords words(Locale locale, UnitSystem units) {
    return new RigWords(locale, new QuantityFormat(locale, units));
  }

  private static Rig weighing(double both) {
    return Rig.unknown().withMasses(OptionalDouble.of(both), OptionalDouble.empty());
  }

  @Test
  void aHeavierRigIsToldWithItsBoundsAndTheScale() {
    assertThat(said(FOUND, weighing(7000)))
        .containsExactly(
            "The rig seems 600 kg heavier than entered (between 350 kg and 850 kg).",
            "An engine that tells its torque wrong by more than 7 % looks the same.",
            "Weigh the rig on a scale, and keep the makers' ratings.");
  }

  @Test
  void aLighterRigIsToldToo() {
    assertThat(said(FOUND, weighing(8200)).getFirst())
        .isEqualTo("The rig seems 600 kg lighter than entered (between 350 kg and 850 kg).");
  }

  @Test
  void whereTheTrailersMassIsKnownTheTrailerIsMeant() {
    Rig rig = Rig.unknown().withMasses(OptionalDouble.of(7000), OptionalDouble.of(3500));
    assertThat(said(FOUND, rig).getFirst())
        .startsWith("Your trailer seems 600 kg heavier than entered")
        .endsWith("if the vehicle weighs what it should.");
  }

  @Test
  void aTrailerThatIsNotThereIsNotBlamed() {
    Rig rig = Rig.unknown().withMasses(OptionalDouble.of(7000), OptionalDouble.of(0));
    assertThat(said(FOUND, rig).getFirst()).startsWith("The rig seems");
  }

  @Test
  void whereTheOwnerMayWellBeRightThatIsSaidWithItsBounds() {
    assertThat(said(FOUND, weighing(7400)))
        .containsExactly(
            "By this trip the rig weighs between 7.4 t and 7.9 t; 7.4 t is entered, which fits.");
    assertThat(said(new RigFinding.CannotTell(RigFinding.Reason.NO_ALTITUDE), weighing(7400)))
        .isEmpty();
  }

  @Test
  void aRigThatNobodyWeighedIsWeighed() {
    assertThat(said(FOUND, Rig.unknown()).getFirst())
        .isEqualTo(
            "The rig seems to weigh 7.6 t (between 7.4 t and 7.9 t); nobody has entered its mass.");
  }

  @Test
  void aDragAreaFarFromTheOneEnteredIsToldWithoutTheScale() {
    Rig rig =
        new Rig(
            OptionalDouble.of(7600),
            OptionalDouble.of(1.5),
            OptionalDouble.empty(),
            OptionalDouble.empty());
    assertThat(said(FOUND, rig))
        .hasSize(2)
        .last()
        .isEqualTo("Its drag area seems to lie between 2.9 and 5.6 m2, not at 1.5 m2 as entered.");
  }

  @Test
  void itIsSaidInGermanAndInPounds() {
    assertThat(words(Locale.GERMAN, UnitSystem.METRIC).sentences(FOUND, weighing(7000)))
        .hasSize(3)
        .first()
        .asString()
        .isEqualTo(
            "Das Gespann wirkt um 600 kg schwerer als eingetragen (zwischen 350 kg und 850 kg).");
    assertThat(
            words(Locale.ENGLISH, UnitSystem.IMPERIAL).sentences(FOUND, weighing(7000)).getFirst())
        .contains("1,320 lb heavier", "between 770 lb and 1,870 lb");
  }

  @Test
  void bothLanguagesHaveTheSameTexts() {
    assertThat(keys(Locale.GERMAN)).isEqualTo(keys(Locale.ROOT));
  }

  private static Set<String> keys(Locale locale) {
    ResourceBundle bundle =
        ResourceBundle.getBundle(
            "steadypull.review.RigWords",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    assertThat(bundle.getLocale()).isEqualTo(locale);
    return new TreeSet<>(bundle.keySet());
  }
}
