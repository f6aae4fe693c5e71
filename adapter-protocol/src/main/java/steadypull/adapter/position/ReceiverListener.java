package steadypull.adapter.position;

/** Takes what a receiver tells; called on the thread that runs it. */
public interface ReceiverListener {

  /** One report for each moment that the receiver speaks of, in order of arrival. */
  void report(PositionReport report);

  /** The receiver's state has changed; never twice the same in a row. */
  void receiverState(ReceiverState state, long nanoTime);
}
