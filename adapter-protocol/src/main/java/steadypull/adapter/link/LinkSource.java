package steadypull.adapter.link;

/** An address that can be opened, and opened again after the link was lost. */
public interface LinkSource {

  /** The port or host, as the user wrote it. */
  String address();

  /** The clock of every link opened here. It runs on while no link is open. */
  LinkClock clock();

  /**
   * Opens the address. A link to a real port comes with the read-only gate before it.
   *
   * @throws LinkException if it does not exist, is in use or refuses
   */
  Link open() throws LinkException;

  /**
   * Lives in the time of another link of the same vehicle from now on, if it can. Only what is
   * simulated can, and has to: real ports share the machine's time. Before the first opening.
   *
   * @param vehicle may be asked from any thread
   */
  default void follow(LinkClock vehicle) {}

  /**
   * How many openings in a row are worth trying before one can say that nobody answers, because
   * each opening tries another setting, such as the next baud rate. One or more.
   */
  default int waysToOpen() {
    return 1;
  }
}
