package steadypull.tablet;

/** Where battery and charger stand. A closed set. */
public sealed interface Power {
  /**
   * There is a battery.
   *
   * @param percent how full, 0 to 100
   * @param onCharger whether a charger is connected, strong enough or not
   * @param draining whether it is getting emptier
   */
  record Battery(int percent, boolean onCharger, boolean draining) implements Power {
    public Battery {
      if (percent < 0 || percent > 100) {
        throw new IllegalArgumentException("A battery is 0 to 100 % full, found " + percent);
      }
    }
  }

  /** The machine has no battery of its own: it lives and dies with its socket. */
  record NoBattery() implements Power {}

  /** Nobody could tell. */
  record CouldNotTell() implements Power {}
}
