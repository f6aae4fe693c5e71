package steadypull.adapter.capture;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.Optional;
import steadypull.adapter.link.LinkSource;

/**
 * A file into which the dialogue of one link goes, through all its losses and reopenings. Every
 * event is handed to the system at once, so that the file survives the program. A file that cannot
 * be written on ends the capture, never the drive. Used by one thread at a time.
 */
public final class Capture implements AutoCloseable {
  private final Path file;
  private final BufferedWriter writer;
  private Optional<String> trouble = Optional.empty();

  private final CaptureRecorder recorder;

  private Capture(Path file, BufferedWriter writer, boolean keepsVin) {
    this.file = file;
    this.writer = writer;
    this.recorder = new CaptureRecorder(this::write, keepsVin);
  }

  /**
   * Creates the file and its folder.
   *
   * @param file must not exist yet
   * @param address the port, as the user wrote it
   * @param started the wall's time
   * @param software name and version of the program
   * @param keepsVin whether the vehicle's identification number is written as it is; else it is
   *     masked in all its forms
   * @throws IOException if the file exists or cannot be written
   */
  public static Capture begin(
      Path file, String address, Instant started, String software, boolean keepsVin)
      throws IOException {
    Files.createDirectories(file.toAbsolutePath().getParent());
    BufferedWriter writer =
        Files.newBufferedWriter(file, StandardCharsets.US_ASCII, StandardOpenOption.CREATE_NEW);
    writer.write(
        String.join(
            "\n",
            CaptureText.FIRST_LINE,
            "address " + CaptureText.escaped(address),
            "started " + started,
            "software " + CaptureText.escaped(software),
            "vin " + (keepsVin ? "kept" : "masked"),
            ""));
    writer.flush();
    return new Capture(file, writer, keepsVin);
  }

  /** The same source; whatever goes over its links is kept. */
  public LinkSource around(LinkSource source) {
    return new CapturedSource(source, recorder);
  }

  /** The file. */
  public Path file() {
    return file;
  }

  /** Why the file ends early; empty if it does not. */
  public Optional<String> trouble() {
    return trouble;
  }

  private void write(CaptureEvent event) {
    if (trouble.isPresent()) {
      return;
    }
    try {
      writer.write(CaptureText.line(event));
      writer.write('\n');
      writer.flush();
    } catch (IOException unwritable) {
      end(unwritable);
    }
  }

  private void end(IOException unwritable) {
    trouble =
        Optional.of(
            "Could not go on with the raw capture in %s: expected to write it, found %s. It ends there; the drive goes on. Make room on the disk before the next one."
                .formatted(file, unwritable.getMessage()));
  }

  /** Writes what is held back and closes the file. */
  @Override
  public void close() {
    recorder.end();
    try {
      writer.close();
    } catch (IOException unwritable) {
      end(unwritable);
    }
  }
}
