package steadypull.store.column;

import java.util.List;

/** Trips whose bytes and paces are measured. */
interface MeasuredTrips {
  /** What they are, for the table. */
  String name();

  /** Headers of the channels in a trip table, {@code id[unit]}, by the number of the channel. */
  List<String> headers();

  /** How many trips there are. */
  int count();

  /** Tells the samples of a trip by ascending time. */
  void tell(int trip, SampleSink sink);
}
