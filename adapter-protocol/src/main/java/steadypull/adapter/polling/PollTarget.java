package steadypull.adapter.polling;

import java.util.Objects;

/** One thing to be asked for again and again. A closed set; equal by value. */
public sealed interface PollTarget {

  /**
   * A service 01 parameter.
   *
   * @param number 0 to 0xFF
   */
  record Parameter(int number) implements PollTarget {}

  /**
   * A service 22 data identifier.
   *
   * @param header request header in hex
   * @param identifier 0 to 0xFFFF
   */
  record Identifier(String header, int identifier) implements PollTarget {
    public Identifier {
      Objects.requireNonNull(header);
    }
  }
}
