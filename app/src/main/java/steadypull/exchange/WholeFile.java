package steadypull.exchange;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Writes content that is ready as a file, whole or not at all. Any thread. */
public final class WholeFile {
  private WholeFile() {}

  /**
   * Writes a file in place of whatever was there; a fault leaves the old file as it was.
   *
   * @throws TableException if the place takes no file
   */
  public static void write(Path file, byte[] content) throws TableException {
    if (Files.isDirectory(file.toAbsolutePath())) {
      throw new TableException(
          "Could not write %s: expected the name of a file, found a folder. Add a file name."
              .formatted(CellPlace.shown(file)));
    }
    try {
      new NewFile(file).<IOException>fillBytes(out -> out.write(content));
    } catch (IOException e) {
      throw new TableException(
          "Could not write %s: expected a folder that takes a file, found %s. Choose another place or make room."
              .formatted(CellPlace.shown(file), FileFault.whileWriting(e, file)),
          e);
    }
  }
}
