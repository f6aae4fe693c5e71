package steadypull.cli;

import java.io.IOException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.function.Consumer;
import steadypull.store.TripDetails;
import steadypull.store.TripEntry;

/** The built-in demo world as the commands see it. */
public interface DemoDesk {

  /** The scenarios, in the order in which they are shown. */
  List<ScenarioLine> scenarios();

  /**
   * The trips of the demo season, oldest first.
   *
   * @param seed the same seed gives the same trips
   */
  List<SeasonTrip> season(long seed);

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

  /** One trip of the demo season. */
  interface SeasonTrip {
    /** The vehicle, as the text of a vehicle file. */
    String vehicleFile();

    /** What it moves on this trip, as the text of a rig file. */
    String rigFile();

    /** The moment of time zero. */
    OffsetDateTime start();

    /** What people say of it. */
    TripDetails details();

    /** What the vehicle's diagnostic port speaks. */
    String protocol();

    /**
     * Drives it on the calling thread.
     *
     * @param entries takes everything in the order of time
     * @return the end of the trip, microseconds since its start
     */
    long drive(Consumer<TripEntry> entries);
  }

  /** A bench adapter that is being offered. */
  interface Serving extends AutoCloseable {
    /** What to give to {@code --port}. */
    String address();

    @Override
    void close();
  }
}
