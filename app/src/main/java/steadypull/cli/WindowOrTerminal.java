package steadypull.cli;

import java.util.Optional;

/** Opens the window where there is a display, and drives in the terminal where there is none. */
final class WindowOrTerminal {
  private final SteadypullCommand main;

  WindowOrTerminal(SteadypullCommand main) {
    this.main = main;
  }

  int open(Optional<String> port, Optional<String> vehicle) throws Exception {
    if (port.isEmpty()) {
      throw new CommandFailure(
          "Could not open the window: no display was found. Name a port to drive in the terminal:"
              + " steadypull --port PORT, or see steadypull --help.");
    }
    main.out().println("No display was found, so this drive runs in the terminal.");
    main.out().flush();
    return new TerminalDrive(main).run(port.get(), vehicle);
  }
}
