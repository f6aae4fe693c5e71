package steadypull.adapter.capture;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
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
   * @param file must not exist yet; nobody but its owner may read it where the system knows owners
   * @param head what stands above the dialogue
   * @throws IOException if the file exists or cannot be written
   */
  public static Capture begin(Path file, CaptureHead head) throws IOException {
    Files.createDirectories(file.toAbsolutePath().getParent());
    Files.createFile(file, ownersOnly(file));
    BufferedWriter writer =
        Files.newBufferedWriter(file, StandardCharsets.US_ASCII, StandardOpenOption.WRITE);
    writer.write(head.text());
    writer.flush();
    return new Capture(file, writer, head.keepsVin());
  }

  private static FileAttribute<?>[] ownersOnly(Path file) {
    boolean knowsOwners = file.getFileSystem().supportedFileAttributeViews().contains("posix");
    return knowsOwners
        ? new FileAttribute<?>[] {
          PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------"))
        }
        : new FileAttribute<?>[0];
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
