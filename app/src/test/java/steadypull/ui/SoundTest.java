package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import steadypull.advice.AdviceLine;
import steadypull.advice.AdviceLine.Response;
import steadypull.advice.AdviceLine.State;
import steadypull.advice.Level;
import steadypull.tablet.SpeechCommand;

/** What is heard, when, and how loudly. */
class SoundTest {
  private final Announcer announcer = new Announcer();

  private static AdviceLine line(State state, Response response) {
    return new AdviceLine(
        state, response, "Ease off", "", Optional.empty(), OptionalDouble.empty());
  }

  private Optional<Level> at(double seconds, State state) {
    return announcer.step(Math.round(seconds * 1e6), line(state, new Response.None()));
  }

  @Test
  void aCautionIsHeardOnceWhileItStands() {
    assertThat(at(1, State.HOLDS)).isEmpty();
    assertThat(at(2, State.ADVISE)).contains(Level.CAUTION);
    for (int second = 3; second < 300; second++) {
      assertThat(at(second, State.ADVISE)).isEmpty();
    }
  }

  @Test
  void aNoticeALostLinkAndWhatIsAnsweredAreNotHeard() {
    assertThat(at(1, State.MAY_REACH)).isEmpty();
    assertThat(at(2, State.LINK_LOST)).isEmpty();
    assertThat(at(3, State.CODE_STORED)).isEmpty();
    assertThat(announcer.step(4_000_000, line(State.ADVISE, new Response.Acknowledged(0))))
        .isEmpty();
  }

  @Test
  void aWarningIsHeardAtOnceHoweverLittleTimeHasPassed() {
    at(1, State.ADVISE);
    assertThat(at(2, State.ACT_NOW)).contains(Level.WARNING);
    assertThat(at(3, State.ADVISE)).as("what eases is not news").isEmpty();
  }

  /** What comes and goes is heard once a minute, and what is due meanwhile is not lost. */
  @Test
  void cautionsAreAMinuteApartAndWait() {
    at(1, State.ADVISE);
    at(2, State.HOLDS);
    for (int second = 3; second < 61; second++) {
      assertThat(at(second, State.ADVISE)).isEmpty();
    }
    assertThat(at(61, State.ADVISE)).contains(Level.CAUTION);
  }

  @Test
  void aCautionRightAfterAWarningWaitsTenSeconds() {
    at(1, State.ACT_NOW);
    at(2, State.HOLDS);
    assertThat(at(3, State.ADVISE)).isEmpty();
    assertThat(at(11, State.ADVISE)).contains(Level.CAUTION);
  }

  @ParameterizedTest
  @EnumSource(SoundChoice.class)
  void noChoiceSilencesAWarning(SoundChoice choice) {
    assertThat(choice.volume(Level.WARNING)).isGreaterThanOrEqualTo(0.5);
    assertThat(choice.volume(Level.WARNING)).isGreaterThan(choice.volume(Level.CAUTION));
    assertThat(choice.volume(Level.NOTICE)).isZero();
  }

  /** A tone's strength at a frequency, by Goertzel's sum over the whole of it. */
  private static double strength(short[] tone, double hertz) {
    double real = 0;
    double imaginary = 0;
    for (int i = 0; i < tone.length; i++) {
      double angle = 2 * Math.PI * hertz * i / SignalTone.RATE;
      real += tone[i] * Math.cos(angle);
      imaginary += tone[i] * Math.sin(angle);
    }
    return Math.hypot(real, imaginary) / tone.length;
  }

  @Test
  void theTonesOfTheLevelsAreToldApartByPitchAndPace() {
    short[] caution = SignalTone.of(Level.CAUTION, 1);
    short[] warning = SignalTone.of(Level.WARNING, 1);
    assertThat(strength(caution, 784)).isGreaterThan(10 * strength(caution, 988));
    assertThat(strength(caution, 587)).isGreaterThan(10 * strength(caution, 988));
    assertThat(strength(warning, 988)).isGreaterThan(10 * strength(warning, 784));
    assertThat(strength(warning, 2964)).as("an overtone").isGreaterThan(1000);
    assertThat(notes(caution)).isEqualTo(2);
    assertThat(notes(warning)).isEqualTo(4);
    assertThat(SignalTone.of(Level.NOTICE, 1)).isEmpty();
  }

  /** Stretches of sound between silences of 20 ms or more. */
  private static int notes(short[] tone) {
    int notes = 0;
    int silent = SignalTone.RATE;
    for (short sample : tone) {
      silent = sample == 0 ? silent + 1 : 0;
      if (silent == 0) {
        continue;
      }
      notes += silent == SignalTone.RATE / 50 ? 1 : 0;
    }
    return silent >= SignalTone.RATE / 50 ? notes : notes + 1;
  }

  /** An edge that jumps is heard as a click. */
  @Test
  void tonesSwellAndFadeAndKeepToTheirVolume() {
    short[] loud = SignalTone.of(Level.WARNING, 1);
    short[] soft = SignalTone.of(Level.WARNING, 0.5);
    assertThat(Math.abs(loud[0])).isLessThan((short) 10);
    assertThat(Math.abs(loud[loud.length - 1])).isLessThan((short) 10);
    assertThat(peak(loud)).isBetween(20_000, (int) Short.MAX_VALUE);
    assertThat(peak(soft) * 2).isBetween(peak(loud) - 4, peak(loud) + 4);
  }

  private static int peak(short[] tone) {
    int peak = 0;
    for (short sample : tone) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }

  @Test
  void theWordsAreAnArgumentInWhichNothingCanBeACommand() {
    assertThat(new SpeechCommand("Linux", Locale.GERMAN).of("Tempo auf 75 senken; $(rm) 'x'"))
        .contains(
            List.of("spd-say", "--wait", "--language", "de", "--", "Tempo auf 75 senken rm x"));
    assertThat(new SpeechCommand("Mac OS X", Locale.ENGLISH).of("May reach 105°").orElseThrow())
        .containsExactly("/usr/bin/say", "--", "May reach 105");
    assertThat(new SpeechCommand("Windows 11", Locale.ENGLISH).of("Ease off").orElseThrow())
        .startsWith("powershell", "-NoProfile")
        .endsWith("'Ease off'");
    assertThat(new SpeechCommand("Plan 9", Locale.ENGLISH).of("Ease off")).isEmpty();
  }
}
