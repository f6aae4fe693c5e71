package steadypull.review;

import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.ResourceBundle;
import steadypull.channel.QuantityFormat;
import steadypull.road.load.Interval;
import steadypull.road.load.RigFinding;
import steadypull.vehicle.Rig;

/** Compares a rig with what was entered, in the reader's language and units. Immutable. */
public final class RigWords {
  private final ResourceBundle bundle;
  private final Locale locale;
  private final QuantityFormat quantities;

  /** Words for one reader. */
  public RigWords(Locale locale, QuantityFormat quantities) {
    bundle =
        ResourceBundle.getBundle(
            "steadypull.review.RigWords",
            locale,
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
    this.locale = locale;
    this.quantities = quantities;
  }

  /**
   * The sentences; empty if nothing is known.
   *
   * @param entered what the finding is compared with
   */
  public List<String> sentences(RigFinding finding, Rig entered) {
    return switch (finding) {
      case RigFinding.CannotTell _ -> List.of();
      case RigFinding.Weighed weighed -> sentences(weighed, entered);
    };
  }

  private List<String> sentences(RigFinding.Weighed weighed, Rig entered) {
    List<String> said = new ArrayList<>();
    OptionalDouble both = entered.massKilograms();
    if (both.isEmpty()) {
      said.add(masses("weighs", weighed.massKilograms(), false));
    } else if (!weighed.massKilograms().holds(both.getAsDouble())) {
      String who = entered.trailerMassKilograms().orElse(0) > 0 ? "trailer" : "rig";
      said.add(differs(who, weighed.massKilograms(), both.getAsDouble()));
    }
    boolean isOfMass = !said.isEmpty();
    if (!isOfMass) {
      said.add(fits(weighed.massKilograms(), both.getAsDouble()));
    }
    entered.dragAreaSquareMetres().stream()
        .filter(area -> !weighed.dragAreaSquareMetres().holds(area))
        .mapToObj(area -> drag(weighed.dragAreaSquareMetres(), area))
        .forEach(said::add);
    if (isOfMass) {
      said.add(bundle.getString("torque"));
      said.add(bundle.getString("scale"));
    }
    return List.copyOf(said);
  }

  /** So that nobody takes silence for a narrow "right". */
  private String fits(Interval mass, double entered) {
    return say("fits", mass(entered, false), mass(mass.p05(), false), mass(mass.p95(), false));
  }

  private String differs(String who, Interval mass, double entered) {
    boolean isHeavier = mass.p50() > entered;
    Interval more =
        isHeavier
            ? new Interval(mass.p05() - entered, mass.p50() - entered, mass.p95() - entered)
            : new Interval(entered - mass.p95(), entered - mass.p50(), entered - mass.p05());
    return masses(who + (isHeavier ? ".heavier" : ".lighter"), more, true);
  }

  private String masses(String key, Interval mass, boolean isDifference) {
    return say(
        key,
        mass(mass.p50(), isDifference),
        mass(mass.p05(), isDifference),
        mass(mass.p95(), isDifference));
  }

  private String mass(double kilograms, boolean isDifference) {
    return isDifference ? quantities.massDifference(kilograms) : quantities.mass(kilograms);
  }

  private String drag(Interval area, double entered) {
    return say("drag", decimal(area.p05()), decimal(area.p95()), decimal(entered));
  }

  private String decimal(double value) {
    return String.format(locale, "%.1f", value);
  }

  private String say(String key, Object... arguments) {
    return new MessageFormat(bundle.getString(key), locale).format(arguments);
  }
}
