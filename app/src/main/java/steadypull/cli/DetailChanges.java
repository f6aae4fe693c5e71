package steadypull.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import steadypull.store.TripDetails;
import steadypull.vehicle.Rig;

/** What has changed of a trip, a line each. */
final class DetailChanges {
  private static final int WIDTH = 60;

  private final List<String> lines = new ArrayList<>();

  private DetailChanges() {}

  static List<String> of(TripDetails before, TripDetails after, Rig rigBefore, Rig rigAfter) {
    DetailChanges changes = new DetailChanges();
    changes.compare("label", before.label(), after.label());
    changes.compare("note", before.note(), after.note());
    changes.compare("tags", String.join(", ", before.tags()), String.join(", ", after.tags()));
    changes.compare("fitted", before.fitted(), after.fitted());
    changes.compare("outside", before.outside(), after.outside());
    changes.compare("outside temp, degC", before.outsideCelsius(), after.outsideCelsius());
    changes.compare("mass, kg", rigBefore.massKilograms(), rigAfter.massKilograms());
    changes.compare(
        "trailer mass, kg", rigBefore.trailerMassKilograms(), rigAfter.trailerMassKilograms());
    changes.compare(
        "drag area, m2", rigBefore.dragAreaSquareMetres(), rigAfter.dragAreaSquareMetres());
    changes.compare(
        "rolling resistance", rigBefore.rollingResistance(), rigAfter.rollingResistance());
    changes.compare("tyre radius, m", rigBefore.tyreRadiusMetres(), rigAfter.tyreRadiusMetres());
    return List.copyOf(changes.lines);
  }

  private void compare(String what, OptionalDouble before, OptionalDouble after) {
    compare(what, text(before), text(after));
  }

  private void compare(String what, String before, String after) {
    if (!before.equals(after)) {
      lines.add("Changed %s: %s, was %s.".formatted(what, quoted(after), quoted(before)));
    }
  }

  private static String quoted(String text) {
    return text.isEmpty() ? "nothing" : "\"" + Printable.line(text, WIDTH) + "\"";
  }

  private static String text(OptionalDouble number) {
    return number.isPresent() ? Double.toString(number.getAsDouble()) : "";
  }
}
