package steadypull.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkProvider;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.ListeningSource;
import steadypull.adapter.link.MalformedAddressException;
import steadypull.adapter.link.SerialLinks;
import steadypull.adapter.link.TcpLinks;

/**
 * Knows every place where an adapter or a satellite receiver may be: the offers of the program,
 * captures, TCP and the serial ports of this machine. Opens nothing. Immutable.
 *
 * @param offers further kinds of links; asked before the ports of this machine
 */
record PortBook(List<LinkOffer> offers) {
  private static final List<LinkProvider> MACHINE = List.of(new TcpLinks(), new SerialLinks());

  PortBook {
    offers = List.copyOf(offers);
  }

  /** What can be chosen from a list: adapters' usual ports, then offers, then unlikely ports. */
  List<PortChoice> choices() {
    List<PortChoice> serial = serialPorts();
    List<PortChoice> choices = new ArrayList<>(serial);
    choices.removeIf(PortBook::isOnBoard);
    offers.forEach(offer -> choices.addAll(offer.choices()));
    serial.stream().filter(PortBook::isOnBoard).forEach(choices::add);
    return List.copyOf(choices);
  }

  /** The serial ports of this machine. */
  static List<PortChoice> serialPorts() {
    return SerialLinks.list().stream()
        .map(port -> new PortChoice(port.name(), port.name(), port.description(), false))
        .toList();
  }

  /** A serial port soldered to the machine: hardly ever has an adapter on it. */
  private static boolean isOnBoard(PortChoice port) {
    return port.address().matches("/dev/ttyS\\d+");
  }

  /**
   * Recognises the address of an adapter.
   *
   * @throws WrongAddressException if the address is malformed or nobody's
   * @throws DriveException if what it names cannot be used
   */
  FoundPort find(String address) throws DriveException {
    try {
      Optional<FoundPort> offered = offered(address);
      Optional<FoundPort> found = offered.isPresent() ? offered : ofMachine(address);
      return found.orElseThrow(() -> unknown(address));
    } catch (LinkException refused) {
      throw refusal(refused);
    }
  }

  private Optional<FoundPort> offered(String address) throws LinkException {
    List<LinkOffer> all = new ArrayList<>(offers);
    all.add(CaptureFiles.offer());
    for (LinkOffer offer : all) {
      Optional<LinkSource> found = offer.provider().find(address);
      if (found.isPresent()) {
        return Optional.of(new FoundPort(found.get(), Optional.of(offer)));
      }
    }
    return Optional.empty();
  }

  private static Optional<FoundPort> ofMachine(String address) throws LinkException {
    for (LinkProvider provider : MACHINE) {
      Optional<LinkSource> found = provider.find(address);
      if (found.isPresent()) {
        return Optional.of(new FoundPort(found.get(), Optional.empty()));
      }
    }
    return Optional.empty();
  }

  private static DriveException refusal(LinkException refused) {
    String message = FaultText.of(refused);
    return refused instanceof MalformedAddressException
        ? new WrongAddressException(message, refused)
        : new DriveException(message, refused);
  }

  private static DriveException unknown(String address) {
    return new WrongAddressException(
        ("Could not open \"%s\": expected a serial device, tcp://host:port, capture:FILE or"
                + " demo:SCENARIO, found none of these. \"steadypull ports\" and \"steadypull"
                + " scenarios\" list them.")
            .formatted(address),
        null);
  }

  /**
   * Recognises the address of a satellite receiver.
   *
   * @throws WrongAddressException if the address is malformed or nobody's
   * @throws DriveException if what it names cannot be used
   */
  ListeningSource findReceiver(String address) throws DriveException {
    List<LinkProvider> providers = new ArrayList<>();
    offers.forEach(offer -> providers.add(offer.receivers()));
    providers.addAll(MACHINE);
    try {
      return ListeningSource.find(address, providers).orElseThrow(() -> unknownReceiver(address));
    } catch (LinkException refused) {
      throw refusal(refused);
    }
  }

  private static DriveException unknownReceiver(String address) {
    return new WrongAddressException(
        "Could not listen to a satellite receiver at \"%s\": expected a serial device, tcp://host:port or demo-receiver:SCENARIO, found none of these. \"steadypull ports\" lists the devices."
            .formatted(address),
        null);
  }
}
