package steadypull.vehicle.role;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.ResourceBundle;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;

/** Says findings in the reader's language and units. Immutable. */
public final class RoleWords {
  private static final double KILOPASCALS_PER_PSI = 6.894757; // NIST SP 811, appendix B.8

  private final ResourceBundle bundle;
  private final Locale locale;
  private final QuantityFormat quantities;

  /** Words for one reader. */
  public RoleWords(Locale locale, QuantityFormat quantities) {
    bundle =
        ResourceBundle.getBundle(
            "steadypull.vehicle.role.RoleWords",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    this.locale = locale;
    this.quantities = quantities;
  }

  /** The place that a channel stands for: {@code Charge air before cooler}. */
  public String place(Channel channel) {
    return said("place." + channel.id(), channel.id());
  }

  /** What the standard calls a sensor, with its key: {@code charge air sensor 1 (01.77.1)}. */
  public String sensor(String signalKey) {
    String[] parts = signalKey.split("\\.", -1);
    String number = parts.length > 2 ? parts[2] : "";
    String parameter = parts.length > 1 ? parts[0] + "." + parts[1] : signalKey;
    String name = said("sensor." + signalKey, said("sensor." + parameter, ""));
    return name.isEmpty()
        ? signalKey
        : new MessageFormat(name, locale).format(new Object[] {number}) + " (" + signalKey + ")";
  }

  /** How sure a proposal is, in a word. */
  public String confidence(RoleFinding.Confidence confidence) {
    return switch (confidence) {
      case CLEAR -> text("confidence.clear");
      case LIKELY -> text("confidence.likely");
    };
  }

  /** Why, with the figures; one or two sentences. */
  public String because(RoleFinding finding) {
    return sentence(
        switch (finding) {
          case RoleFinding.Proposed proposed -> because(proposed.reason());
          case RoleFinding.CannotTell unknown -> because(unknown.missing());
        });
  }

  private String because(Reason reason) {
    return switch (reason) {
      case Reason.HotAsCompressed hot ->
          text(
              "reason.hotAsCompressed",
              degrees(hot.celsius()),
              pressure(hot.manifoldKilopascals()),
              degrees(hot.compressedCelsius()),
              degrees(hot.outsideCelsius()));
      case Reason.CooledAfterCompression cooled ->
          text(
              "reason.cooledAfterCompression",
              degrees(cooled.celsius()),
              pressure(cooled.manifoldKilopascals()),
              degrees(cooled.compressedCelsius()),
              degrees(cooled.outsideCelsius()));
      case Reason.OwnCircuit own ->
          text(
              "reason.ownCircuit",
              degrees(own.celsius()),
              degrees(own.engineCelsius()),
              difference(own.apartKelvin()));
      case Reason.HottestWater water ->
          text("reason.hottestWater", degrees(water.highestCelsius()));
      case Reason.BeforeTurbine before ->
          text(
              "reason.beforeTurbine",
              degrees(before.celsius()),
              difference(before.dropKelvin()),
              sensor(before.nextSignal()));
      case Reason.AfterTurbine after ->
          text(
              "reason.afterTurbine",
              degrees(after.celsius()),
              difference(after.dropKelvin()),
              sensor(after.hotterSignal()));
      case Reason.BehindHeavyPart behind ->
          text(
              "reason.behindHeavyPart",
              degrees(behind.celsius()),
              quantities.whole(behind.slowness()));
    };
  }

  private String because(Missing missing) {
    return switch (missing) {
      case Missing.NoSensor _ -> text("missing.noSensor");
      case Missing.MoreBoost more ->
          text(
              "missing.moreBoost",
              pressure(Moment.BOOST_KILOPASCALS),
              quantities.whole(more.seconds()));
      case Missing.VaryingBoost _ -> text("missing.varyingBoost");
      case Missing.NoneHotEnough none ->
          text(
              "missing.noneHotEnough",
              degrees(none.compressedCelsius()),
              sensor(none.hottestSignal()),
              degrees(none.celsius()));
      case Missing.NoneBetween _ -> text("missing.noneBetween");
      case Missing.WarmEngine _ -> text("missing.warmEngine");
      case Missing.NoOtherWater _ -> text("missing.noOtherWater");
      case Missing.LayoutSaysAir air ->
          text(
              "missing.layoutSaysAir",
              sensor(air.signal()),
              degrees(air.celsius()),
              degrees(air.engineCelsius()));
      case Missing.OnlyOneExhaust only -> text("missing.onlyOneExhaust", sensor(only.signal()));
      case Missing.NoTurbineBetween none ->
          text(
              "missing.noTurbineBetween",
              sensor(none.hottestSignal()),
              sensor(none.nextSignal()),
              difference(none.dropKelvin()),
              difference(none.turbineKelvin()));
      case Missing.NoSlowExhaust _ -> text("missing.noSlowExhaust");
    };
  }

  /** What is wrong with a sensor that is left out; one sentence. */
  public String suspicion(Suspect suspect) {
    return sentence(
        switch (suspect.fault()) {
          case Suspect.Stuck stuck ->
              text("suspect.stuck", sensor(suspect.signalKey()), degrees(stuck.celsius()));
          case Suspect.OffAfterRest off ->
              text(
                  off.kelvin() > 0 ? "suspect.tooHotAfterRest" : "suspect.tooColdAfterRest",
                  sensor(suspect.signalKey()),
                  difference(Math.abs(off.kelvin())));
        });
  }

  /** A sensor's name may stand first. */
  private String sentence(String text) {
    return text.substring(0, 1).toUpperCase(locale) + text.substring(1);
  }

  private String degrees(double celsius) {
    return quantities.temperature(celsius);
  }

  private String difference(double kelvin) {
    return quantities.temperatureDifference(kelvin);
  }

  private String pressure(double kilopascals) {
    return switch (quantities.system()) {
      case METRIC -> quantities.whole(kilopascals) + " kPa";
      case IMPERIAL -> quantities.whole(kilopascals / KILOPASCALS_PER_PSI) + " psi";
    };
  }

  private String text(String key, Object... places) {
    return new MessageFormat(bundle.getString(key), locale).format(places);
  }

  private String said(String key, String otherwise) {
    try {
      return bundle.getString(key);
    } catch (MissingResourceException unnamed) {
      return otherwise;
    }
  }
}
