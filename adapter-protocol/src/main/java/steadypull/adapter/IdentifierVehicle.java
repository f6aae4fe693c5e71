package steadypull.adapter;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import steadypull.adapter.diagnostic.ParametersByIdentifier;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.link.LinkException;

/**
 * A vehicle that may tell its parameters behind data identifiers only. Where nobody answers service
 * 01, the search asks for the first identifier; if that is answered, every request is turned into
 * its counterpart and every answer back, so that above this wall the vehicle is like any other.
 * Reader thread only.
 */
final class IdentifierVehicle implements VehiclePort {
  /** Behind the protocol's number where parameters stand behind identifiers. */
  private static final String MARK = "U";

  private final VehiclePort port;
  private final MessageBuffer messages = new MessageBuffer();
  private ParametersByIdentifier parameters = new ParametersByIdentifier();
  private boolean isByIdentifier;

  IdentifierVehicle(VehiclePort port) {
    this.port = port;
  }

  @Override
  public Reply search(String firstProtocol) throws LinkException {
    boolean wasByIdentifier = firstProtocol.endsWith(MARK);
    String first = firstProtocol.replace(MARK, "");
    isByIdentifier = false;
    if (wasByIdentifier && searchByIdentifier(first)) {
      return Reply.Data.PLAIN;
    }
    Reply reply = port.search(first);
    boolean isWorthAsking = reply instanceof Reply.NoData || reply instanceof Reply.NotConnected;
    return isWorthAsking && !wasByIdentifier && searchByIdentifier(first)
        ? Reply.Data.PLAIN
        : reply;
  }

  /** Whether a control unit tells parameters by identifier; then its answer is taken. */
  private boolean searchByIdentifier(String first) throws LinkException {
    Payload asked = Payload.ofHex("0100");
    if (port.searchCan(first, ParametersByIdentifier.FIRST_MAP) instanceof Reply.Data) {
      parameters = new ParametersByIdentifier();
      messages.clear();
      take(asked);
      for (Message message : messages.messages()) {
        isByIdentifier |= message.payload().startsWith(0x41, 0x00);
      }
    }
    return isByIdentifier;
  }

  private void take(Payload asked) {
    for (Message message : port.messages().messages()) {
      Payload turned = parameters.answer(asked, message.controlUnit(), message.payload());
      messages.add(new Message(message.controlUnit(), turned));
    }
  }

  @Override
  public Reply searchCan(String firstProtocol, Payload question) throws LinkException {
    return port.searchCan(firstProtocol, question);
  }

  @Override
  public Reply ask(VehicleRequest request, Duration patience) throws LinkException {
    if (!isByIdentifier) {
      return port.ask(request, patience);
    }
    messages.clear();
    Reply reply = new Reply.NoData();
    for (Payload part : parts(request.payload())) {
      reply = better(reply, askPart(request, part, patience));
    }
    return reply;
  }

  /** Parameters whose lengths are not known yet have to be asked for one by one. */
  private List<Payload> parts(Payload payload) {
    boolean isSeveral = payload.at(0) == 0x01 && payload.size() > 2;
    if (!isSeveral || (parameters.isLearnt(payload) && payload.size() - 1 <= mostParameters())) {
      return List.of(payload);
    }
    List<Payload> parts = new ArrayList<>();
    for (int i = 1; i < payload.size(); i++) {
      parts.add(Payload.of(new byte[] {0x01, (byte) payload.at(i)}));
    }
    return parts;
  }

  private Reply askPart(VehicleRequest request, Payload part, Duration patience)
      throws LinkException {
    Optional<Payload> turned = parameters.question(part);
    if (turned.isEmpty()) {
      return new Reply.NoData();
    }
    Payload question = turned.get();
    // Every identifier is a byte longer than a parameter's number, in the answer too.
    boolean isWhole = part.equals(request.payload()) && request.answerBytes() > 0;
    int answerBytes = isWhole ? request.answerBytes() + question.size() - part.size() : 0;
    Reply reply = port.ask(new VehicleRequest(request.unit(), question, answerBytes), patience);
    take(part);
    return reply;
  }

  /** Of the replies to parts of one request the one that brought data, else the last. */
  private static Reply better(Reply before, Reply now) {
    return before instanceof Reply.Data ? before : now;
  }

  @Override
  public String address() {
    return port.address();
  }

  @Override
  public MessageFormat format() {
    return port.format();
  }

  @Override
  public String protocolNumber() {
    String number = port.protocolNumber();
    return isByIdentifier ? number + MARK : number;
  }

  @Override
  public String protocol() {
    return isByIdentifier ? port.protocol() + ", by identifier" : port.protocol();
  }

  @Override
  public MessageBuffer messages() {
    return isByIdentifier ? messages : port.messages();
  }

  @Override
  public boolean canAddress(String unit) {
    return port.canAddress(unit);
  }

  @Override
  public int mostParameters() {
    return isByIdentifier ? ParametersByIdentifier.MOST_PARAMETERS : port.mostParameters();
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
  public void closeProtocol() throws LinkException {
    port.closeProtocol();
  }

  @Override
  public boolean speaksUnasked() throws LinkException {
    return port.speaksUnasked();
  }

  @Override
  public Reply askSupply() throws LinkException {
    return port.askSupply();
  }
}
