package steadypull.ui;

import steadypull.advice.Level;

/**
 * The tones of the levels, computed: two soft notes that fall for a caution, four short high ones
 * with an overtone for a warning. Between 400 and 3000 Hz, where cab noise and age leave most to
 * hear (ISO 15006:2011, 4.1.2; ISO 7731, from memory); faster, higher and with more harmonics is
 * more urgent (Edworthy and Patterson, from memory). Stateless.
 */
final class SignalTone {
  /** Samples a second. */
  static final int RATE = 22_050;

  private static final double CAUTION_FIRST_HERTZ = 784;
  private static final double CAUTION_SECOND_HERTZ = 587;
  private static final double CAUTION_NOTE_SECONDS = 0.22;
  private static final double CAUTION_GAP_SECONDS = 0.06;

  private static final double WARNING_HERTZ = 988;
  private static final double WARNING_OVERTONE_SHARE = 0.35;
  private static final int WARNING_NOTES = 4;
  private static final double WARNING_NOTE_SECONDS = 0.12;
  private static final double WARNING_GAP_SECONDS = 0.07;

  /** A note swells and fades for so long, or its edges would click. */
  private static final double EDGE_SECONDS = 0.012;

  private SignalTone() {}

  /**
   * One tone, signed 16 bit, mono.
   *
   * @param volume 0 to 1
   * @return empty for a notice, which has no sound
   */
  static short[] of(Level level, double volume) {
    return switch (level) {
      case NOTICE -> new short[0];
      case CAUTION -> caution(volume);
      case WARNING -> warning(volume);
    };
  }

  private static short[] caution(double volume) {
    short[] tone = new short[count(2 * CAUTION_NOTE_SECONDS + CAUTION_GAP_SECONDS)];
    note(tone, 0, CAUTION_NOTE_SECONDS, CAUTION_FIRST_HERTZ, 0, volume);
    double second = CAUTION_NOTE_SECONDS + CAUTION_GAP_SECONDS;
    note(tone, second, CAUTION_NOTE_SECONDS, CAUTION_SECOND_HERTZ, 0, volume);
    return tone;
  }

  private static short[] warning(double volume) {
    double step = WARNING_NOTE_SECONDS + WARNING_GAP_SECONDS;
    short[] tone = new short[count(WARNING_NOTES * step)];
    for (int i = 0; i < WARNING_NOTES; i++) {
      note(tone, i * step, WARNING_NOTE_SECONDS, WARNING_HERTZ, WARNING_OVERTONE_SHARE, volume);
    }
    return tone;
  }

  private static void note(
      short[] tone, double from, double seconds, double hertz, double overtone, double volume) {
    int first = count(from);
    int length = count(seconds);
    for (int i = 0; i < length && first + i < tone.length; i++) {
      double time = (double) i / RATE;
      double edge = Math.min(1, Math.min(time, seconds - time) / EDGE_SECONDS);
      double wave =
          (1 - overtone) * Math.sin(2 * Math.PI * hertz * time)
              + overtone * Math.sin(2 * Math.PI * 3 * hertz * time);
      double swell = Math.sin(Math.PI / 2 * Math.max(0, edge));
      tone[first + i] = (short) Math.round(Short.MAX_VALUE * volume * swell * swell * wave);
    }
  }

  private static int count(double seconds) {
    return (int) Math.round(seconds * RATE);
  }
}
