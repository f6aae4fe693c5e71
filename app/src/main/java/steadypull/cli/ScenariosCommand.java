package steadypull.cli;

import java.util.Locale;
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
    description = {
      "Lists the demo scenarios. Use one with --port demo:NAME, optionally with a speed factor:",
      "demo:NAME?speed=20"
    })
final class ScenariosCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Option(
      names = "--serve",
      paramLabel = "NAME",
      description = "Offers this scenario's bench adapter until Ctrl-C, and prints its address.")
  private @Nullable String serve;

  @Option(
      names = "--at",
      paramLabel = "PLACE",
      description = "For --serve: pty (a pseudo terminal; the default) or tcp:PORT.")
  private String place = "pty";

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    if (serve == null) {
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

  private void offer(SteadypullCommand main, String scenario) throws Exception {
    try (DemoDesk.Serving serving = main.program().demo().serve(scenario, place)) {
      main.out().println(serving.address());
      main.out().flush();
      main.err().println("Serving " + scenario + ". Ctrl-C ends it.");
      new CountDownLatch(1).await();
    }
  }
}
