package steadypull.exchange;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.UUID;

/** Fills a file beside its final place and moves it there when it is complete. One thread. */
final class NewFile {
  /** Writes the content. */
  interface Content {
    void writeTo(Writer out) throws IOException;
  }

  private final Path target;
  private final Path unfinished;

  NewFile(Path target) {
    this.target = target;
    this.unfinished =
        target.resolveSibling("." + target.getFileName() + "." + UUID.randomUUID() + ".part");
  }

  void fill(Content content) throws IOException {
    try {
      try (BufferedWriter out =
          Files.newBufferedWriter(
              unfinished, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
        content.writeTo(out);
      }
      move();
    } finally {
      Files.deleteIfExists(unfinished);
    }
  }

  private void move() throws IOException {
    try {
      Files.move(unfinished, target, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(unfinished, target, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
