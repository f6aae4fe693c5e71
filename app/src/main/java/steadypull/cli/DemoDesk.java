package steadypull.cli;

import java.io.IOException;
import java.util.List;

/** The built-in demo world as the commands see it. */
public interface DemoDesk {

  /** The scenarios, in the order in which they are shown. */
  List<ScenarioLine> scenarios();

  /**
   * Offers a scenario's bench adapter to other programs, until it is closed.
   *
   * @param scenario name, and options as in a {@code demo:} address
   * @param place {@code pty} for a pseudo terminal, or {@code tcp:PORT} on this machine; port 0
   *     chooses one
   * @throws IOException if the scenario is unknown or the place cannot be had, in clear words
   */
  Serving serve(String scenario, String place) throws IOException;

  /**
   * One scenario.
   *
   * @param name as in a {@code demo:} address
   * @param description one sentence
   * @param seconds how long the drive lasts
   */
  record ScenarioLine(String name, String description, int seconds) {}

  /** A bench adapter that is being offered. */
  interface Serving extends AutoCloseable {
    /** What to give to {@code --port}. */
    String address();

    @Override
    void close();
  }
}
