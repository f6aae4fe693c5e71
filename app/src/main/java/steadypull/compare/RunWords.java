package steadypull.compare;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;
import steadypull.channel.Channel;

/** Says what runs can and cannot show, in the reader's language; units are SI. Immutable. */
public final class RunWords {
  static final String BUNDLE = "steadypull.compare.RunWords";

  private final ResourceBundle bundle;
  private final Locale locale;

  /** Words for one reader. */
  public RunWords(Locale locale) {
    this.bundle = bundle(BUNDLE, locale);
    this.locale = locale;
  }

  static ResourceBundle bundle(String name, Locale locale) {
    return ResourceBundle.getBundle(
        name,
        locale,
        ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** What is asked for, to be put into a sentence: "the wind". */
  public String what(Asked asked) {
    return say("what." + asked.id());
  }

  /** What it costs not to know, to be put behind a colon. */
  public String why(Asked asked) {
    return say("why." + asked.id());
  }

  /** A channel as people call it; its id if it has no other name. */
  public String name(Channel channel) {
    String key = "name." + channel.id();
    return bundle.containsKey(key) ? bundle.getString(key) : channel.id();
  }

  /** A number with so many digits after the point. */
  String number(double value, int digits) {
    return String.format(locale, "%." + digits + "f", value);
  }

  /** Whole kW. */
  String power(double kilowatts) {
    return number(kilowatts, 0) + " kW";
  }

  /**
   * A sentence.
   *
   * @param arguments texts; a number becomes its shortest whole form
   */
  String say(String key, Object... arguments) {
    Object[] texts = new Object[arguments.length];
    for (int i = 0; i < texts.length; i++) {
      texts[i] = String.valueOf(arguments[i]);
    }
    return new MessageFormat(bundle.getString(key), locale).format(texts);
  }
}
