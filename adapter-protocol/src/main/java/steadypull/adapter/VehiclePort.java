package steadypull.adapter;

import java.time.Duration;
import java.util.OptionalDouble;
import steadypull.adapter.diagnostic.Requests;
import steadypull.adapter.dialogue.Reply;
import steadypull.adapter.frame.MessageBuffer;
import steadypull.adapter.frame.MessageFormat;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.link.LinkException;

/**
 * The wall between what is asked of a vehicle and how an adapter is made to ask it. Above it are
 * requests and messages in bytes; the lines or frames that carry them are the business of the
 * implementation. Reader thread only.
 */
interface VehiclePort {

  /** The port or host, as the user wrote it. */
  String address();

  /**
   * Looks for the vehicle's protocol by asking everybody for service 01, parameter 00.
   *
   * @param firstProtocol number of the protocol to try first, one hex digit 1 to 9, or empty text
   * @return {@link Reply.Data} if a control unit answered: then {@link #messages} holds the answers
   *     and format and protocol are known; or what came instead
   */
  Reply search(String firstProtocol) throws LinkException;

  /**
   * Looks for the protocol of a vehicle on CAN that may not know service 01, by asking everybody a
   * question of its own.
   *
   * @param firstProtocol as for {@link #search}
   * @param question service and what follows, 1 to 7 bytes
   * @return as for {@link #search}
   */
  Reply searchCan(String firstProtocol, Payload question) throws LinkException;

  /** How messages come; defined once a search was answered. */
  MessageFormat format();

  /** Number of the protocol, one hex digit 1 to 9, or empty text if the adapter does not tell. */
  String protocolNumber();

  /** The protocol in words, or empty text. */
  String protocol();

  /**
   * Asks and waits for the end of the reply.
   *
   * @param patience how long to wait for it when nothing comes at all
   * @return {@link Reply.Data} if the vehicle answered: then {@link #messages} holds what was sound
   *     of it, perhaps nothing; or what came instead, silence also when the reader is to stop
   */
  Reply ask(VehicleRequest request, Duration patience) throws LinkException;

  /** What the last request or search brought; empty unless it was {@link Reply.Data}. */
  MessageBuffer messages();

  /** Whether a control unit can be addressed so; false once the adapter refused its header. */
  boolean canAddress(String unit);

  /** How many parameters one request of service 01 may ask for: 1 to 6. */
  default int mostParameters() {
    return format().isCan() ? Requests.MOST_PARAMETERS : 1;
  }

  /** When the last byte of the last reply that belongs to a message or text arrived. */
  long lastTextNanoTime();

  /**
   * Ends whatever the adapter is busy with after {@link Reply.Silence}.
   *
   * @return whether it is ready for the next request
   */
  boolean resynchronise() throws LinkException;

  /**
   * Whether the adapter has told unasked that it restarted; that it goes to sleep is another
   * matter. Returns at once.
   */
  default boolean tellsRestart() throws LinkException {
    return false;
  }

  /** Ends the session with the vehicle; the next search begins another. */
  void closeProtocol() throws LinkException;

  /** The supply voltage at the plug without traffic on the bus; empty if it cannot be told. */
  default OptionalDouble supplyVolts() throws LinkException {
    return SupplyVoltage.of(askSupply());
  }

  /**
   * Asks the adapter itself for the supply voltage at the plug, without traffic on the bus.
   *
   * @return {@link Reply.Text} with the voltage; or what came instead, such as a restart
   */
  default Reply askSupply() throws LinkException {
    return new Reply.NotUnderstood();
  }
}
