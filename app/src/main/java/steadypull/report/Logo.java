package steadypull.report;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import javax.imageio.ImageIO;
import org.jspecify.annotations.Nullable;

/**
 * A workshop's picture, part of the page itself. Immutable.
 *
 * @param address data address (RFC 2397) of a PNG or JPEG
 */
public record Logo(String address) {
  private static final long LARGEST_BYTES = 2_000_000;
  private static final int LARGEST_PIXELS = 4000;

  /**
   * Reads a PNG or JPEG.
   *
   * @throws ReportException if it is none, or larger than 2 MB or 4000 pixels
   */
  public static Logo read(Path file) throws ReportException {
    try {
      if (Files.size(file) > LARGEST_BYTES) {
        throw refusal(file, "one of %d kB".formatted(Files.size(file) / 1000));
      }
      byte[] bytes = Files.readAllBytes(file);
      return new Logo(
          "data:image/%s;base64,%s"
              .formatted(kind(file, bytes), Base64.getEncoder().encodeToString(bytes)));
    } catch (IOException unreadable) {
      throw new ReportException(
          "Could not read the logo %s: expected a PNG or JPEG file, found none that can be read. Name another file."
              .formatted(ReportFile.shown(file)),
          unreadable);
    }
  }

  /** Decoding it once shows that it is what its first bytes say. */
  private static String kind(Path file, byte[] bytes) throws ReportException, IOException {
    boolean isPng = bytes.length > 4 && bytes[0] == (byte) 0x89 && bytes[1] == 'P';
    boolean isJpeg = bytes.length > 4 && bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xD8;
    @Nullable BufferedImage image =
        isPng || isJpeg ? ImageIO.read(new ByteArrayInputStream(bytes)) : null;
    if (image == null) {
      throw refusal(file, "something else");
    }
    if (Math.max(image.getWidth(), image.getHeight()) > LARGEST_PIXELS) {
      throw refusal(file, "one of %d x %d pixels".formatted(image.getWidth(), image.getHeight()));
    }
    return isPng ? "png" : "jpeg";
  }

  private static ReportException refusal(Path file, String found) {
    return new ReportException(
        "Could not take the logo %s: expected a PNG or JPEG picture of at most 2 MB and 4000 pixels, found %s. Name another file."
            .formatted(ReportFile.shown(file), found));
  }
}
