package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.link.LinkException;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Scenarios;

/** Reads {@code demo:SCENARIO[?speed=20&seed=1&start=60&fault=vanish@120]}. */
final class BenchAddress {
  private static final String FORM =
      "Write demo:SCENARIO, then if wanted ?speed=20 or speed=max, seed=1, start=SECONDS,"
          + " fault=KIND@FROM-UNTIL, joined by &";

  private final String address;
  private OptionalDouble speed = OptionalDouble.of(1);
  private long seed = 1;
  private double start;
  private final List<Fault> faults = new ArrayList<>();

  private BenchAddress(String address) {
    this.address = address;
  }

  /**
   * Reads an address that begins with {@code demo:}.
   *
   * @throws LinkException if scenario or settings are not understood
   */
  static BenchSettings parse(String address) throws LinkException {
    return new BenchAddress(address).settings();
  }

  private BenchSettings settings() throws LinkException {
    int question = address.indexOf('?');
    String name = address.substring("demo:".length(), question < 0 ? address.length() : question);
    Scenario scenario = scenario(name);
    String query = question < 0 ? "" : address.substring(question + 1);
    for (String setting : query.split("&", -1)) {
      if (!setting.isEmpty()) {
        take(setting);
      }
    }
    try {
      return new BenchSettings(scenario, speed, seed, start, faults);
    } catch (IllegalArgumentException outside) {
      throw malformed(String.valueOf(outside.getMessage()), outside);
    }
  }

  private Scenario scenario(String name) throws LinkException {
    for (Scenario each : Scenarios.all()) {
      if (each.name().equals(name)) {
        return each;
      }
    }
    List<String> names = Scenarios.all().stream().map(Scenario::name).toList();
    throw new LinkException(
        address,
        "open",
        "there is no scenario named \"" + name + "\"",
        NearMatch.of(name, names).map(near -> "Did you mean " + near + "? ").orElse("")
            + "The scenarios are "
            + names.stream().collect(Collectors.joining(", "))
            + ".",
        null);
  }

  private void take(String setting) throws LinkException {
    int equals = setting.indexOf('=');
    String key = equals < 0 ? setting : setting.substring(0, equals);
    String value = equals < 0 ? "" : setting.substring(equals + 1);
    try {
      switch (key) {
        case "speed" ->
            speed =
                value.equals("max")
                    ? OptionalDouble.empty()
                    : OptionalDouble.of(Double.parseDouble(value));
        case "seed" -> seed = Long.parseLong(value);
        case "start" -> start = Double.parseDouble(value);
        case "fault" -> faults.add(Fault.parse(value));
        default -> throw malformed("the setting \"" + key + "\" is unknown", null);
      }
    } catch (IllegalArgumentException notUnderstood) {
      throw malformed("\"" + setting + "\" is not understood", notUnderstood);
    }
  }

  private LinkException malformed(String found, @Nullable Throwable cause) {
    return new LinkException(address, "open", found, FORM + ".", cause);
  }
}
