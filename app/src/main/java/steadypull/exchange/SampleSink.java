package steadypull.exchange;

import steadypull.channel.Sample;

/**
 * Takes samples as they pass by.
 *
 * @param <X> what may go wrong at the taker's; it ends the reading
 */
@FunctionalInterface
public interface SampleSink<X extends Exception> {
  /** Takes the next sample; times never go back. */
  void accept(Sample sample) throws X;
}
