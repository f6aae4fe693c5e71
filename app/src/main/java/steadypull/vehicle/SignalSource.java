package steadypull.vehicle;

import java.util.Objects;

/**
 * Which signal of the vehicle feeds a channel: the sensor's role.
 *
 * @param channelId the channel that is fed
 * @param signalKey key of the adapter's signal, such as {@code 01.77.1} or {@code 22.1E1C.0}
 */
public record SignalSource(String channelId, String signalKey) {
  public SignalSource {
    Objects.requireNonNull(channelId);
    if (signalKey.isBlank()) {
      throw new IllegalArgumentException("A signal has a key such as 01.77.1, found blank text");
    }
  }
}
