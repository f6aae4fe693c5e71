package steadypull.adapter.link;

import java.nio.charset.StandardCharsets;
import java.util.HexFormat;

/** Something other than a reading request was about to go to the vehicle; nothing was sent. */
public final class RefusedRequestException extends IllegalArgumentException {
  private static final long serialVersionUID = 1L;

  private final String line;

  RefusedRequestException(String line) {
    super(
        "Refused to send \""
            + printable(line)
            + "\": expected a request that only reads (services 01 02 03 07 09 0A 22 or a listed"
            + " adapter command). Nothing was sent.");
    this.line = line;
  }

  /** The refused line as it was handed in. */
  public String line() {
    return line;
  }

  private static String printable(String line) {
    boolean isPlain = line.chars().allMatch(c -> c >= ' ' && c <= '~');
    return isPlain
        ? line
        : "hex " + HexFormat.of().formatHex(line.getBytes(StandardCharsets.ISO_8859_1));
  }
}
