package steadypull.adapter;

import java.util.List;
import java.util.Optional;
import steadypull.adapter.frame.Message;

/**
 * A few questions that belong together and are put to everybody one by one, between the polls.
 * Reader thread only.
 */
interface Inquiry {

  /** The next request in hex; empty once everything was asked. */
  Optional<String> request();

  /**
   * Takes what came to the request that was given last, and moves on.
   *
   * @param messages whole messages; none if nobody answered
   */
  void take(List<Message> messages);

  /**
   * Tells what was found, once everything was asked.
   *
   * @param nanoTime when the last answer came, on the link's clock
   * @return what is to be asked because of it
   */
  Optional<Inquiry> finish(ReaderListener listener, long nanoTime);
}
