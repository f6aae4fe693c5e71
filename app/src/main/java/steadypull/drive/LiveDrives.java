package steadypull.drive;

import java.time.InstantSource;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.capture.Capture;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.ListeningSource;
import steadypull.road.RoadSight;
import steadypull.road.memory.RouteLine;
import steadypull.store.Backup;
import steadypull.store.LibraryException;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;
import steadypull.tablet.Tablet;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.RigMasses;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.role.RoleFinding;

/**
 * Opens live drives: the place where ports, library, rules and the wall's clock meet. Any thread.
 */
public final class LiveDrives implements DriveDesk {
  private final TripLibrary library;
  private final PortBook ports;
  private final DriveWords words;
  private final InstantSource wall;
  private final String softwareVersion;
  private final Optional<String> receiver;
  private final Optional<RouteLine> route;
  private final Tablet tablet;
  private final KeptTrips trips;

  /**
   * A desk over one library.
   *
   * @param library open; not closed here
   * @param offers further kinds of links
   * @param words language, units and rules
   * @param wall tells when a trip begins
   * @param softwareVersion kept with each trip
   */
  public LiveDrives(
      TripLibrary library,
      List<LinkOffer> offers,
      DriveWords words,
      InstantSource wall,
      String softwareVersion) {
    this(
        library,
        new PortBook(offers),
        words,
        wall,
        softwareVersion,
        Optional.empty(),
        Optional.empty(),
        Tablet.unwatched());
  }

  private LiveDrives(
      TripLibrary library,
      PortBook ports,
      DriveWords words,
      InstantSource wall,
      String softwareVersion,
      Optional<String> receiver,
      Optional<RouteLine> route,
      Tablet tablet) {
    this.library = library;
    this.ports = ports;
    this.words = words;
    this.wall = wall;
    this.softwareVersion = softwareVersion;
    this.receiver = receiver;
    this.route = route;
    this.tablet = tablet;
    this.trips = new KeptTrips(library, words, wall);
  }

  /**
   * The same desk with a satellite receiver for every drive that names none itself.
   *
   * @param address a device, {@code tcp://host:port} or {@code demo-receiver:SCENARIO}
   */
  public LiveDrives listeningTo(String address) {
    return new LiveDrives(
        library, ports, words, wall, softwareVersion, Optional.of(address), route, tablet);
  }

  /**
   * The same desk with a route for every drive: it tells the road ahead while a receiver says that
   * the vehicle is on it. It is looked at and kept nowhere.
   */
  public LiveDrives following(RouteLine line) {
    return new LiveDrives(
        library, ports, words, wall, softwareVersion, receiver, Optional.of(line), tablet);
  }

  /**
   * The same desk on a tablet that is watched and kept awake while a drive lasts.
   *
   * @param watched the machine that records
   */
  public LiveDrives on(Tablet watched) {
    return new LiveDrives(library, ports, words, wall, softwareVersion, receiver, route, watched);
  }

  @Override
  public List<PortChoice> ports() {
    return ports.choices();
  }

  @Override
  public TripDesk trips() {
    return trips;
  }

  @Override
  public int leftBehind() {
    return library.recovered().size();
  }

  @Override
  public List<String> vehicleNames() {
    try {
      return library.vehicleNames();
    } catch (LibraryException unreadable) {
      // The screen still lets a name be typed; opening the drive reports the trouble in words.
      return List.of();
    }
  }

  @Override
  public Backup backUp() throws DriveException {
    try {
      return library.backUpBeside(wall.instant());
    } catch (LibraryException refused) {
      throw new DriveException(FaultText.of(refused), refused);
    }
  }

  @Override
  public VehicleSensors sensors(String vehicleName) throws DriveException {
    try {
      Optional<Vehicle> vehicle = library.vehicle(vehicleName);
      if (vehicle.isEmpty()) {
        throw new DriveException(
            "Could not tell the sensors of \"%s\": the library does not know this vehicle. Drive it first."
                .formatted(vehicleName),
            null);
      }
      return VehicleSensors.of(vehicle.get(), library);
    } catch (LibraryException refused) {
      throw new DriveException(FaultText.of(refused), refused);
    }
  }

  @Override
  public VehicleSensors confirm(String vehicleName, List<RoleFinding.Proposed> proposals)
      throws DriveException {
    VehicleSensors confirmed = sensors(vehicleName).confirming(proposals);
    try {
      library.save(confirmed.vehicle());
      return confirmed;
    } catch (LibraryException refused) {
      throw new DriveException(FaultText.of(refused), refused);
    }
  }

  @Override
  public DriveSession open(String address, String vehicleName, Consumer<DriveSnapshot> onSnapshot)
      throws DriveException {
    // A simulated drive from the window is its own vehicle's: it leaves the user's as they are.
    String name = ports.find(address).ownName().orElse(vehicleName);
    DriveRequest request = new DriveRequest(address, name, "", Pace.POLITE, DriveEnd.never());
    return begin(request, new SnapshotsOnly(onSnapshot));
  }

  /**
   * Begins a drive and returns at once.
   *
   * @param observer takes what the pipeline brings forth, on its thread
   * @throws DriveException if the address is malformed or the vehicle cannot be kept
   */
  public RunningDrive begin(DriveRequest request, PipelineOutput observer) throws DriveException {
    FoundPort port = ports.find(request.address());
    Vehicle vehicle = towing(vehicle(request.vehicleName(), port), request.masses());
    Optional<ListeningSource> listened = listened(request);
    Optional<Capture> capture = capture(request, vehicle);
    keep(vehicle, capture);
    DriveSetup setup = words.setup(vehicle, port.offer().isPresent());
    ReaderSettings.Pace pace =
        request.pace() == Pace.FULL ? ReaderSettings.Pace.FULL : ReaderSettings.Pace.POLITE;
    LinkSource source = capture.map(each -> each.around(port.source())).orElse(port.source());
    DriveRoute route =
        new DriveRoute(
            source, setup, pace, request.end(), port.lasts(), listened, this::roads, capture);
    LiveDrive drive = prepared(route, request.details(), observer);
    // What earlier trips could not teach before their program ended.
    library.roads().learnBeside();
    library.heat().learnBeside(new TripTeacher());
    drive.start();
    return drive;
  }

