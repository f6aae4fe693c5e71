package steadypull.cli;

import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;

/** Lists the demo scenarios, or offers one to other programs. */
@Command(
    name = "scenarios",
    mixinStandardHelpOptions = true,
    header = "Lists the demo scenarios, or serves one to other programs.",
    description =
        "Drive one with --port demo:NAME, faster with --port demo:NAME?speed=20. With --serve the"
            + " scenario's bench adapter is offered as a port until Ctrl-C. Behind the ? other"
            + " vehicles, adapters and faults can be asked for, joined by &, such as protocol=3,"
            + " adapter=slow or fault=lv-reset@60-62; a wrong one is answered with the list.")
final class ScenariosCommand implements Callable<Integer> {
  private static final String DEMO = "demo:";

  @ParentCommand private @Nullable SteadypullCommand parent;

  @Option(
      names = "--serve",
      paramLabel = "NAME",
      description = {
        "Offers this scenario's bench adapter until Ctrl-C,",
        "and prints its address."
      })
  private @Nullable String serve;

  @Option(
      names = "--at",
      paramLabel = "PLACE",
      converter = ServingPlace.class,
      description = {
        "For --serve: pty (a pseudo terminal; the default) or",
        "tcp:PORT on this machine; tcp:0 chooses a port."
      })
  private @Nullable String place;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    if (serve == null) {
      requireNoPlace(main);
      list(main);
    } else {
      offer(main, serve);
    }
    return 0;
  }

  private static void list(SteadypullCommand main) {
    for (DemoDesk.ScenarioLine line : main.program().demo().scenarios()) {
      main.out()
          .printf(
              Locale.ROOT,
              "%-16s %3d min  %s%n",
              line.name(),
              Math.round(line.seconds() / 60.0),
              line.description());
    }
    main.out().flush();
  }

  private void requireNoPlace(SteadypullCommand main) {
    if (place != null) {
      throw Misuse.of(
          main,
          "scenarios",
          "--serve NAME beside --at",
          "--at alone",
          "Add --serve, or leave --at away");
    }
  }

  private void offer(SteadypullCommand main, String scenario) throws Exception {
    String address = scenario.startsWith(DEMO) ? scenario : DEMO + scenario;
    main.requireAddresses(Optional.of(address), Optional.empty());
    try (DemoDesk.Serving serving =
        main.program().demo().serve(scenario, place == null ? "pty" : place)) {
      main.out().println(serving.address());
      main.out().flush();
      main.err().println("Serving " + scenario + ". Ctrl-C ends it.");
      CountDownLatch told = new CountDownLatch(1);
      try (var _ = StopSignals.call(told::countDown)) {
        told.await();
      }
    }
  }
}
