package steadypull.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import steadypull.drive.LiveDrives;
import steadypull.drive.PortChoice;
import steadypull.drive.PortFinding;

/** Lists serial ports, and asks them for an adapter. */
@Command(
    name = "ports",
    mixinStandardHelpOptions = true,
    header = "Lists serial ports, and asks them for an adapter.",
    description =
        "--probe asks each port for an adapter and the adapter for a vehicle, from the plug"
            + " upwards, and says at a step that does not hold what to do; the exit status is then"
            + " 1 if no adapter was found.")
final class PortsCommand implements Callable<Integer> {
  @ParentCommand private @Nullable SteadypullCommand parent;

  @Parameters(
      paramLabel = "PORT",
      arity = "0..*",
      description = {"Ports to look at in place of all serial ports;", "tcp://host:port as well."})
  private List<String> addresses = List.of();

  @Option(names = "--probe", description = "Asks each port; takes seconds where nothing answers.")
  private boolean probe;

  @Option(
      names = "--show-vin",
      description = {"Tells the vehicle's identification number in full;", "else only its end."})
  private boolean showVin;

  @Override
  public Integer call() throws Exception {
    SteadypullCommand main = Parents.require(parent);
    List<PortChoice> ports = addresses.isEmpty() ? LiveDrives.serialPorts() : named();
    if (ports.isEmpty()) {
      main.err()
          .println(
              "No serial ports found. Plug the adapter in; a wireless one must be paired first. A"
                  + " Wi-Fi adapter is tcp://host:port.");
    }
    boolean found = false;
    for (PortChoice port : ports) {
      found |= tell(main, port);
    }
    return probe && !found ? 1 : 0;
  }

  private List<PortChoice> named() {
    return addresses.stream().map(each -> new PortChoice(each, each, "", false)).toList();
  }

  private boolean tell(SteadypullCommand main, PortChoice port) throws Exception {
    main.out()
        .println(port.detail().isEmpty() ? port.address() : port.address() + "  " + port.detail());
    main.out().flush();
    if (!probe) {
      return false;
    }
    PortFinding finding = LiveDrives.probe(port.address(), main.program().offers(), showVin);
    finding.lines().forEach(main.out()::println);
    main.out().flush();
    return finding.isAdapter();
  }
}
