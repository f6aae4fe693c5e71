package steadypull;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.time.InstantSource;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import steadypull.cli.Program;
import steadypull.cli.SteadypullCommand;
import steadypull.tablet.Tablet;

/** Starts the program. */
public final class Steadypull {
  /** Kept here: the logging system holds its loggers weakly. */
  private static final Logger ROOT = Logger.getLogger("");

  private Steadypull() {}

  /** Runs a command, or opens the window when there is none; exits with the status. */
  public static void main(String[] arguments) {
    ROOT.setLevel(Level.SEVERE);
    PrintWriter out = new PrintWriter(System.out, false, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int status = SteadypullCommand.run(program(), out, err, arguments);
    out.flush();
    err.flush();
    System.exit(status);
  }

  static Program program() {
    DemoBench bench = new DemoBench();
    String system = System.getProperty("os.name");
    return new Program(
        List.of(bench.offer()),
        bench,
        System.getenv(),
        System.getProperty("user.home"),
        system,
        InstantSource.system(),
        Tablet.ofThisMachine(system, System.getenv(), InstantSource.system()),
        version());
  }

  private static String version() {
    return Optional.ofNullable(Steadypull.class.getPackage())
        .map(Package::getImplementationVersion)
        .filter(Objects::nonNull)
        .orElse("unpackaged");
  }
}
