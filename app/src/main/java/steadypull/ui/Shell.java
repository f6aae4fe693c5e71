package steadypull.ui;

import java.time.InstantSource;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.LongSupplier;
import javafx.application.Platform;
import steadypull.advice.AdviceLine;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.Diagnosis;
import steadypull.drive.DriveControls;
import steadypull.drive.DriveDesk;
import steadypull.drive.DriveException;
import steadypull.drive.DriveSession;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.PortChoice;
import steadypull.report.ComparisonDesk;

/**
 * Goes from screen to screen and holds the running drive. FX thread only; whatever may wait runs on
 * the executor given.
 */
final class Shell {
  private final DriveDesk desk;
  private final Words words;
  private final Surroundings surroundings;
  private final FittedPane root = new FittedPane();
  private final StartModel start;
  private final MenuScreen menu;
  private final SensorsDesk sensors;
  private final TripExports exports;
  private final CompareDesk comparing;

  private UnitSystem units;
  private LightChoice light;
  private SoundChoice sound;
  private Optional<Running> running = Optional.empty();
  private boolean isDriveShown;

  /**
   * What lies around the screens.
   *
   * @param zone time zone of the clock
   * @param clock tells day from night while nothing drives
   * @param nanoTime a clock that does not run backwards
   * @param background runs what may wait, one after the other
   * @param library reads and changes trips, one after the other
   * @param exporting writes files
   * @param settings what the screen remembers
   * @param comparisons compares kept trips
   * @param voice says aloud what asks for an answer
   */
  record Surroundings(
      ZoneId zone,
      InstantSource clock,
      LongSupplier nanoTime,
      Executor background,
      Executor library,
      Executor exporting,
      ScreenSettings settings,
      ComparisonDesk comparisons,
      Voice voice) {}

  private record Running(DriveSession session, DriveModel model, DriveScreen screen) {}

  Shell(DriveDesk desk, Words words, UnitSystem units, Surroundings surroundings) {
    this.desk = desk;
    this.words = words;
    this.units = units;
    this.surroundings = surroundings;
    this.light = surroundings.settings().light();
    this.sound = surroundings.settings().sound();
    this.start = new StartModel(desk.leftBehind());
    this.sensors = new SensorsDesk(desk, words, surroundings.background());
    this.comparing = new CompareDesk(surroundings.comparisons(), words, surroundings.library());
    this.exports = new TripExports(desk.trips(), words, surroundings.exporting());
    this.menu =
        new MenuScreen(
            words,
            new MenuScreen.Actions(
                this::showDrive,
                this::endDrive,
                this::changeUnits,
                this::changeLight,
                this::changeSound,
                this::driveSensors,
                () -> openTrips(this::showMenu),
                this::codes,
                () -> compare(this::showMenu),
                this::backup,
                this::about));
    applyLight(LocalTime.ofInstant(surroundings.clock().instant(), surroundings.zone()));
  }

  /** The root of the scene. */
  FittedPane root() {
    return root;
  }

  /** Shows the start screen and looks for ports. */
  void showStart() {
    isDriveShown = false;
    root.show(
        new StartScreen(
            words,
            start,
            this::look,
            this::chosenSensors,
            () -> openTrips(this::showStart),
            () -> compare(this::showStart),
            this::beginChosen));
    look();
  }

  private void look() {
    start.look();
    surroundings.background().execute(this::find);
  }

  private void find() {
    List<String> vehicles = desk.vehicleNames();
    List<PortChoice> ports = desk.ports();
    FxThread.run(() -> start.found(vehicles, ports, words.say("start.newVehicleName")));
  }

  private void beginChosen() {
    StartModel.Choice choice = start.choiceProperty().get();
    choice.port().ifPresent(port -> begin(port.address(), Optional.of(choice.vehicle())));
  }

  /**
   * Begins a drive; the screen follows when the port is open.
   *
   * @param vehicle name, or the last used one if empty
   */
  void begin(String address, Optional<String> vehicle) {
    start.setStage(new StartModel.Stage.Opening());
    DriveModel model = newModel();
    Announcer announcer = new Announcer();
    SnapshotRelay relay =
        new SnapshotRelay(
            snapshot -> {
              take(model, snapshot);
              announce(announcer, snapshot);
            },
            surroundings.nanoTime());
    surroundings.background().execute(() -> open(address, vehicle, model, relay));
  }

  private void open(
      String address,
      Optional<String> vehicle,
      DriveModel model,
      Consumer<DriveSnapshot> onSnapshot) {
    try {
      DriveSession session = desk.open(address, vehicle.orElseGet(this::lastVehicle), onSnapshot);
      FxThread.run(() -> opened(session, model, true));
    } catch (DriveException refused) {
      FxThread.run(() -> refuse(String.valueOf(refused.getMessage())));
    }
  }

  private String lastVehicle() {
    return desk.vehicleNames().stream()
        .findFirst()
        .orElseGet(() -> words.say("start.newVehicleName"));
  }

  private void refuse(String message) {
    showStart();
    start.setStage(new StartModel.Stage.Refused(message));
  }

  private void opened(DriveSession session, DriveModel model, boolean isRecorded) {
    start.setStage(new StartModel.Stage.Asking());
    boolean moves = !Platform.getPreferences().isReducedMotion();
    DriveScreen screen = new DriveScreen(words, model, actions(session), moves);
    if (!isRecorded) {
      screen.withoutMark();
    }
    running = Optional.of(new Running(session, model, screen));
    session.speakIn(units);
    menu.showEnding(false);
    showDrive();
  }

  private DriveActions actions(DriveControls controls) {
    return new DriveActions(
        controls::mark,
        controls::acknowledge,
        controls::snooze,
        controls::show,
        this::toggleLight,
        this::showMenu);
  }

