package steadypull.ui;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How the platform speaks: spd-say(1) of Speech Dispatcher on Linux, say(1) on macOS, the speech of
 * the system through its shell on Windows (all from memory). Only letters, figures and blanks are
 * passed on, so that nothing in the words is ever a command. Immutable.
 *
 * @param system name of the operating system, as Java tells it
 * @param locale language to speak
 */
record SpeechCommand(String system, Locale locale) {
  private static final String WINDOWS_SCRIPT =
      "& { param($words) Add-Type -AssemblyName System.Speech;"
          + " (New-Object System.Speech.Synthesis.SpeechSynthesizer).Speak($words) }";

  /** The command of this machine. */
  static SpeechCommand ofThisMachine(Locale locale) {
    return new SpeechCommand(System.getProperty("os.name", ""), locale);
  }

  /** The command and its arguments; empty where no such command is known. */
  Optional<List<String>> of(String words) {
    String lower = system.toLowerCase(Locale.ROOT);
    String spoken = plain(words);
    if (lower.contains("linux")) {
      return Optional.of(
          List.of("spd-say", "--wait", "--language", locale.getLanguage(), "--", spoken));
    }
    if (lower.contains("mac")) {
      return Optional.of(List.of("/usr/bin/say", "--", spoken));
    }
    return lower.contains("windows")
        ? Optional.of(
            List.of("powershell", "-NoProfile", "-Command", WINDOWS_SCRIPT, "'" + spoken + "'"))
        : Optional.empty();
  }

  /** Letters, figures and blanks: nothing else is spoken. */
  private static String plain(String words) {
    return words
        .replace("°", " ")
        .replaceAll("[^\\p{L}\\p{N} .,:]", " ")
        .replaceAll("\\s+", " ")
        .strip();
  }
}
