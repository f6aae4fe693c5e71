package steadypull.demo.bench;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.MalformedAddressException;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Scenarios;

/**
 * Reads {@code demo:SCENARIO[?setting&setting...]}. The settings:
 *
 * <ul>
 *   <li>{@code speed=20}: seconds of the drive per second of the day, or {@code max};
 *   <li>{@code seed=1}, {@code start=60}: seconds into the drive at which the bench begins;
 *   <li>{@code protocol=6}: the vehicle's bus, 1 to 9 as in {@link BusProtocol};
 *   <li>{@code diagnostics=uds}: a vehicle that answers ISO 14229 service 22 only;
 *   <li>{@code latency=8}: milliseconds that control units take to answer;
 *   <li>{@code traffic=200}: frames a second that control units send each other, which a serial CAN
 *       adapter shows;
 *   <li>{@code codes=P0299@120,P0420} and {@code pending=P0217@60}: trouble codes and when they are
 *       noticed, in seconds on the bench's clock;
 *   <li>{@code adapter=no-counts,slow}: what the adapter lacks, as in {@link AdapterTrait}, or
 *       {@code serial-can};
 *   <li>{@code baud=38400}: rate of the adapter's serial line;
 *   <li>{@code fault=vanish@120-130}: what goes wrong from when until when, as in {@link
 *       Fault.Kind}; any number of these.
 * </ul>
 */
final class BenchAddress {
  private static final String SCENARIO_FORM = "demo:SCENARIO with known settings";
  private static final String FORM =
      "Write demo:SCENARIO, then if wanted ?speed=20 or speed=max, seed=1, start=SECONDS,"
          + " protocol=1..9, diagnostics=uds, latency=MILLISECONDS, traffic=FRAMES,"
          + " codes=CODE@SECONDS, pending=CODE@SECONDS, adapter=TRAIT, baud=RATE,"
          + " fault=KIND@FROM-UNTIL, joined by &";

  private final String address;
  private OptionalDouble speed = OptionalDouble.of(1);
  private long seed = 1;
  private double start;
  private BusProtocol protocol = BusProtocol.CAN_11_500;
  private boolean isUds;
  private OptionalDouble latencyMillis = OptionalDouble.empty();
  private int framesPerSecond;
  private final List<StoredCode> codes = new ArrayList<>();
  private final Set<AdapterTrait> traits = EnumSet.noneOf(AdapterTrait.class);
  private int baud = AdapterTraits.USUAL.baud();
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
      return new BenchSettings(
          scenario,
          speed,
          seed,
          start,
          new VehicleTraits(protocol, isUds, latencyMillis, codes, framesPerSecond),
          new AdapterTraits(traits, baud),
          new FaultPlan(faults));
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
    throw new MalformedAddressException(
        address, SCENARIO_FORM, NearMatch.notFound("scenario", name, names), FORM + ".", null);
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
        case "protocol" -> protocol = BusProtocol.of(value);
        case "diagnostics" -> isUds = isUds(value);
        case "latency" -> latencyMillis = OptionalDouble.of(Double.parseDouble(value));
        case "traffic" -> framesPerSecond = Integer.parseInt(value);
        case "codes" -> parts(value).map(code -> StoredCode.parse(code, true)).forEach(codes::add);
        case "pending" ->
            parts(value).map(code -> StoredCode.parse(code, false)).forEach(codes::add);
        case "adapter" -> parts(value).map(AdapterTrait::of).forEach(traits::add);
        case "baud" -> baud = Integer.parseInt(value);
        case "fault" -> faults.add(Fault.parse(value));
        default -> throw malformed("the unknown setting \"" + key + "\"", null);
      }
    } catch (IllegalArgumentException notUnderstood) {
      throw malformed("\"" + setting + "\" (" + notUnderstood.getMessage() + ")", notUnderstood);
    }
  }

  private static boolean isUds(String value) {
    return switch (value) {
      case "obd" -> false;
      case "uds" -> true;
      default -> throw new IllegalArgumentException("unknown diagnostics " + value);
    };
  }

  private static Stream<String> parts(String list) {
    return Stream.of(list.split(",", -1));
  }

  private LinkException malformed(String found, @Nullable Throwable cause) {
    return new MalformedAddressException(address, SCENARIO_FORM, found, FORM + ".", cause);
  }
}
