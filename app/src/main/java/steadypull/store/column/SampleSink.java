package steadypull.store.column;

/** Takes samples one by one. */
public interface SampleSink {
  /**
   * Takes the next sample.
   *
   * @param channel index in the trip's list of channels, 0 to 65535
   * @param timeMicros microseconds since the start of the trip
   * @param value finite, in the channel's unit
   */
  void sample(int channel, long timeMicros, double value);
}
