package steadypull.demo.bench;

import java.util.OptionalLong;

/**
 * An adapter on the bench: characters in, characters out, each at its moment on the bench's clock.
 * Moments never run backwards. No I/O and no clock of its own. Used by one thread at a time.
 */
interface BenchAdapter {

  /** Takes one character that has arrived at a moment. */
  void hear(byte character, long nanos);

  /** Takes what has been sent by a moment. */
  byte[] take(long nanos);

  /** When something may be to be taken next, if that can be told. */
  OptionalLong nextNanos();

  /** The adapter that settings describe, with a vehicle at its plug. */
  static BenchAdapter of(BenchSettings settings) {
    boolean isSerialCan = settings.adapter().has(AdapterTrait.SERIAL_CAN);
    BenchAdapter adapter = isSerialCan ? new SerialCanAdapter(settings) : new AtAdapter(settings);
    return new TroubledLine(adapter, settings);
  }
}
