package steadypull.adapter;

import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadypull.adapter.dialogue.Reply;

/** The voltage at the vehicle's plug, as an adapter tells it without using the bus. Stateless. */
final class SupplyVoltage {
  private static final Pattern VOLTS = Pattern.compile("([0-9]{1,2}(\\.[0-9]+)?) ?V?");

  /** An adapter needs more than this to work: what claims less does not measure. */
  private static final double LEAST_VOLTS = 6;

  /**
   * Above this only an alternator, or a charger, holds a 12 V battery (common practice, no source).
   */
  private static final double CHARGING_VOLTS = 13.2;

  /** No 12 V system reaches it, no 24 V system with a usable battery falls below. */
  private static final double LEAST_OF_TWO_BATTERIES = 18;

  private SupplyVoltage() {}

  /** Reads the reply to the question for the voltage; empty if it does not tell. */
  static OptionalDouble of(Reply reply) {
    if (reply instanceof Reply.Text(String text)) {
      Matcher volts = VOLTS.matcher(text);
      return volts.matches() ? plausible(volts.group(1)) : OptionalDouble.empty();
    }
    return OptionalDouble.empty();
  }

  private static OptionalDouble plausible(String number) {
    double volts = Double.parseDouble(number);
    return volts >= LEAST_VOLTS ? OptionalDouble.of(volts) : OptionalDouble.empty();
  }

  /** Whether something charges the battery: the engine runs. */
  static boolean isCharging(double volts) {
    return volts >= (volts > LEAST_OF_TWO_BATTERIES ? 2 * CHARGING_VOLTS : CHARGING_VOLTS);
  }
}
