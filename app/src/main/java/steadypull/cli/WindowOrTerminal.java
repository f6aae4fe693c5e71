package steadypull.cli;

import java.util.Optional;
import steadypull.drive.LiveDrives;
import steadypull.report.ComparisonDesk;
import steadypull.report.LibraryComparisons;
import steadypull.road.memory.RouteLine;
import steadypull.store.TripLibrary;
import steadypull.ui.Displays;
import steadypull.ui.ScreenSettings;
import steadypull.ui.SteadypullWindow;
import steadypull.ui.WindowSettings;

/** Opens the window where there is a display, and drives in the terminal where there is none. */
final class WindowOrTerminal {
  /** What a vehicle is called until somebody gives it a name. */
  private static final String UNNAMED = "My rig";

  private static final String SCREEN_SETTINGS = "screen.properties";

  private final SteadypullCommand main;

  WindowOrTerminal(SteadypullCommand main) {
    this.main = main;
  }

  /** Returns the exit status when the window was closed or the drive has ended. */
  int open(Optional<String> port, Optional<String> vehicle) throws Exception {
    boolean display = Displays.available();
    if (!display && port.isEmpty()) {
      throw new CommandFailure(
          "Could not open the window: expected a display, found none (DISPLAY is not set). Name a"
              + " port to drive in the terminal, as in \"steadypull --port"
              + " demo:long-hot-grade?speed=20\", or see \"steadypull --help\" for the commands.");
    }
    main.requireAddresses(port, Optional.empty());
    Optional<RouteLine> route = main.route();
    try (TripLibrary library = main.openLibrary()) {
      library.roads().learnBeside();
      LiveDrives usual = main.drives(library);
      LiveDrives drives = route.map(usual::following).orElse(usual);
      Optional<String> name = port.isEmpty() ? vehicle : Optional.of(named(drives, port, vehicle));
      return display
          ? window(drives, comparisons(library), port, name)
          : new TerminalDrive(main, drives).run(port.orElseThrow(), name.orElseThrow());
    }
  }

  private static String named(LiveDrives drives, Optional<String> port, Optional<String> vehicle)
      throws Exception {
    return vehicle.isPresent()
        ? vehicle.get()
        : drives.usualVehicle(port.orElseThrow()).orElse(UNNAMED);
  }

  private ComparisonDesk comparisons(TripLibrary library) {
    return new LibraryComparisons(
        library, main.libraryFolder(), main.program().wall(), main.program().version());
  }

  private int window(
      LiveDrives drives,
      ComparisonDesk comparisons,
      Optional<String> port,
      Optional<String> vehicle)
      throws Exception {
    WindowSettings settings =
        new WindowSettings(
            port,
            vehicle,
            main.locale(),
            main.format().system(),
            ScreenSettings.in(main.libraryFolder().resolve(SCREEN_SETTINGS)));
    try (SealingDesk desk = new SealingDesk(drives)) {
      SteadypullWindow window = new SteadypullWindow(desk, comparisons, settings);
      try (var _ = StopSignals.call(window::leave)) {
        window.open();
      }
    }
    return 0;
  }
}
