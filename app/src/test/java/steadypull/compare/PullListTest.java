package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.QuantityFormat;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;

/** Stories of a day of pulls: what somebody is told who is heard second by second. */
class PullListTest {
  private static final PullPlan PLAN =
      new PullPlan(List.of(Side.BEFORE, Side.AFTER), 2, 60, List.of(Channels.CHARGE_COOLANT_TEMP));

  private static final PullWords ENGLISH =
      new PullWords(Locale.ENGLISH, new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC));

  private final Map<Channel, Double> readings = new HashMap<>();
  private PullList day = PullList.begin(PLAN);
  private int second;

  /** Some seconds at a load, as warm as was said last. */
  private PullStep drive(int seconds, double kilowatts) {
    for (int i = 0; i < seconds; i++) {
      second++;
      day = day.after(new PullSecond(second, readings, OptionalDouble.of(kilowatts)));
    }
    return day.step();
  }

  private PullStep warmedUp(double chargeCoolant) {
    readings.put(Channels.ENGINE_COOLANT_TEMP, 88.0);
    readings.put(Channels.CHARGE_COOLANT_TEMP, chargeCoolant);
    return drive(70, 10);
  }

  private void pull(double endsAt) {
    drive(65, 110);
    readings.put(Channels.CHARGE_COOLANT_TEMP, endsAt);
    drive(10, 5);
  }

  @Test
  void aColdEngineIsWarmedUpFirst() {
    readings.put(Channels.ENGINE_COOLANT_TEMP, 40.0);
    readings.put(Channels.CHARGE_COOLANT_TEMP, 20.0);

    assertThat(drive(100, 20)).isEqualTo(new PullStep.WarmUp(OptionalDouble.of(40)));
    assertThat(ENGLISH.say(day.step())).endsWith("Coolant 40°.");
    assertThat(warmedUp(30)).isInstanceOf(PullStep.Pull.class);
    assertThat(ENGLISH.say(day.step())).isEqualTo("Pull now, at a load that you can hold again.");
  }

  @Test
  void aVehicleThatNeverTellsItsCoolantIsNotWaitedForForEver() {
    readings.put(Channels.CHARGE_COOLANT_TEMP, 30.0);

    assertThat(drive(30, 10)).isEqualTo(new PullStep.WarmUp(OptionalDouble.empty()));
    assertThat(drive(40, 10)).isInstanceOf(PullStep.Pull.class);
  }

  @Test
  void aPullIsCountedDownAndEnded() {
    warmedUp(30);

    assertThat(drive(20, 110))
        .isEqualTo(
            new PullStep.Hold(
                new PullStep.Place(Side.BEFORE, 1, 2), 40, 110, OptionalDouble.empty()));
    assertThat(drive(41, 110))
        .isEqualTo(new PullStep.EaseOff(new PullStep.Place(Side.BEFORE, 1, 2)));
  }

  /** Issue 7's own words: "wait, charge coolant still 9 degC above the last start". */
  @Test
  void afterAPullItWaitsForTheSameStart() {
    warmedUp(30);
    pull(39);

    assertThat(ENGLISH.say(day.step()))
        .isEqualTo("Wait: charge coolant is still 9° above the first start.");
    readings.put(Channels.CHARGE_COOLANT_TEMP, 32.5);
    assertThat(drive(1, 5)).isInstanceOf(PullStep.Cool.class);
    readings.put(Channels.CHARGE_COOLANT_TEMP, 32.0);
    assertThat(drive(1, 5)).isInstanceOf(PullStep.Pull.class);
    assertThat(ENGLISH.say(day.step()))
        .isEqualTo("Pull now: number 2 of 2, at 110 kW as the first.");
  }

  @Test
  void aCircuitThatCooledTooFarIsWarmed() {
    warmedUp(30);
    pull(26);

    assertThat(day.step())
        .isEqualTo(
            new PullStep.Warm(
                new PullStep.Place(Side.BEFORE, 2, 2), Channels.CHARGE_COOLANT_TEMP, 4));
  }

  /** Outside air that warmed by 3 K since the morning takes the starts with it. */
  @Test
  void startsCountAboveOutsideAir() {
    readings.put(Channels.AMBIENT_AIR_TEMP, 20.0);
    warmedUp(30);
    pull(33);
    assertThat(day.step()).isInstanceOf(PullStep.Cool.class);

    readings.put(Channels.AMBIENT_AIR_TEMP, 23.0);

    assertThat(drive(1, 5)).isInstanceOf(PullStep.Pull.class);
  }

  @Test
  void aPullThatEndedTooSoonIsDrivenAgain() {
    warmedUp(30);
    drive(40, 110);
    drive(10, 5);

    assertThat(day.step())
        .isInstanceOfSatisfying(
            PullStep.Pull.class,
            step -> {
              assertThat(step.place().number()).isEqualTo(1);
              assertThat(step.kilowatts()).as("it does not set the load").isEmpty();
            });
    assertThat(ENGLISH.say(day.step()))
        .startsWith("That pull lasted 40 s, 60 s are needed: once more. Pull now");
  }

  @Test
  void aPullAtAnotherLoadIsDrivenAgain() {
    warmedUp(30);
    pull(31);
    drive(65, 90);
    drive(10, 5);

    assertThat(ENGLISH.say(day.step()))
        .isEqualTo(
            "That pull had 90 kW, the first 110 kW: once more. Pull now: number 2 of 2, at 110 kW"
                + " as the first.");
  }

  @Test
  void aGearChangeDoesNotEndAPull() {
    warmedUp(30);
    drive(30, 110);
    drive(3, 5);

    assertThat(drive(10, 110)).isInstanceOf(PullStep.Hold.class);
    drive(30, 110);
    drive(10, 5);
    assertThat(((PullStep.Pull) day.step()).place().number()).isEqualTo(2);
  }

  @Test
  void aPullBeforeItIsTimeDoesNotCount() {
    warmedUp(30);
    pull(39);
    drive(65, 110);
    drive(10, 5);

    assertThat(((PullStep.Cool) day.step()).place().number()).isEqualTo(2);
  }

  @Test
  void aSilentChannelIsWaitedFor() {
    warmedUp(30);
    pull(31);
    readings.remove(Channels.CHARGE_COOLANT_TEMP);

    assertThat(drive(1, 5)).isInstanceOf(PullStep.Silent.class);
  }

  @Test
  void theChangeComesBetweenTheGroupsAndTheDayEnds() {
    warmedUp(30);
    pull(31);
    pull(31);
    assertThat(day.step()).isEqualTo(new PullStep.Change(Side.AFTER));
    assertThat(drive(600, 110)).as("a drive home").isEqualTo(new PullStep.Change(Side.AFTER));

    day = day.changed();
    assertThat(day.step()).as("warm up again").isInstanceOf(PullStep.WarmUp.class);
    warmedUp(30);
    pull(31);
    pull(31);

    assertThat(day.step()).isEqualTo(new PullStep.Done(4));
    assertThat(drive(100, 110)).isEqualTo(new PullStep.Done(4));
  }

  @Test
  void aStateIsAValueThatLaterOnesDoNotChange() {
    warmedUp(30);
    PullList before = day;
    pull(39);

    assertThat(before.step()).isInstanceOf(PullStep.Pull.class);
    assertThat(before.changed()).isSameAs(before);
  }

  /**
   * A plant whose driver does what is told: at the end every pull is found as a run, and all began
   * alike.
   */
  @Test
  void aDayThatWasLedGivesRunsThatCanBeCompared() {
    PullFeed feed = new PullFeed(PullPlan.of(Channels.CHARGE_AIR_TEMP_OUT));
    PlantTrip trip = PlantTrip.onRollers(17);
    int fed = 0;
    PullStep step = feed.step();
    while (!(step instanceof PullStep.Done) && trip.seconds() < 20_000) {
      trip.rollers(1, obeyed(step));
      List<Sample> samples = trip.samplesFrom(fed);
      fed += samples.size();
      for (Sample sample : samples) {
        step = feed.accept(sample);
      }
      step = step instanceof PullStep.Change ? feed.changed() : step;
    }
    trip.rollers(30, 0.1);
    TripSeconds day = trip.read("day");

    RunSet set =
        RunFinding.of(List.of(PlantTrip.before(day)), Channels.CHARGE_AIR_TEMP_OUT, Job.NONE);

    assertThat(step).isEqualTo(new PullStep.Done(6));
    assertThat(set.runs()).hasSize(6);
    assertThat(set.caveats()).noneMatch(words -> words.startsWith("Starts differ"));
    assertThat(set.runs())
        .allSatisfy(run -> assertThat((double) run.loadSeconds()).isCloseTo(90, within(6.0)));
  }

  private static double obeyed(PullStep step) {
    return switch (step) {
      case PullStep.Pull _, PullStep.Hold _ -> 0.85;
      case PullStep.Warm _ -> 0.3;
      case PullStep.WarmUp _,
          PullStep.Cool _,
          PullStep.Silent _,
          PullStep.EaseOff _,
          PullStep.Change _,
          PullStep.Done _ ->
          0.1;
    };
  }

  @Test
  void bothLanguagesHaveTheSameKeys() {
    ResourceBundle.Control plain =
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);
    ResourceBundle english = ResourceBundle.getBundle(PullWords.BUNDLE, Locale.ROOT, plain);
    ResourceBundle german = ResourceBundle.getBundle(PullWords.BUNDLE, Locale.GERMAN, plain);

    assertThat(german.keySet()).isEqualTo(english.keySet());
    assertThat(german.getString("done")).isNotEqualTo(english.getString("done"));
  }
}
