package steadypull.compare;

/** Why a pull does not count and is to be driven again. A closed set. */
public sealed interface PullFault {
  /**
   * It ended too soon.
   *
   * @param seconds that it lasted
   * @param wished that it should have
   */
  record TooShort(int seconds, int wished) implements PullFault {}

  /**
   * It pulled otherwise than the first.
   *
   * @param kilowatts of it
   * @param wished of the first
   */
  record OtherLoad(double kilowatts, double wished) implements PullFault {}
}
