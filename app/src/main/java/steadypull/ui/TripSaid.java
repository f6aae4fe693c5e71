package steadypull.ui;

import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import steadypull.channel.QuantityFormat;
import steadypull.drive.WholeTrip;
import steadypull.store.TripDetails;

/**
 * What stands in the fields in which a trip is described, as it was typed. Immutable.
 *
 * @param tags with commas between
 * @param outsideTemperature in the reader's unit
 * @param mass of vehicle and trailer, in the reader's unit
 * @param trailerMass of the trailer alone, in the reader's unit
 */
record TripSaid(
    String label,
    String note,
    String tags,
    String fitted,
    String outside,
    String outsideTemperature,
    String mass,
    String trailerMass) {

  /** What is known, as somebody would have typed it. */
  static TripSaid of(WholeTrip trip, QuantityFormat quantities) {
    TripDetails details = trip.summary().details();
    return new TripSaid(
        details.label(),
        details.note(),
        String.join(", ", details.tags()),
        details.fitted(),
        details.outside(),
        text(details.outsideCelsius(), quantities::typedTemperature),
        text(trip.rig().massKilograms(), quantities::typedMass),
        text(trip.rig().trailerMassKilograms(), quantities::typedMass));
  }

  private static String text(OptionalDouble value, DoubleFunction<String> typed) {
    return value.isPresent() ? typed.apply(value.getAsDouble()) : "";
  }
}
