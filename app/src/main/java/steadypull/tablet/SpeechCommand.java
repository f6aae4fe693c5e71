package steadypull.tablet;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * How the platform speaks: spd-say(1) of Speech Dispatcher on Linux, say(1) on macOS, the speech of
 * the system through its shell on Windows (all from memory). Only letters, figures and blanks are
 * passed on, so that nothing in the words is ever a command. Immutable.
 *
 * @param system name of the operating system, as Java tells it
 * @param locale language to speak
 */
public record SpeechCommand(String system, Locale locale) {
  private static final long LONGEST_SPEECH_SECONDS = 10;

  private static final String WINDOWS_SCRIPT =
      "& { param($words) Add-Type -AssemblyName System.Speech;"
          + " (New-Object System.Speech.Synthesis.SpeechSynthesizer).Speak($words) }";

  /** The command of this machine. */
  public static SpeechCommand ofThisMachine(Locale locale) {
    return new SpeechCommand(System.getProperty("os.name", ""), locale);
  }

  /** The command and its arguments; empty where no such command is known. */
  public Optional<List<String>> of(String words) {
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

  /**
   * Speaks, and waits until it is spoken, 10 s at most. Where the platform knows no speech, or has
   * it not installed, nothing is heard.
   */
  public void speak(String words) {
    of(words).ifPresent(SpeechCommand::run);
  }

  private static void run(List<String> command) {
    try {
      Process child =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start();
      if (!child.waitFor(LONGEST_SPEECH_SECONDS, TimeUnit.SECONDS)) {
        child.destroy();
      }
    } catch (IOException absent) {
      // There is no such command: the tone was heard, and the screen says the rest.
      return;
    } catch (InterruptedException ending) {
      Thread.currentThread().interrupt();
    }
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