  /** A route, if there is one, and what the library remembers, read beside the drive. */
  private RoadSight roads() {
    RememberedRoad.Reading reading =
        (place, metres, taker) ->
            library
                .roads()
                .readBeside(place.latitudeDegrees(), place.longitudeDegrees(), metres, taker);
    return route
        .<RoadSight>map(line -> new RouteAndMemory(line, reading))
        .orElseGet(() -> new RememberedRoad(reading));
  }

  private LiveDrive prepared(DriveRoute route, TripDetails details, PipelineOutput observer)
      throws DriveException {
    try {
      DriveLog.Keeping keeping =
          new DriveLog.Keeping(library, details, ZoneId.systemDefault(), softwareVersion);
      return new LiveDrive(route, keeping, new LiveDrive.Surroundings(wall, tablet), observer);
    } catch (IllegalArgumentException unreadable) {
      route.capture().ifPresent(Capture::close);
      throw new DriveException(
          "Could not begin a drive with the vehicle \"%s\": %s. Correct the signal in its vehicle file and import it again."
              .formatted(route.setup().vehicle().name(), FaultText.of(unreadable)),
          unreadable);
    }
  }

  /**
   * Refuses addresses that no drive could begin on. Opens nothing, so that it may be asked before
   * anything is made.
   *
   * @param address of an adapter, if one was named
   * @param receiver address of a satellite receiver, if one was named
   * @throws WrongAddressException if one is malformed or nobody's
   * @throws DriveException if what one names cannot be used
   */
  public static void requireAddresses(
      Optional<String> address, Optional<String> receiver, List<LinkOffer> offers)
      throws DriveException {
    PortBook ports = new PortBook(offers);
    if (address.isPresent()) {
      ports.find(address.get());
    }
    if (receiver.isPresent()) {
      ports.findReceiver(receiver.get());
    }
  }

  /** The serial ports of this machine. */
  public static List<PortChoice> serialPorts() {
    return PortBook.serialPorts();
  }

  /**
   * Asks an address for an adapter, and the adapter for a vehicle. Takes seconds where nothing
   * answers; works on the calling thread.
   *
   * @param showsNumber whether the vehicle's identification number is told in full
   * @throws DriveException if the address is malformed
   */
  public static PortFinding probe(String address, List<LinkOffer> offers, boolean showsNumber)
      throws DriveException {
    return PortProbe.probe(new PortBook(offers).find(address).source(), showsNumber);
  }

  /**
   * The vehicle that a drive on this address is for when nobody says so: a simulated vehicle's own
   * name, else the one used last.
   *
   * @return the name; empty if the library knows no vehicle yet
   * @throws DriveException if the address is malformed
   */
  public Optional<String> usualVehicle(String address) throws DriveException {
    Optional<String> own = ports.find(address).ownName();
    return own.isPresent() ? own : vehicleNames().stream().findFirst();
  }

  private Optional<ListeningSource> listened(DriveRequest request) throws DriveException {
    Optional<String> where = request.receiver().or(() -> receiver);
    return where.isPresent() ? Optional.of(ports.findReceiver(where.get())) : Optional.empty();
  }

  private Optional<Capture> capture(DriveRequest request, Vehicle vehicle) throws DriveException {
    return request.rawCapture().isPresent()
        ? Optional.of(
            CaptureFiles.begin(
                request.rawCapture().get(), request, vehicle, wall.instant(), softwareVersion))
        : Optional.empty();
  }

  /** Only a drive that can begin leaves its vehicle in the library. */
  private void keep(Vehicle vehicle, Optional<Capture> capture) throws DriveException {
    try {
      library.save(vehicle);
    } catch (LibraryException refused) {
      capture.ifPresent(Capture::close);
      throw new DriveException(FaultText.of(refused), refused);
    }
  }

  private Vehicle vehicle(String name, FoundPort port) throws DriveException {
    try {
      Optional<Vehicle> known = library.vehicle(name);
      return known.isPresent() ? known.get() : newVehicle(name, port);
    } catch (LibraryException | VehicleFileException | IllegalArgumentException refused) {
      throw new DriveException(FaultText.of(refused), refused);
    }
  }

  private static Vehicle towing(Vehicle vehicle, RigMasses masses) throws DriveException {
    try {
      return vehicle.withRig(masses.applyTo(vehicle.rig()));
    } catch (IllegalArgumentException impossible) {
      throw new DriveException(
          "Could not begin a drive with the vehicle \"%s\": %s. Say both masses, or correct the one that is wrong."
              .formatted(vehicle.name(), FaultText.of(impossible)),
          impossible);
    }
  }

  private static Vehicle newVehicle(String name, FoundPort port) throws VehicleFileException {
    Optional<Vehicle> own = port.ownVehicle();
    return own.isPresent()
        ? own.get().withName(name)
        : Vehicle.unknown(name, CoolingLayout.AIR_TO_AIR);
  }

  private record SnapshotsOnly(Consumer<DriveSnapshot> consumer) implements PipelineOutput {
    @Override
    public void second(DriveSnapshot snapshot) {
      consumer.accept(snapshot);
    }

    @Override
    public void answered(DriveSnapshot snapshot) {
      consumer.accept(snapshot);
    }
  }
}
