package steadypull.adapter.polling;

import java.time.Duration;

/** How often a quantity is worth asking for (periods: common practice, no source). */
public enum Urgency {
  /** What the driver's foot and the road change: speed, torque, pedal, boost. */
  FAST(Duration.ofMillis(250)),
  /** Temperatures and flows. */
  MEDIUM(Duration.ofSeconds(1)),
  /** Weather, supply, references. */
  SLOW(Duration.ofSeconds(10)),
  /** What does not change while the engine runs; again now and then, because it might. */
  ONCE(Duration.ofMinutes(5));

  private final Duration period;

  Urgency(Duration period) {
    this.period = period;
  }

  /** The span between two requests under polite pace. */
  public Duration period() {
    return period;
  }

  /** The urgency of a service 01 parameter. */
  public static Urgency ofParameter(int number) {
    return switch (number) {
      case 0x04, 0x0B, 0x0C, 0x0D, 0x49, 0x5A, 0x61, 0x62, 0x70, 0x87 -> FAST;
      case 0x1F, 0x2F, 0x33, 0x42, 0x46, 0x63, 0x7C, 0x7F, 0x8B, 0x8E, 0xA6 -> SLOW;
      case 0x13, 0x1C, 0x1D, 0x4F, 0x50, 0x51 -> ONCE;
      default -> MEDIUM;
    };
  }
}
