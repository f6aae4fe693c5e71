package steadypull.thermal;

import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Sample;

/**
 * The course of each channel: what the physical models make of it, held against what its own
 * readings lead to. Pipeline thread only.
 */
final class OwnCourses {
  private final StoreSet stores;
  private final PlateauSet plateaus = new PlateauSet(HorizonGrid.secondsAhead());

  OwnCourses(StoreSet stores) {
    this.stores = stores;
  }

  /** Takes a sample; those that are no temperature are left aside. */
  void accept(Sample sample) {
    plateaus.accept(sample);
  }

  /**
   * Moves on to a moment.
   *
   * @param kilowatts held; empty if nothing tells the load
   * @param kilometresPerHour of the road, if it is told
   */
  void advance(double seconds, OptionalDouble kilowatts, OptionalDouble kilometresPerHour) {
    plateaus.advance(seconds, kilowatts, kilometresPerHour);
  }

  /**
   * Holds model and readings of one channel against each other.
   *
   * @param held courses under the present load, by store, as far as models are judged by them
   */
  void weigh(Store store, double seconds, Optional<double[][][]> held) {
    held.ifPresentOrElse(
        draws ->
            plateaus.weigh(
                store, seconds, stores.celsius(store).orElseThrow(), draws[store.index()]),
        () -> plateaus.follow(store, seconds));
  }

  /** Finds what a channel's own readings know better than its model under the present load. */
  void mend(Store store, Outlook held, boolean isPowerMeasured) {
    plateaus.mend(store, physical(store, held), stores.hasInputs(store) && isPowerMeasured);
  }

  /** As the physical model has it. */
  Courses physical(Store store, Outlook outlook) {
    return new Courses(
        stores.celsius(store).orElseThrow(), outlook.draws(store), outlook.settled(store));
  }

  /**
   * The same, mended by what the channel's own readings lead to. Exhaust is at its plateau within
   * half a minute of any load: its readings are either there already, and the model with them, or
   * on a rise so steep that they seem to lead anywhere.
   */
  Courses corrected(Store store, Outlook outlook) {
    Courses physical = physical(store, outlook);
    return store == Store.EXHAUST ? physical : plateaus.corrected(store, physical);
  }

  /** As its own readings have it, without any model; empty if they lead nowhere. */
  Optional<Courses> alone(Store store, double seconds, double factor) {
    return plateaus.alone(store, seconds, factor);
  }
}
