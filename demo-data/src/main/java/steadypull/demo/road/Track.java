package steadypull.demo.road;

/** What can be driven along: a road on its own, or a tour through a country. Immutable. */
public sealed interface Track permits Road, Tour {
  /** Its invented name. */
  String name();

  /** Altitude of its first metre, m above mean sea level. */
  double startAltitude();

  /** The place at a distance of 0 m or more. */
  Road.Place at(double metres);

  /** Metres that are drawn; behind them the last grade or level ground goes on. */
  double length();

  /** Whether no satellite is seen at a distance of 0 m or more. */
  default boolean isInTunnel(double metres) {
    return false;
  }
}
