package steadypull.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkProvider;
import steadypull.demo.bench.BenchLinks;
import steadypull.demo.bench.ReceiverLinks;
import steadypull.demo.road.Drive;
import steadypull.demo.road.Scenario;
import steadypull.demo.road.Scenarios;
import steadypull.demo.season.Season;

/**
 * The door to the invented world. Safe from any thread; a drive belongs to one thread at a time.
 */
public final class DemoWorld {
  private DemoWorld() {}

  /** The scenarios, in the order in which they are listed. */
  public static List<Scenario> scenarios() {
    return Scenarios.all();
  }

  /** The scenario of that name, or empty if there is none. */
  public static Optional<Scenario> scenario(String name) {
    return scenarios().stream().filter(scenario -> scenario.name().equals(name)).findFirst();
  }

  /** The vehicle file that goes with a scenario, as JSON text. */
  public static String vehicleFile(Scenario scenario) {
    try (InputStream file = DemoWorld.class.getResourceAsStream(scenario.vehicleFile())) {
      if (file == null) {
        throw new IllegalStateException(
            "The vehicle file %s of scenario %s is missing from this program"
                .formatted(scenario.vehicleFile(), scenario.name()));
      }
      return new String(file.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new UncheckedIOException(
          "Could not read the vehicle file " + scenario.vehicleFile(), broken);
    }
  }

  /**
   * A scenario as a time series: advance it, then read sensors or the truth behind them.
   *
   * @param seed of gusts and of the sensors' noise; the same seed gives the same drive
   */
  public static Drive drive(Scenario scenario, long seed) {
    return new Drive(scenario, seed);
  }

  /** The demo library's content, from a seed; the same seed gives the same samples. */
  public static Season season(long seed) {
    return Season.of(seed);
  }

  /**
   * Opens scenarios through a bench adapter's bytes, by addresses such as {@code
   * demo:long-hot-grade?speed=20}.
   */
  public static LinkProvider links() {
    return new BenchLinks();
  }

  /**
   * Opens satellite receivers in the vehicles of scenarios, by addresses such as {@code
   * demo-receiver:long-hot-grade?speed=20}.
   */
  public static LinkProvider receivers() {
    return new ReceiverLinks();
  }

  /**
   * How long the drive behind a demo address lasts on its link's clock; then the engine is switched
   * off and the vehicle falls silent.
   *
   * @return empty if the address is no demo address
   * @throws LinkException if it is one but malformed
   */
  public static Optional<Duration> lasts(String address) throws LinkException {
    return BenchLinks.lasts(address);
  }
}
