package steadypull.adapter;

import java.time.Duration;
import java.util.HashSet;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.dialogue.WorkingMode;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.link.LinkException;

/**
 * The vehicle behind an AT-command adapter in the working mode. Made anew whenever the adapter was
 * started: then requests go to everybody. Reader thread only.
 */
final class AdapterVehicle implements VehiclePort {
  /** An adapter's own search may take 20 s. */
  private static final Duration SEARCH_PATIENCE = Duration.ofSeconds(25);

  private static final Duration PATIENCE = Duration.ofSeconds(3);
  private static final Duration SETTING_PATIENCE = Duration.ofSeconds(1);
  private static final Payload SUPPORT_MAP = Payload.ofHex("0100");
  private static final Pattern VOLTS = Pattern.compile("([0-9]{1,2}(\\.[0-9]+)?) ?V?");

  private final AdapterPort port;
  private final MessageBuffer messages = new MessageBuffer();
  private final Set<String> refusedHeaders = new HashSet<>();
  private MessageFormat format = MessageFormat.CAN_11_BIT;
  private String protocolNumber = "";
  private String protocol = "";

  /** Header that was set last; empty while requests go to everybody. */
  private String present = "";

  AdapterVehicle(AdapterPort port) {
    this.port = port;
  }

  @Override
  public String address() {
    return port.address();
  }

  @Override
  public Reply search(String firstProtocol) throws LinkException {
    messages.clear();
    toEverybody();
    port.ask(WorkingMode.search(firstProtocol), PATIENCE);
    Reply reply = port.ask(SUPPORT_MAP.toString(), SEARCH_PATIENCE);
    if (reply instanceof Reply.Data data) {
      protocolNumber = askProtocolNumber();
      format =
          MessageFormat.ofProtocol(protocolNumber)
              .orElseGet(() -> MessageFormat.ofLine(data.lines().getFirst()));
      protocol = text(WorkingMode.PROTOCOL_TEXT);
    }
    return taken(reply);
  }

  /** The digit after the letter that marks automatic choice; empty text if not told. */
  private String askProtocolNumber() throws LinkException {
    String text = text(WorkingMode.PROTOCOL_NUMBER);
    String digit = text.startsWith("A") ? text.substring(1) : text;
    return digit.matches("[1-9]") ? digit : "";
  }

  private String text(String command) throws LinkException {
    return port.ask(command, PATIENCE) instanceof Reply.Text(String text) ? text : "";
  }

  private Reply taken(Reply reply) {
    messages.clear();
    if (reply instanceof Reply.Data data) {
      format.messages(data.lines()).forEach(messages::add);
    }
    return reply;
  }

  @Override
  public Reply ask(VehicleRequest request, Duration patience) throws LinkException {
    messages.clear();
    Reply addressed = request.unit().isEmpty() ? toEverybody() : to(request.unit().get());
    return addressed instanceof Reply.Accepted
        ? taken(port.ask(request.payload().toString(), patience))
        : addressed;
  }

  private Reply toEverybody() throws LinkException {
    if (present.isEmpty()) {
      return new Reply.Accepted();
    }
    // ISO 15765-4: functional request identifiers.
    Reply reply = setHeader(format == MessageFormat.CAN_29_BIT ? "18DB33F1" : "7DF");
    if (reply instanceof Reply.Accepted) {
      present = "";
    }
    return reply;
  }

  private Reply to(String header) throws LinkException {
    if (present.equals(header)) {
      return new Reply.Accepted();
    }
    Reply reply = setHeader(header);
    if (reply instanceof Reply.Accepted) {
      present = header;
    } else if (reply instanceof Reply.NotUnderstood) {
      refusedHeaders.add(header);
    }
    return reply;
  }

  private Reply setHeader(String header) throws LinkException {
    return port.ask(WorkingMode.header(header), SETTING_PATIENCE);
  }

  @Override
  public MessageFormat format() {
    return format;
  }

  @Override
  public String protocolNumber() {
    return protocolNumber;
  }

  @Override
  public String protocol() {
    return protocol;
  }

  @Override
  public MessageBuffer messages() {
    return messages;
  }

  @Override
  public boolean canAddress(String unit) {
    return format.canAddress(unit) && !refusedHeaders.contains(unit);
  }

  @Override
  public long lastTextNanoTime() {
    return port.lastTextNanoTime();
  }

  @Override
  public boolean resynchronise() throws LinkException {
    return port.resynchronise();
  }

  @Override
  public OptionalDouble supplyVolts() throws LinkException {
    Matcher volts = VOLTS.matcher(text(WorkingMode.SUPPLY_VOLTAGE));
    return volts.matches()
        ? OptionalDouble.of(Double.parseDouble(volts.group(1)))
        : OptionalDouble.empty();
  }
}
