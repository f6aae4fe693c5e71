package steadypull.report;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;
import steadypull.channel.Channel;

/** The texts of printed forms in one language. Immutable. */
final class ReportWords {
  private final Locale locale;
  private final ResourceBundle bundle;

  ReportWords(Locale locale) {
    this.locale = locale;
    this.bundle =
        ResourceBundle.getBundle(
            "steadypull.report.ReportWords",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  Locale locale() {
    return locale;
  }

  /** The text of a key with its places filled; numbers come as text, already formatted. */
  String say(String key, String... places) {
    return new MessageFormat(bundle.getString(key), locale).format(places);
  }

  /** A channel as it stands in the middle of a sentence; its id in words if it has no name. */
  String name(Channel channel) {
    String key = "name." + channel.id();
    return bundle.containsKey(key) ? bundle.getString(key) : plain(channel);
  }

  /** A channel as it heads a table or a picture. */
  String title(Channel channel) {
    String key = "title." + channel.id();
    return bundle.containsKey(key) ? bundle.getString(key) : plain(channel);
  }

  private static String plain(Channel channel) {
    return channel.id().replace('_', ' ');
  }
}
