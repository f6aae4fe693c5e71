package steadypull.cli;

import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;

/**
 * Reads a limit as the commands write it: {@code id=value[:source]}. A source that begins with
 * maker, workshop or owner says who gave the figure; anything else is the owner's own note. That a
 * figure was learnt nobody can say by hand.
 */
final class LimitOption implements ITypeConverter<Limit> {
  private static final Pattern FORM =
      Pattern.compile("([a-z][a-z0-9_]*)=(-?\\d+(?:\\.\\d+)?)(?::(.*))?");

  private static final List<Provenance.Kind> SAID =
      List.of(Provenance.Kind.MAKER, Provenance.Kind.WORKSHOP, Provenance.Kind.OWNER);

  @Override
  public Limit convert(String text) {
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw new TypeConversionException(
          "expected id=value or id=value:source, such as charge_air_temp_out=105:maker, found \""
              + text
              + "\"");
    }
    String source = matcher.group(3);
    try {
      return new Limit(
          channel(matcher.group(1)),
          Double.parseDouble(matcher.group(2)),
          provenance(source == null ? "" : source.strip()));
    } catch (IllegalArgumentException outOfRange) {
      throw new TypeConversionException(
          "expected a limit from -40 to 1200 degC, found \"" + text + "\"");
    }
  }

  private static Channel channel(String id) {
    return Channels.find(id)
        .filter(known -> known.unit().equals("degC"))
        .orElseThrow(
            () ->
                new TypeConversionException(
                    "expected the id of a temperature channel such as charge_air_temp_out, found \""
                        + id
                        + "\""));
  }

  /** Whose words a source is. */
  static Provenance provenance(String source) {
    for (Provenance.Kind kind : SAID) {
      String word = kind.name().toLowerCase(Locale.ROOT);
      if (source.toLowerCase(Locale.ROOT).startsWith(word)) {
        return new Provenance(
            kind, source.substring(word.length()).replaceFirst("^[\\s,;:-]+", ""));
      }
    }
    return new Provenance(Provenance.Kind.OWNER, source);
  }
}
