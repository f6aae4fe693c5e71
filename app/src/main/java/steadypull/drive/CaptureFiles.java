package steadypull.drive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import steadypull.adapter.capture.Capture;
import steadypull.adapter.capture.CaptureHead;
import steadypull.adapter.capture.CaptureLinks;
import steadypull.adapter.link.LinkException;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleJson;

/** Raw captures: where they are kept, and how they are opened again as ports. Stateless. */
final class CaptureFiles {
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private static final String VEHICLE = "vehicle";

  /** Stands for the owner's name of a recorded vehicle. */
  private static final String NAMELESS = "Recorded vehicle";

  private CaptureFiles() {}

  /** Opens {@code capture:FILE}. */
  static LinkOffer offer() {
    return new LinkOffer(
        new CaptureLinks(), List.of(), address -> note(address, VEHICLE), CaptureFiles::lasts);
  }

  private static Optional<String> note(String address, String word) {
    try {
      return CaptureLinks.note(address, word);
    } catch (LinkException malformed) {
      // Opening the address reports the fault in words.
      return Optional.empty();
    }
  }

  private static Optional<Duration> lasts(String address) {
    try {
      return CaptureLinks.lasts(address);
    } catch (LinkException malformed) {
      // Opening the address reports the fault in words; it has no length until then.
      return Optional.empty();
    }
  }

  /**
   * Begins a capture of a port; a name that is taken gets a number. The vehicle goes along without
   * its name, because what it has decides what is asked for.
   */
  static Capture begin(
      RawCapture wish, DriveRequest request, Vehicle vehicle, Instant start, String software)
      throws DriveException {
    Path file = free(wish.folder(), NAME.format(start));
    Map<String, String> notes =
        Map.of(
            VEHICLE, VehicleJson.write(vehicle.withName(NAMELESS).withConfigurations(List.of())));
    try {
      return Capture.begin(
          file, new CaptureHead(request.address(), start, software, wish.keepsVin(), notes));
    } catch (IOException unwritable) {
      throw new DriveException(
          "Could not begin a raw capture in %s: expected to write there, found that this fails (%s: %s). Make room, or record without it."
              .formatted(file, unwritable.getClass().getSimpleName(), unwritable.getMessage()),
          unwritable);
    }
  }

  private static Path free(Path folder, String name) {
    Path file = folder.resolve(name + ".capture");
    for (int number = 2; Files.exists(file); number++) {
      file = folder.resolve(name + "-" + number + ".capture");
    }
    return file;
  }
}
