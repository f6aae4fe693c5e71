package steadypull.store;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * The same trip described here and in a file. What was said here stays, because somebody here said
 * it; what was not said here is taken from the file; tags of both are kept. So the same file twice
 * changes nothing the second time. Immutable.
 *
 * @param here what this library says
 * @param file what the file says
 */
record TwoTellings(TripDetails here, TripDetails file) {
  /** Both together. */
  TripDetails together() {
    OptionalDouble celsius = here.outsideCelsius();
    return new TripDetails(
        said(here.label(), file.label()),
        said(here.note(), file.note()),
        Stream.concat(here.tags().stream(), file.tags().stream()).distinct().toList(),
        said(here.fitted(), file.fitted()),
        said(here.outside(), file.outside()),
        celsius.isPresent() ? celsius : file.outsideCelsius());
  }

  /** What the file tells otherwise, in words for the user. */
  List<String> contradictions() {
    List<String> all = new ArrayList<>();
    contradiction("label", here.label(), file.label(), all);
    contradiction("note", here.note(), file.note(), all);
    contradiction("what was fitted", here.fitted(), file.fitted(), all);
    contradiction("outside conditions", here.outside(), file.outside(), all);
    contradiction(
        "outside temperature", text(here.outsideCelsius()), text(file.outsideCelsius()), all);
    return all;
  }

  private static String said(String here, String file) {
    return here.isEmpty() ? file : here;
  }

  private static void contradiction(String what, String here, String file, List<String> all) {
    if (!here.isEmpty() && !file.isEmpty() && !here.equals(file)) {
      all.add(what);
    }
  }

  private static String text(OptionalDouble number) {
    return number.isPresent() ? Double.toString(number.getAsDouble()) : "";
  }
}
