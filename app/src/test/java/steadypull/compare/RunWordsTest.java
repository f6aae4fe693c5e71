package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.ResourceBundle;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/** What runs cannot show is said in the reader's language. */
class RunWordsTest {
  private static final RunWords ENGLISH = new RunWords(Locale.ENGLISH);
  private static final RunWords GERMAN = new RunWords(Locale.GERMAN);

  @Test
  void bothLanguagesHaveTheSameKeysAndPlaces() {
    ResourceBundle english = RunWords.bundle(RunWords.BUNDLE, Locale.ROOT);
    ResourceBundle german = RunWords.bundle(RunWords.BUNDLE, Locale.GERMAN);

    assertThat(german.keySet()).isEqualTo(english.keySet());
    for (String key : english.keySet()) {
      assertThat(places(german.getString(key))).as(key).isEqualTo(places(english.getString(key)));
    }
  }

  private static List<String> places(String text) {
    return Arrays.stream(text.split("(?=\\{)|(?<=\\})", -1))
        .filter(part -> part.startsWith("{"))
        .sorted()
        .toList();
  }

  /** A closed set that grows must find its words. */
  @Test
  void everythingThatIsAskedHasWords() {
    for (Asked asked : Asked.values()) {
      assertThat(ENGLISH.what(asked)).isNotBlank().doesNotContain("{");
      assertThat(ENGLISH.why(asked)).isNotBlank();
    }
    for (PullPower.Basis basis : PullPower.Basis.values()) {
      assertThat(GERMAN.say("basis." + basis.name())).isNotBlank();
    }
    for (Run.Ground ground : Run.Ground.values()) {
      assertThat(GERMAN.say("runs.ground." + ground.name())).isNotBlank();
    }
  }

  @Test
  void aChannelOfTheVehiclesOwnKeepsItsId() {
    assertThat(GERMAN.name(Channels.CHARGE_COOLANT_TEMP)).isEqualTo("Ladeluft-Kühlwasser");
    assertThat(GERMAN.name(new Channel("probe_core_out", "degC"))).isEqualTo("probe_core_out");
  }

  @Test
  void aComparisonSpeaksTheLanguageThatWasAskedFor() {
    TripSeconds pull =
        PlantTrip.onRollers(1).rollers(30, 0.15).rollers(90, 0.85).rollers(60, 0.15).read("pull");
    TripSeconds weak =
        PlantTrip.onRollers(2).rollers(30, 0.15).rollers(90, 0.6).rollers(60, 0.15).read("weak");

    RunSet set =
        RunFinding.of(
            List.of(PlantTrip.before(pull), PlantTrip.after(weak)),
            Channels.CHARGE_AIR_TEMP_OUT,
            Job.NONE,
            Locale.GERMAN);

    assertThat(set.rejected().getFirst().reason()).startsWith("Zog 9");
    assertThat(set.caveats())
        .anyMatch(words -> words.startsWith("Die Läufe nachher hielten nie 5"))
        .anyMatch(words -> words.startsWith("Niemand notierte die Kühlmittelmischung"))
        .noneMatch(words -> words.contains(" the "));
  }
}
