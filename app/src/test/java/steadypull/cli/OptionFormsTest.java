package steadypull.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine.TypeConversionException;
import steadypull.channel.Channels;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.SpeedRange;

class OptionFormsTest {

  @ParameterizedTest
  @CsvSource({"90s,90", "15m,900", "2h,7200"})
  void durationsAreSecondsMinutesOrHours(String text, long seconds) {
    assertThat(new Span().convert(text)).isEqualTo(Duration.ofSeconds(seconds));
  }

  @ParameterizedTest
  @ValueSource(strings = {"90", "m", "1.5h", "-5s", "90 s", "", "5d"})
  void otherDurationsAreRefusedWithAnExample(String text) {
    assertThatThrownBy(() -> new Span().convert(text))
        .isInstanceOf(TypeConversionException.class)
        .hasMessageContaining("15m")
        .hasMessageContaining("\"" + text + "\"");
  }

  @Test
  void aLimitWithoutASourceIsTheOwners() {
    assertThat(new LimitOption().convert("charge_air_temp_out=98.5"))
        .isEqualTo(
            new Limit(
                Channels.CHARGE_AIR_TEMP_OUT, 98.5, new Provenance(Provenance.Kind.OWNER, "")));
  }

  @ParameterizedTest
  @CsvSource({
    "maker,MAKER,''",
    "workshop,WORKSHOP,''",
    "'Maker, handbook p. 12',MAKER,'handbook p. 12'",
    "my own nose,OWNER,my own nose"
  })
  void theSourceOfALimitSaysWhoGaveIt(String source, Provenance.Kind kind, String note) {
    assertThat(new LimitOption().convert("engine_oil_temp=125:" + source).provenance())
        .isEqualTo(new Provenance(kind, note));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "engine_speed=3000",
        "warp_core=900",
        "engine_oil_temp",
        "=5",
        "engine_oil_temp=hot",
        "engine_oil_temp=99999"
      })
  void whatIsNoLimitIsRefused(String text) {
    assertThatThrownBy(() -> new LimitOption().convert(text))
        .isInstanceOf(TypeConversionException.class)
        .hasMessageMatching("expected .+, found \".+\"");
  }

  @Test
  void advisableSpeedsAreARange() {
    assertThat(new SpeedRangeOption().convert("55..85")).isEqualTo(new SpeedRange(55, 85));
  }

  @ParameterizedTest
  @ValueSource(strings = {"85..55", "60", "60-90", "5..90"})
  void otherSpeedRangesAreRefused(String text) {
    assertThatThrownBy(() -> new SpeedRangeOption().convert(text))
        .isInstanceOf(TypeConversionException.class)
        .hasMessageMatching("expected .+, found \".+\"");
  }
}
