package steadypull.tablet;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What Windows and macOS answer, as their references have it; all from memory. */
class OtherSystemsTest {
  @ParameterizedTest
  @CsvSource({
    "0, 1, 63, 63, false, true",
    "1, 9, 80, 80, true, false",
    "1, 0, 100, 100, true, false",
    "0, 4, 3, 3, false, true"
  })
  void windowsTellsLineAndLevel(
      int line, int flags, int life, int percent, boolean onCharger, boolean draining) {
    assertThat(windows(line, flags, life))
        .isEqualTo(new Power.Battery(percent, onCharger, draining));
  }

  @Test
  void windowsTellsOfNoBatteryAndOfWhatItDoesNotKnow() {
    assertThat(windows(1, 128, 255)).isEqualTo(new Power.NoBattery());
    assertThat(windows(255, 1, 50)).isEqualTo(new Power.CouldNotTell());
    assertThat(windows(0, 255, 50)).isEqualTo(new Power.CouldNotTell());
    assertThat(windows(0, 1, 255)).isEqualTo(new Power.CouldNotTell());
    assertThat(new WindowsPower(Optional::empty).read()).isEqualTo(new Power.CouldNotTell());
  }

  private static Power windows(int line, int flags, int life) {
    byte[] status = new byte[Kernel32.POWER_STATUS_BYTES];
    status[0] = (byte) line;
    status[1] = (byte) flags;
    status[2] = (byte) life;
    return new WindowsPower(() -> Optional.of(status)).read();
  }

  @Test
  void windowsIsAskedToStayAwakeAndToldWhenItNeedNot() {
    List<Integer> asked = new ArrayList<>();
    Awake awake =
        new WindowsAwake(
                Optional.of(
                    need -> {
                      asked.add(need);
                      return true;
                    }))
            .begin();
    assertThat(awake).isInstanceOf(Awake.Held.class);
    awake.close();

    assertThat(asked).containsExactly(0x80000003, 0x80000000);
  }

  @Test
  void aWindowsThatRefusesIsToldAsNotKeptAwake() {
    assertThat(new WindowsAwake(Optional.of(_ -> false)).begin()).isInstanceOf(Awake.NotHeld.class);
    assertThat(new WindowsAwake(Optional.empty()).begin()).isInstanceOf(Awake.NotHeld.class);
  }

  @Test
  void macTellsSourceLevelAndState() {
    String battery =
        """
        Now drawing from 'Battery Power'
         -InternalBattery-0 (id=4653155)	63%; discharging; 3:12 remaining present: true
        """;
    String charger =
        """
        Now drawing from 'AC Power'
         -InternalBattery-0 (id=4653155)	100%; charged; 0:00 remaining present: true
        """;
    assertThat(MacPower.of(battery)).isEqualTo(new Power.Battery(63, false, true));
    assertThat(MacPower.of(charger)).isEqualTo(new Power.Battery(100, true, false));
    assertThat(MacPower.of("Now drawing from 'AC Power'\n")).isEqualTo(new Power.NoBattery());
    assertThat(MacPower.of("what?")).isEqualTo(new Power.CouldNotTell());
    assertThat(new MacPower(List.of("/nowhere/pmset")).read()).isEqualTo(new Power.CouldNotTell());
  }
}
