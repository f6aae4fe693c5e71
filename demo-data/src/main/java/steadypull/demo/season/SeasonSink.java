package steadypull.demo.season;

/** Takes what a trip tells, in the order of time. Called by the thread that drives the trip. */
public interface SeasonSink {
  /**
   * One value as it arrived.
   *
   * @param channelHeader id and unit as in a trip table, such as {@code engine_speed[r/min]}; the
   *     same object for every value of a channel
   * @param timeMicros microseconds since the start of the trip, 0 or more
   * @param value finite, in the header's unit, on the grid of whoever told it
   */
  void sample(String channelHeader, long timeMicros, double value);

  /** Something other than a value. */
  void happened(SeasonEvent event);
}
