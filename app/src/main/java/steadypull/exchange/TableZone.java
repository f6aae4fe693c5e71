package steadypull.exchange;

import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;

/**
 * Where the clock of a table was, if the table itself does not tell.
 *
 * @param said what somebody said of this table; stands before what a mapping says
 * @param here where the table is read; taken if nobody says, and told
 */
public record TableZone(Optional<ZoneId> said, ZoneId here) {
  public TableZone {
    Objects.requireNonNull(said);
    Objects.requireNonNull(here);
  }

  /** Nobody said; it is read here. */
  public static TableZone here(ZoneId here) {
    return new TableZone(Optional.empty(), here);
  }
}
