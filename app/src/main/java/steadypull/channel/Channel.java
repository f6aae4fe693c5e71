package steadypull.channel;

import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One measured or derived quantity of a trip. Two channels are the same if id and unit are.
 *
 * @param id lower-case words of the trade joined by {@code _}, such as {@code engine_coolant_temp}
 * @param unit unit as printed in tables, such as {@code degC}; not empty, no brackets
 */
public record Channel(String id, String unit) implements Comparable<Channel> {
  private static final Pattern ID = Pattern.compile("[a-z][a-z0-9_]*");
  private static final Pattern UNIT = Pattern.compile("[^\\[\\]\\p{Cntrl}]+");

  private static final Pattern HEADER =
      Pattern.compile("(" + ID.pattern() + ")\\[(" + UNIT.pattern() + ")\\]");

  public Channel {
    Objects.requireNonNull(id);
    Objects.requireNonNull(unit);
    if (!ID.matcher(id).matches()) {
      throw new IllegalArgumentException(
          "A channel id is lower-case words joined by _, found \"" + id + "\"");
    }
    if (!UNIT.matcher(unit).matches()) {
      throw new IllegalArgumentException("A unit is text without brackets, found \"" + unit + "\"");
    }
  }

  /** The channel that a column header names, or empty if it has not the form {@code id[unit]}. */
  public static Optional<Channel> ofHeader(String header) {
    Matcher matcher = HEADER.matcher(header);
    return matcher.matches()
        ? Optional.of(new Channel(matcher.group(1), matcher.group(2)))
        : Optional.empty();
  }

  /** The column header of a trip table: {@code id[unit]}. */
  public String header() {
    return id + "[" + unit + "]";
  }

  @Override
  public int compareTo(Channel other) {
    int byId = id.compareTo(other.id);
    return byId != 0 ? byId : unit.compareTo(other.unit);
  }
}
