package steadypull.demo.season;

import java.util.List;

/** Something of a trip that is no sample. A closed set; times in microseconds of the trip. */
public sealed interface SeasonEvent {

  /** When it happened, microseconds since the start of the trip, 0 or more. */
  long timeMicros();

  /**
   * The user marked the moment.
   *
   * @param text the user's words, not blank
   */
  record Mark(long timeMicros, String text) implements SeasonEvent {}

  /** The adapter no longer answers. */
  record LinkLost(long timeMicros) implements SeasonEvent {}

  /** The adapter answers again; the next samples follow. */
  record LinkBack(long timeMicros) implements SeasonEvent {}

  /** The engine stands still and the ignition is on; samples go on. */
  record EngineStopped(long timeMicros) implements SeasonEvent {}

  /**
   * The engine's control unit told its trouble codes for the first time, or others than before.
   *
   * @param stored confirmed codes (SAE J1979 service 03) such as P026A; may be empty
   * @param pending codes of this or the last driving cycle (service 07); may be empty
   */
  record CodesTold(long timeMicros, List<String> stored, List<String> pending)
      implements SeasonEvent {
    public CodesTold {
      stored = List.copyOf(stored);
      pending = List.copyOf(pending);
    }
  }
}