  private void take(DriveModel model, DriveSnapshot snapshot) {
    boolean callsBack = callsBack(model, snapshot);
    model.show(snapshot);
    applyLight(LocalTime.ofInstant(snapshot.clock(), surroundings.zone()));
    if (callsBack && !isDriveShown && running.isPresent()) {
      showDrive();
    }
  }

  /** A trip that is played back is looked at, not driven: only drives are told aloud. */
  private void announce(Announcer announcer, DriveSnapshot snapshot) {
    AdviceLine line = snapshot.advice();
    announcer
        .step(snapshot.timeMicros(), line)
        .filter(level -> sound.volume(level) > 0)
        .ifPresent(
            level ->
                surroundings
                    .voice()
                    .say(level, sound.volume(level), sound.speaks() ? line.action() : ""));
  }

  /** Whether the advice has become louder, so that the drive must be seen whatever is shown. */
  private static boolean callsBack(DriveModel model, DriveSnapshot snapshot) {
    AdviceLine line = snapshot.advice();
    boolean isLoud =
        line.state() == AdviceLine.State.ADVISE || line.state() == AdviceLine.State.ACT_NOW;
    return isLoud
        && line.response() instanceof AdviceLine.Response.None
        && model.adviceState().filter(line.state()::equals).isEmpty();
  }

  private void showDrive() {
    running.ifPresentOrElse(
        drive -> {
          isDriveShown = true;
          root.show(drive.screen());
        },
        this::showStart);
  }

  private void showMenu() {
    isDriveShown = false;
    menu.show(units, light, sound);
    root.show(menu);
    menu.focus();
  }

  private void codes() {
    Diagnosis told = running.map(drive -> drive.model().diagnosis()).orElseGet(Diagnosis::none);
    root.show(new CodesScreen(words, told, this::showMenu));
  }

  private void compare(Runnable back) {
    isDriveShown = false;
    comparing.look();
    root.show(
        new CompareScreen(
            words,
            new QuantityFormat(words.locale(), units),
            comparing,
            new CompareScreen.Ways(new FileDialog(words, root), back)));
  }

  private void backup() {
    BackupScreen screen = new BackupScreen(words, this::showMenu);
    root.show(screen);
    surroundings.background().execute(() -> screen.copy(desk));
  }

  private void about() {
    root.show(new AboutScreen(words, this::showMenu));
  }

  private void chosenSensors() {
    sensors.open(start.choiceProperty().get().vehicle(), units, root, this::showStart);
  }

  private void driveSensors() {
    running
        .flatMap(drive -> drive.model().vehicleName())
        .ifPresent(name -> sensors.open(name, units, root, this::showMenu));
  }

  private void openTrips(Runnable back) {
    isDriveShown = false;
    TripsDesk trips = new TripsDesk(desk.trips(), words, surroundings.library(), exports);
    TripsScreen screen =
        new TripsScreen(
            words,
            new QuantityFormat(words.locale(), units),
            trips,
            new TripsScreen.Ways(
                running.isPresent(),
                new FileDialog(words, root),
                trip -> playBack(trip.id()),
                back));
    root.show(screen);
    screen.focus();
    trips.look(TripQuery.ALL);
  }

  /** Drives a kept trip once more. */
  private void playBack(String tripId) {
    DriveModel model = newModel();
    SnapshotRelay relay =
        new SnapshotRelay(snapshot -> take(model, snapshot), surroundings.nanoTime());
    surroundings
        .background()
        .execute(
            () -> {
              try {
                DriveSession session = desk.trips().playBack(tripId, relay);
                FxThread.run(() -> opened(session, model, false));
              } catch (DriveException refused) {
                FxThread.run(() -> refuse(String.valueOf(refused.getMessage())));
              }
            });
  }

  private DriveModel newModel() {
    return new DriveModel(
        words,
        new QuantityFormat(words.locale(), units),
        surroundings.zone(),
        surroundings.nanoTime());
  }

  private void changeUnits() {
    units =
        switch (units) {
          case METRIC -> UnitSystem.IMPERIAL;
          case IMPERIAL -> UnitSystem.METRIC;
        };
    QuantityFormat quantities = new QuantityFormat(words.locale(), units);
    running.ifPresent(drive -> drive.model().setQuantities(quantities));
    running.ifPresent(drive -> drive.session().speakIn(units));
    menu.show(units, light, sound);
  }

  private void changeLight() {
    setLight(light.next());
    menu.show(units, light, sound);
  }

  private void changeSound() {
    sound = sound.next();
    surroundings.settings().keep(sound);
    menu.show(units, light, sound);
  }

  private void toggleLight() {
    setLight(root.light() == Light.DAY ? LightChoice.NIGHT : LightChoice.DAY);
  }

  private void setLight(LightChoice chosen) {
    light = chosen;
    surroundings.settings().keep(chosen);
    applyLight(LocalTime.ofInstant(surroundings.clock().instant(), surroundings.zone()));
  }

  private void applyLight(LocalTime time) {
    Light wanted = light.at(time);
    if (wanted != root.light()) {
      root.setLight(wanted);
    }
  }

  private void endDrive() {
    menu.showEnding(true);
    endDrive(this::showStart);
  }

  /**
   * Ends the drive, if one runs, and what is being exported, and goes on when its trip is sealed
   * and all else is kept.
   */
  void leave(Runnable after) {
    endDrive(() -> exports.stopAndThen(after));
  }

  private void endDrive(Runnable after) {
    root.leaving();
    Optional<Running> ending = running;
    running = Optional.empty();
    surroundings
        .background()
        .execute(
            () -> {
              ending.ifPresent(drive -> drive.session().close());
              FxThread.run(after);
            });
  }
}
