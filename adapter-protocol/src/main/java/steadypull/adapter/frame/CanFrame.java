package steadypull.adapter.frame;

import java.util.Objects;

/**
 * One classical CAN data frame. Immutable.
 *
 * @param identifier 0 to 7FF, or 0 to 1FFFFFFF if long
 * @param isLong whether the identifier has 29 bits instead of 11
 * @param data up to eight bytes
 */
public record CanFrame(int identifier, boolean isLong, Payload data) {
  /** Classical CAN carries no more (ISO 11898-1). */
  public static final int MOST_BYTES = 8;

  private static final int HIGHEST_SHORT = 0x7FF;
  private static final int HIGHEST_LONG = 0x1FFF_FFFF;

  public CanFrame {
    Objects.requireNonNull(data);
    if (identifier < 0 || identifier > (isLong ? HIGHEST_LONG : HIGHEST_SHORT)) {
      throw new IllegalArgumentException(
          "A CAN identifier has %d bits, found %X".formatted(isLong ? 29 : 11, identifier));
    }
    if (data.size() > MOST_BYTES) {
      throw new IllegalArgumentException(
          "A CAN frame has up to 8 data bytes, found " + data.size());
    }
  }
}
