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

/**
 * Fills a file beside its final place and moves it there when it is complete. A link is followed;
 * what is no file, such as a pipe, is written to directly. One thread.
 */
final class NewFile {
  /** Writes the content. */
  interface Content {
    void writeTo(Writer out) throws IOException;
  }

  private final Path target;

  NewFile(Path target) {
    this.target = target;
  }

  void fill(Content content) throws IOException {
    if (!Files.exists(target)) {
      replace(target, content);
    } else if (Files.isRegularFile(target)) {
      replace(target.toRealPath(), content);
    } else {
      try (BufferedWriter out =
          Files.newBufferedWriter(target, StandardCharsets.UTF_8, StandardOpenOption.WRITE)) {
        content.writeTo(out);
      }
    }
  }

  private static void replace(Path file, Content content) throws IOException {
    Path unfinished =
        file.resolveSibling("." + file.getFileName() + "." + UUID.randomUUID() + ".part");
    try {
      try (BufferedWriter out =
          Files.newBufferedWriter(
              unfinished, StandardCharsets.UTF_8, StandardOpenOption.CREATE_NEW)) {
        content.writeTo(out);
      }
      move(unfinished, file);
    } finally {
      Files.deleteIfExists(unfinished);
    }
  }

  private static void move(Path unfinished, Path file) throws IOException {
    try {
      Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
    } catch (AtomicMoveNotSupportedException e) {
      Files.move(unfinished, file, StandardCopyOption.REPLACE_EXISTING);
    }
  }
}
