package steadypull.compare;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * The answers of a job as a file: TOML, {@code name} and what is {@link Asked}, a table {@code
 * [before]} and {@code [after]} for what differs between the sides, and {@code [[run]]} for single
 * runs. Stateless.
 */
public final class JobFile {
  /** No job comes near; more is another file. */
  private static final long MOST_BYTES = 1_000_000;

  private JobFile() {}

  /** Reads a file. */
  public static Job read(Path file) throws JobException {
    String name = file.toString().replaceAll("\\p{Cntrl}", "?");
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw unreadable(name, "more than " + MOST_BYTES + " bytes", null);
      }
      return parse(Files.readString(file), name);
    } catch (NoSuchFileException e) {
      throw unreadable(name, "no such file", e);
    } catch (CharacterCodingException e) {
      throw unreadable(name, "bytes that are not UTF-8", e);
    } catch (IOException e) {
      throw unreadable(name, "a file that cannot be read", e);
    }
  }

  /**
   * Reads its text.
   *
   * @param name what messages call it
   */
  public static Job parse(String toml, String name) throws JobException {
    return new JobReader(toml, name).job();
  }

  /** Writes the text that {@link #parse} reads as the same job. */
  public static String write(Job job) {
    return JobText.of(job);
  }

  private static JobException unreadable(String name, String found, @Nullable Throwable cause) {
    String words =
        "Could not read the job %s: expected TOML in UTF-8, found %s. Check the path."
            .formatted(name, found);
    return cause == null ? new JobException(words) : new JobException(words, cause);
  }
}
