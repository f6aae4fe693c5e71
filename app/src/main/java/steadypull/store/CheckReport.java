package steadypull.store;

import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What checking a library found. Immutable.
 *
 * @param isDamaged whether anything is not as it was written
 * @param isReadable whether anything of a trip library could be read
 * @param trips how many trips there are, whole or in part
 * @param findings what was found, in words; empty if nothing is damaged
 * @param lostParts samples that cannot be read any more
 * @param losses what else is lost, in words
 * @param doubt what else may be missing though nobody can tell, in words; empty if it is proven
 *     that nothing else is
 * @param salvaged folder of the new library with everything that could be read; empty if nothing is
 *     damaged, nothing could be read or nothing was to be written
 */
public record CheckReport(
    boolean isDamaged,
    boolean isReadable,
    int trips,
    List<String> findings,
    List<LostPart> lostParts,
    List<String> losses,
    Optional<String> doubt,
    Optional<Path> salvaged) {
  public CheckReport {
    findings = List.copyOf(findings);
    lostParts = List.copyOf(lostParts);
    losses = List.copyOf(losses);
    Objects.requireNonNull(doubt);
    Objects.requireNonNull(salvaged);
  }

  static CheckReport ok(int trips) {
    return new CheckReport(
        false, true, trips, List.of(), List.of(), List.of(), Optional.empty(), Optional.empty());
  }
}
