package steadypull.cli;

import java.util.Locale;
import java.util.stream.Collectors;
import steadypull.channel.QuantityFormat;
import steadypull.store.LostPart;
import steadypull.store.TripDamage;

/** What of a trip could not be read, for people. */
final class DamageWords {
  /** Done with loss: what can be read was taken, and it is not all. */
  private static final int STATUS = 1;

  private DamageWords() {}

  /** Tells on standard error what is missing, if anything; gives the exit status. */
  static int tell(SteadypullCommand main, TripDamage damage) {
    if (damage.isNone()) {
      return 0;
    }
    main.err()
        .printf(
            "Could not read all of trip %s (library %s): expected every sample%s, found damage: %s."
                + " Everything else was taken, and nothing stands in for what is missing."
                + " \"steadypull check\" tells all that is damaged and puts what can be read into a"
                + " new library; a backup may hold the rest.%n",
            damage.tripId(),
            main.libraryFolder(),
            damage.areEventsLost() ? " and every event" : "",
            missing(damage));
    main.err().flush();
    return STATUS;
  }

  private static String missing(TripDamage damage) {
    String samples =
        damage.parts().stream()
            .map(
                part ->
                    String.format(
                        Locale.ROOT,
                        "%d samples%s from %.1f s to %.1f s",
                        part.samples(),
                        part.ofChannels(),
                        part.fromSeconds(),
                        to(part)))
            .collect(Collectors.joining("; "));
    if (!damage.areEventsLost()) {
      return samples;
    }
    return samples.isEmpty() ? "some events" : samples + "; some events";
  }

  /** One part beside the gaps of a trip. */
  static String gap(LostPart part, QuantityFormat format) {
    return "%s to %s: %d samples%s"
        .formatted(
            format.elapsed((long) part.fromSeconds()),
            format.elapsed((long) to(part)),
            part.samples(),
            part.ofChannels());
  }

  private static double to(LostPart part) {
    return part.toSeconds().orElse(part.fromSeconds());
  }
}
