package steadypull;

import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import steadypull.adapter.link.LinkException;
import steadypull.cli.DemoDesk;
import steadypull.demo.DemoWorld;
import steadypull.demo.bench.BenchServer;
import steadypull.demo.bench.PseudoTerminal;
import steadypull.demo.road.Scenario;
import steadypull.demo.season.Season;
import steadypull.drive.LinkOffer;
import steadypull.drive.PortChoice;

/** Hands the built-in demo world to the rooms that must not know it. */
final class DemoBench implements DemoDesk {
  private static final String PREFIX = "demo:";
  private static final int CHOICE_SPEED = 20;

  LinkOffer offer() {
    List<PortChoice> choices = DemoWorld.scenarios().stream().map(DemoBench::choice).toList();
    return new LinkOffer(
        DemoWorld.links(),
        choices,
        DemoBench::vehicleFile,
        DemoBench::lasts,
        DemoWorld.receivers());
  }

  private static PortChoice choice(Scenario scenario) {
    return new PortChoice(
        PREFIX + scenario.name() + "?speed=" + CHOICE_SPEED,
        title(scenario.name()),
        scenario.sentence(),
        true);
  }

  /** {@code long-hot-grade} reads "Long hot grade". */
  private static String title(String name) {
    return name.substring(0, 1).toUpperCase(Locale.ROOT) + name.substring(1).replace('-', ' ');
  }

  private static Optional<String> vehicleFile(String address) {
    if (!address.startsWith(PREFIX)) {
      return Optional.empty();
    }
    String name = address.substring(PREFIX.length()).replaceFirst("\\?.*", "");
    return DemoWorld.scenario(name).map(DemoWorld::vehicleFile);
  }

  private static Optional<Duration> lasts(String address) {
    try {
      return DemoWorld.lasts(address);
    } catch (LinkException malformed) {
      // Opening the address reports the fault in words; it has no length until then.
      return Optional.empty();
    }
  }

  @Override
  public List<ScenarioLine> scenarios() {
    return DemoWorld.scenarios().stream()
        .map(
            scenario ->
                new ScenarioLine(
                    scenario.name(),
                    scenario.sentence(),
                    Math.toIntExact(scenario.duration().toSeconds())))
        .toList();
  }

  @Override
  public List<SeasonTrip> season(long seed) {
    return Season.of(seed).trips().stream().<SeasonTrip>map(DemoSeasonTrip::new).toList();
  }

  @Override
  public Serving serve(String scenario, String place) throws IOException {
    String address = scenario.startsWith(PREFIX) ? scenario : PREFIX + scenario;
    return place.equals("pty")
        ? onTerminal(address)
        : onTcp(address, Integer.parseInt(place.substring("tcp:".length())));
  }

  private static Serving onTerminal(String address) throws IOException {
    PseudoTerminal terminal = PseudoTerminal.serve(address);
    return new Offered(terminal.path(), terminal::close);
  }

  private static Serving onTcp(String address, int port) throws IOException {
    BenchServer server = BenchServer.serve(address, port);
    return new Offered("tcp://127.0.0.1:" + server.port(), server::close);
  }

  private record Offered(String address, Runnable ending) implements Serving {
    @Override
    public void close() {
      ending.run();
    }
  }
}
