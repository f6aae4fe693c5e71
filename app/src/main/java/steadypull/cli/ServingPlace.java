package steadypull.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads where a scenario is to be served: {@code pty} or {@code tcp:PORT}. */
final class ServingPlace implements ITypeConverter<String> {
  private static final int LAST_PORT = 65_535;
  private static final String TCP = "tcp:";

  @Override
  public String convert(String text) {
    boolean isPort =
        text.matches(TCP + "\\d{1,5}")
            && Integer.parseInt(text.substring(TCP.length())) <= LAST_PORT;
    if (!isPort && !text.equals("pty")) {
      throw new TypeConversionException(
          "expected pty or tcp:PORT with a port from 0 to %d, found \"%s\""
              .formatted(LAST_PORT, text));
    }
    return text;
  }
}
