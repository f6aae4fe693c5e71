package steadypull.drive;

import java.util.List;
import steadypull.adapter.Reading;
import steadypull.channel.Sample;
import steadypull.store.LibraryException;
import steadypull.store.TripLibrary;
import steadypull.vehicle.role.SensorEvidence;
import steadypull.vehicle.role.SensorWatch;

/**
 * Watches the vehicle's temperature sensors during a drive and keeps what was seen with the
 * vehicle, so that their places can be proposed. Changes nothing of the drive. Pipeline thread
 * only.
 */
final class SensorKeeper {
  private static final long KEPT_EVERY_MICROS = 60_000_000;

  private final TripLibrary library;
  private final String vehicleName;
  private final SensorWatch watch;
  private final boolean isKept;
  private long keptMicros = Long.MIN_VALUE;

  SensorKeeper(TripLibrary library, String vehicleName) {
    this.library = library;
    this.vehicleName = vehicleName;
    SensorEvidence before = SensorEvidence.none();
    boolean isRead = false;
    try {
      before = library.sensorEvidence(vehicleName);
      isRead = true;
    } catch (LibraryException unreadable) {
      // The drive goes on without; what earlier drives have seen is not overwritten.
    }
    watch = new SensorWatch(before);
    isKept = isRead;
  }

  /** Takes a reading and the samples that were made of it. */
  void hear(Reading reading, List<Sample> samples) {
    long micros = reading.nanoTime() / 1000;
    for (Sample sample : samples) {
      watch.heard(new Sample(sample.channel(), micros, sample.value()));
    }
    watch.heard(reading.signal().key(), micros, reading.value());
    if (keptMicros == Long.MIN_VALUE) {
      keptMicros = micros;
    }
    if (micros - keptMicros >= KEPT_EVERY_MICROS) {
      keptMicros = micros;
      keep();
    }
  }

  /** Keeps what was seen up to now. */
  void keep() {
    if (isKept) {
      try {
        library.keep(vehicleName, watch.evidence());
      } catch (LibraryException refused) {
        // A minute of evidence is at stake, no sample of the trip; the next minute tries again.
      }
    }
  }
}
