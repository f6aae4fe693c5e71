package steadypull.drive;

import java.nio.file.Path;
import java.util.Objects;
import java.util.Optional;

/**
 * The wish to keep the bytes of a drive's dialogue in a file of its own, named after the start of
 * the drive.
 *
 * @param folder where; made if it does not exist
 * @param keepsVin whether the vehicle's identification number is kept too; else it is masked
 */
public record RawCapture(Path folder, boolean keepsVin) {
  public RawCapture {
    Objects.requireNonNull(folder);
  }

  /**
   * What became of it.
   *
   * @param file the file
   * @param trouble why the file ends before the drive did; empty if it does not
   */
  public record Kept(Path file, Optional<String> trouble) {
    public Kept {
      Objects.requireNonNull(file);
      Objects.requireNonNull(trouble);
    }
  }
}
