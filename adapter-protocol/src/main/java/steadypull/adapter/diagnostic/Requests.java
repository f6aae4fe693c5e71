package steadypull.adapter.diagnostic;

import java.util.Collection;
import java.util.HexFormat;
import java.util.stream.Collectors;

/** Requests as hex text. Stateless. */
public final class Requests {
  /** SAE J1979 service 09, item 02. */
  public static final String VEHICLE_IDENTIFICATION_NUMBER = "0902";

  /** Parameters that fit one request on CAN (SAE J1979: up to six). */
  public static final int MOST_PARAMETERS = 6;

  private static final HexFormat HEX = HexFormat.of().withUpperCase();

  private Requests() {}

  /**
   * Asks for current data.
   *
   * @param parameters one to six numbers from 0 to 0xFF
   */
  public static String currentData(Collection<Integer> parameters) {
    if (parameters.isEmpty() || parameters.size() > MOST_PARAMETERS) {
      throw new IllegalArgumentException(
          "A request asks for 1 to 6 parameters, found " + parameters.size());
    }
    return parameters.stream()
        .map(parameter -> HEX.toHexDigits((byte) (int) parameter))
        .collect(Collectors.joining("", "01", ""));
  }

  /** Asks for a data identifier, 0 to 0xFFFF. */
  public static String identifier(int identifier) {
    return "22" + HEX.toHexDigits((short) identifier);
  }
}
