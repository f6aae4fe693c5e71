package steadypull.cli;

import java.util.List;

/** The vehicles of a library as part of a sentence. */
final class KnownVehicles {
  private KnownVehicles() {}

  static String of(List<String> names) {
    return names.isEmpty() ? "no vehicle yet" : String.join(", ", names);
  }
}
