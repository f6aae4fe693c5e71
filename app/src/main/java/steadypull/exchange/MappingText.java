package steadypull.exchange;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;

/**
 * A mapping as somebody wrote it.
 *
 * @param name what messages call it, such as its file
 * @param toml its text
 * @param isOfThisFile whether it was given for this very file; one that was kept from an earlier
 *     file tells nothing of the day
 */
public record MappingText(String name, String toml, boolean isOfThisFile) {
  /** No mapping comes near; more is not one. */
  private static final long MOST_BYTES = 1_000_000;

  public MappingText {
    Objects.requireNonNull(name);
    Objects.requireNonNull(toml);
  }

  /** Reads a mapping for files that are given with it. */
  public static MappingText read(Path file) throws TableException {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw unreadable(file, "more than " + MOST_BYTES + " bytes");
      }
      return new MappingText(CellPlace.shown(file), Files.readString(file), true);
    } catch (CharacterCodingException e) {
      throw unreadable(file, "bytes that are not UTF-8");
    } catch (IOException e) {
      throw unreadable(file, FileFault.whileReading(e));
    }
  }

  private static TableException unreadable(Path file, String found) {
    return new TableException(
        "Could not read the mapping %s: expected TOML in UTF-8, found %s. Nothing was taken; check the path."
            .formatted(CellPlace.shown(file), found));
  }

  TableMapping mapping() throws TableException {
    TableMapping mapping = TableMapping.parse(toml, name);
    return isOfThisFile ? mapping : mapping.withoutDay();
  }
}
