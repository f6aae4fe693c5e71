package steadypull.vehicle;

import java.util.List;

/**
 * The beginning of a derate as a trip showed it. Immutable.
 *
 * @param channelId the channel that was nearest to its limit, or farthest over it
 * @param celsius its temperature then, degC
 * @param alsoHot other channels that were near or over theirs; with one of these nobody can say
 *     which it was
 */
public record DerateBegun(String channelId, double celsius, List<String> alsoHot) {
  public DerateBegun {
    alsoHot = List.copyOf(alsoHot);
    if (channelId.isBlank() || !(celsius >= -40 && celsius <= 1200)) {
      throw new IllegalArgumentException(
          "A derate begins at a channel between -40 and 1200 degC, found %s at %s"
              .formatted(channelId, celsius));
    }
  }
}
