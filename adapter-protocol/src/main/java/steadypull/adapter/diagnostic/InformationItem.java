package steadypull.adapter.diagnostic;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import steadypull.adapter.frame.Payload;

/**
 * Items of service 09 that tell about a control unit, each a number of fields of one width (SAE
 * J1979 appendix G; widths as in ISO 15031-5, from memory).
 */
public enum InformationItem {
  /** Which software and data it works with; 16 characters each. */
  CALIBRATIONS(0x04, 16),
  /** Check values of them; 4 bytes each, told as hex. */
  VERIFICATION_NUMBERS(0x06, 4),
  /** What it is called; 20 characters. */
  NAME(0x0A, 20);

  private static final int POSITIVE = 0x49;
  private static final int COUNT_AT = 2;
  private static final int DATA_AT = 3;

  private final int number;
  private final int width;

  InformationItem(int number, int width) {
    this.number = number;
    this.width = width;
  }

  /** The whole request, hex. */
  public String request() {
    return "09%02X".formatted(number);
  }

  /**
   * Puts the fields together.
   *
   * @param isCan on CAN one message carries all after a count of fields; on older buses numbered
   *     messages carry four bytes each
   * @param messages what one control unit said, in any order
   * @return the fields as printable text; empty if the messages are not a whole answer to this
   */
  public List<String> read(boolean isCan, List<Payload> messages) {
    List<Payload> parts =
        messages.stream()
            .filter(each -> each.size() > DATA_AT && each.startsWith(POSITIVE, number))
            .sorted(Comparator.comparingInt(each -> each.at(COUNT_AT)))
            .toList();
    return (isCan ? counted(parts) : numbered(parts)).map(this::fields).orElse(List.of());
  }

  private Optional<Payload> counted(List<Payload> parts) {
    return parts.stream()
        .filter(each -> each.size() == DATA_AT + each.at(COUNT_AT) * width)
        .map(each -> each.from(DATA_AT))
        .findFirst();
  }

  /** Messages 1, 2, 3 and so on without a gap. */
  private Optional<Payload> numbered(List<Payload> parts) {
    boolean isGapless =
        IntStream.range(0, parts.size()).allMatch(i -> parts.get(i).at(COUNT_AT) == i + 1);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    parts.forEach(each -> bytes.writeBytes(each.from(DATA_AT).toBytes()));
    Payload whole = Payload.of(bytes.toByteArray());
    return isGapless && whole.size() > 0 && whole.size() % width == 0
        ? Optional.of(whole)
        : Optional.empty();
  }

  private List<String> fields(Payload whole) {
    return IntStream.range(0, whole.size() / width)
        .mapToObj(i -> whole.slice(i * width, (i + 1) * width))
        .map(this == VERIFICATION_NUMBERS ? Payload::toString : InformationItem::text)
        .filter(field -> !field.isEmpty())
        .toList();
  }

  /** Filler and what cannot be printed becomes a blank. */
  private static String text(Payload field) {
    return new String(field.toBytes(), StandardCharsets.US_ASCII)
        .replaceAll("[^ -~]+", " ")
        .strip();
  }
}
