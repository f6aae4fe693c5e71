package steadypull.advice;

import static org.assertj.core.api.Assertions.assertThat;
import static steadypull.channel.Channels.CHARGE_AIR_TEMP_OUT;
import static steadypull.channel.Channels.ENGINE_COOLANT_TEMP;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Keys and their order are those of the contract on the advise command. */
class AdviceJsonTest {

  @Test
  void anAdvisoryHasItsKeysInOrder() {
    AdviceEvent event =
        new AdviceEvent(
            812_000_000,
            AdviceEvent.Kind.RAISED,
            Optional.of("charge-air-near-limit"),
            Optional.of(Level.CAUTION),
            Optional.of(CHARGE_AIR_TEMP_OUT),
            OptionalDouble.of(78),
            OptionalDouble.of(85),
            OptionalDouble.of(0.93),
            OptionalDouble.of(74.04),
            OptionalDouble.of(41),
            OptionalDouble.of(140),
            OptionalDouble.of(91.25),
            "Let speed fall to 75");
    assertThat(AdviceJson.event(event))
        .isEqualTo(
            """
            {"time_s":812.0,"event":"raised","rule":"charge-air-near-limit","level":"caution",\
            "channel":"charge_air_temp_out","value":78.0,"limit":85.0,"probability_180s":0.93,\
            "seconds_to_limit":74.0,"seconds_to_limit_p10":41.0,"seconds_to_limit_p90":140.0,\
            "settles_at":91.3,"text":"Let speed fall to 75"}\
            """);
  }

  @Test
  void whatIsNeverIsAbsent() {
    Story story = new Story();
    story.lasts(10, new SituationDraft().may(CHARGE_AIR_TEMP_OUT, 90, 105, 0.0625));
    assertThat(AdviceJson.event(story.told.getFirst()))
        .contains("\"probability_180s\":0.063")
        .contains("\"settles_at\":103.0")
        .doesNotContain("seconds_to_limit");
  }

  @Test
  void certaintyIsWrittenWithTwoDecimals() {
    Story story = new Story();
    story.lasts(10, new SituationDraft().nearing(ENGINE_COOLANT_TEMP, 114, 112, 1, 0));
    assertThat(AdviceJson.event(story.told.getFirst()))
        .contains("\"probability_180s\":1.00,\"seconds_to_limit\":0.0,");
  }

  @Test
  void forecastsHaveFiveHorizonsAndTheChannelsThatCanBeTold() {
    Situation situation =
        new SituationDraft()
            .calm(CHARGE_AIR_TEMP_OUT, 90, 105)
            .learning(ENGINE_COOLANT_TEMP)
            .at(30);
    assertThat(AdviceJson.forecast(situation.forecast()))
        .hasSize(5)
        .first()
        .isEqualTo(
            """
            {"time_s":30.0,"event":"forecast","channel":"charge_air_temp_out","horizon_s":30,\
            "p05":88.5,"p10":89.0,"p50":90.0,"p90":91.0,"p95":91.5}\
            """);
  }

  @Test
  void theEndHasItsTimeOnly() {
    assertThat(AdviceJson.end(1_234_560_000)).isEqualTo("{\"time_s\":1234.6,\"event\":\"end\"}");
  }
}
