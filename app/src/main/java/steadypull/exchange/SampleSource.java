package steadypull.exchange;

import java.util.function.Consumer;
import steadypull.channel.Sample;

/**
 * Pours out samples without holding them in memory.
 *
 * @param <X> what may go wrong at the source
 */
@FunctionalInterface
public interface SampleSource<X extends Exception> {
  /** Hands over every sample on the calling thread; what the taker throws comes through. */
  void pourInto(Consumer<Sample> taker) throws X;
}
