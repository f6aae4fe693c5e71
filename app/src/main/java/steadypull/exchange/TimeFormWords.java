package steadypull.exchange;

import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The words of a mapping for how time is written. Stateless. */
final class TimeFormWords {
  static final String EXAMPLES =
      "seconds, milliseconds, epoch-seconds, epoch-milliseconds, iso-8601 or a pattern such as"
          + " HH:mm:ss.SSS";

  /**
   * RFC 3339, section 5.6, with what ISO 8601 allows besides: a blank for the T, no seconds, no
   * offset, a comma before the fraction.
   */
  private static final DateTimeFormatter ISO =
      new DateTimeFormatterBuilder()
          .parseCaseInsensitive()
          .appendPattern("uuuu-MM-dd['T'][ ]HH:mm[:ss]")
          .appendPattern("[.SSSSSSSSS][.SSSSSSSS][.SSSSSSS][.SSSSSS][.SSSSS][.SSSS][.SSS][.SS][.S]")
          .appendPattern("[,SSSSSSSSS][,SSSSSSSS][,SSSSSSS][,SSSSSS][,SSSSS][,SSSS][,SSS][,SS][,S]")
          .appendPattern("[XXX][XX][X]")
          .toFormatter(Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private TimeFormWords() {}

  /** The form that such a word or pattern means, or empty if it means none. */
  static Optional<TimeForm> of(
      String word, TimeForm.Zero zero, Optional<LocalDate> date, Optional<ZoneId> zone) {
    String plain = word.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    return switch (plain) {
      case "seconds", "s" -> Optional.of(new TimeForm.Counted(6, zero));
      case "milliseconds", "ms" -> Optional.of(new TimeForm.Counted(3, zero));
      case "epoch", "epochs", "epochseconds" ->
          Optional.of(new TimeForm.Counted(6, TimeForm.Zero.EPOCH));
      case "epochms", "epochmilliseconds" ->
          Optional.of(new TimeForm.Counted(3, TimeForm.Zero.EPOCH));
      case "iso8601", "rfc3339" -> Optional.of(new TimeForm.Clock(word, ISO, date, zone));
      default -> pattern(word).map(reader -> new TimeForm.Clock(word, reader, date, zone));
    };
  }

  /** Whether a pattern has hours of 12, but does not tell which half of the day is meant. */
  static boolean lacksHalfOfDay(String pattern) {
    String bare = pattern.replaceAll("'[^']*'", "");
    return (bare.contains("h") || bare.contains("K"))
        && !bare.contains("a")
        && !bare.contains("B")
        && pattern(pattern).isPresent();
  }

  private static Optional<DateTimeFormatter> pattern(String pattern) {
    if (List.of("H", "h", "k", "K").stream().noneMatch(pattern::contains)) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          new DateTimeFormatterBuilder()
              .parseCaseInsensitive()
              .appendPattern(pattern)
              .toFormatter(Locale.ROOT));
    } catch (IllegalArgumentException notAPattern) {
      return Optional.empty();
    }
  }
}
