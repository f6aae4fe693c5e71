package steadypull.store.column;

/**
 * Samples of one channel that are damaged. Immutable.
 *
 * @param channel index in the trip's list of channels
 * @param samples how many, at least one
 * @param fromMicros none came before, microseconds since the start of the trip
 * @param toMicros none came after
 */
public record LostSamples(int channel, int samples, long fromMicros, long toMicros) {}
