package steadypull.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Scenario;
import steadypull.drive.LinkOffer;
import steadypull.tablet.Tablet;

/** Somebody at a terminal: types commands and reads what comes back. */
final class Desk {
  static final Instant NOW = Instant.parse("2026-07-15T17:45:12Z");

  /** What a command answered. */
  record Answer(int status, String out, String err) {
    List<String> lines() {
      return out.lines().toList();
    }

    /** The only line, such as a trip's id. */
    String line() {
      if (lines().size() != 1) {
        throw new AssertionError("Expected one line, found " + this);
      }
      return lines().getFirst();
    }
  }

  private final Path library;

  Desk(Path library) {
    this.library = library;
  }

  /** Types a command for this desk's library. */
  Answer type(String... arguments) {
    List<String> all = new ArrayList<>(List.of("--library", library.toString()));
    Collections.addAll(all, arguments);
    return typeOnly(Map.of(), all.toArray(String[]::new));
  }

  /** Types a command that says nothing of a library. */
  static Answer typeOnly(Map<String, String> environment, String... arguments) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int status =
        SteadypullCommand.run(
            program(environment), new PrintWriter(out), new PrintWriter(err), arguments);
    return new Answer(status, out.toString(), err.toString());
  }

  private static Program program(Map<String, String> environment) {
    LinkOffer offer =
        new LinkOffer(
            DemoWorld.links(), List.of(), Desk::vehicleFile, Desk::lasts, DemoWorld.receivers());
    return new Program(
        List.of(offer),
        new ListOnly(),
        environment,
        "/home/nobody",
        "Linux",
        InstantSource.fixed(NOW),
        Tablet.unwatched(),
        "0.0-test");
  }

  private static Optional<String> vehicleFile(String address) {
    return DemoWorld.scenario(address.replaceFirst("^demo:", "").replaceFirst("\\?.*", ""))
        .map(DemoWorld::vehicleFile);
  }

  private static Optional<Duration> lasts(String address) {
    try {
      return DemoWorld.lasts(address);
    } catch (IOException malformed) {
      return Optional.empty();
    }
  }

  /** Shows the scenarios and serves none. */
  private static final class ListOnly implements DemoDesk {
    @Override
    public List<ScenarioLine> scenarios() {
      return DemoWorld.scenarios().stream().map(ListOnly::line).toList();
    }

    private static ScenarioLine line(Scenario scenario) {
      return new ScenarioLine(
          scenario.name(), scenario.sentence(), (int) scenario.duration().toSeconds());
    }

    @Override
    public List<SeasonTrip> season(long seed) {
      return List.of();
    }

    @Override
    public Serving serve(String scenario, String place) throws IOException {
      throw new IOException("Could not serve " + scenario + " at " + place + ".");
    }
  }
}
