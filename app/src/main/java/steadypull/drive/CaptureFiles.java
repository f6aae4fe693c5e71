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
import java.util.Optional;
import steadypull.adapter.capture.Capture;
import steadypull.adapter.capture.CaptureLinks;
import steadypull.adapter.link.LinkException;

/** Raw captures: where they are kept, and how they are opened again as ports. Stateless. */
final class CaptureFiles {
  private static final DateTimeFormatter NAME =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private CaptureFiles() {}

  /** Opens {@code capture:FILE}. */
  static LinkOffer offer() {
    return new LinkOffer(
        new CaptureLinks(), List.of(), address -> Optional.empty(), CaptureFiles::lasts);
  }

  private static Optional<Duration> lasts(String address) {
    try {
      return CaptureLinks.lasts(address);
    } catch (LinkException malformed) {
      // Opening the address reports the fault in words; it has no length until then.
      return Optional.empty();
    }
  }

  /** Begins a capture of a port; a name that is taken gets a number. */
  static Capture begin(RawCapture wish, String address, Instant start, String software)
      throws DriveException {
    Path file = free(wish.folder(), NAME.format(start));
    try {
      return Capture.begin(file, address, start, software, wish.keepsVin());
    } catch (IOException unwritable) {
      throw new DriveException(
          "Could not begin a raw capture in %s: expected to write there, found %s. Make room, or record without it."
              .formatted(file, unwritable.getMessage()),
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
