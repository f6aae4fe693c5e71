package steadypull.ui;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import steadypull.channel.Channel;

/** The texts of the screens in one language. Immutable. */
final class Words {
  private final Locale locale;
  private final ResourceBundle bundle;

  Words(Locale locale) {
    this.locale = locale;
    this.bundle =
        ResourceBundle.getBundle(
            "steadypull.ui.Words",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
  }

  /** The language. */
  Locale locale() {
    return locale;
  }

  /** The text of a key with its places filled; numbers come as text, already formatted. */
  String say(String key, String... places) {
    return new MessageFormat(bundle.getString(key), locale).format(places);
  }

  /** The short name of a thermal channel; its id for one that has no name here. */
  String name(Channel channel) {
    try {
      return bundle.getString("name." + channel.id());
    } catch (MissingResourceException unnamed) {
      return channel.id().replace('_', ' ');
    }
  }
}
