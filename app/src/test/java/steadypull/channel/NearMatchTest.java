package steadypull.channel;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearMatchTest {
  private static final List<String> HEADERS = Channels.all().stream().map(Channel::header).toList();

  @Test
  void aSlipOfThePenIsRecognised() {
    assertThat(NearMatch.of("engin_coolant_temp[degC]", HEADERS))
        .first()
        .isEqualTo("engine_coolant_temp[degC]");
    assertThat(NearMatch.of("vehicel_speed", HEADERS)).first().isEqualTo("vehicle_speed[km/h]");
    assertThat(NearMatch.of("limts", List.of("name", "limits", "layout")))
        .containsExactly("limits");
  }

  @Test
  void wordsOfTheTradeAreRecognisedInAnyForm() {
    assertThat(NearMatch.of("Coolant Temp", HEADERS))
        .startsWith("engine_coolant_temp[degC]", "charge_coolant_temp[degC]");
    assertThat(NearMatch.of("Engine RPM", HEADERS))
        .isNotEmpty()
        .allMatch(header -> header.startsWith("engine_"));
  }

  @Test
  void atMostThreeAreNamedAndNoneWhenNoneIsNear() {
    assertThat(NearMatch.of("temp", HEADERS)).hasSize(3);
    assertThat(NearMatch.of("xyzzy plugh", HEADERS)).isEmpty();
    assertThat(NearMatch.question("xyzzy plugh", HEADERS)).isEmpty();
    assertThat(NearMatch.question("limts", List.of("limits"))).isEqualTo(" Did you mean limits?");
  }

  @Test
  void aHugeWordCostsNothing() {
    assertThat(NearMatch.of("x".repeat(10_000_000), HEADERS)).isEmpty();
  }
}
