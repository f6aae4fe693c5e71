package steadypull.store;

import java.nio.file.Path;
import java.util.Objects;

/**
 * A copy that was made of a library. Immutable.
 *
 * @param file one single file
 * @param octets its size
 * @param trips how many trips it holds, one that is still recorded among them
 * @param samples how many samples
 */
public record Backup(Path file, long octets, int trips, long samples) {
  public Backup {
    Objects.requireNonNull(file);
  }
}
