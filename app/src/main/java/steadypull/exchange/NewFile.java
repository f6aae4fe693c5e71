package steadypull.exchange;

import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
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

  /** Writes the content as bytes. */
  interface Bytes<X extends Exception> {
    void writeTo(OutputStream out) throws IOException, X;
  }

  private final Path target;

  NewFile(Path target) {
    this.target = target;
  }

  void fill(Content content) throws IOException {
    this.<IOException>fillBytes(
        bytes -> {
          Writer out = new BufferedWriter(new OutputStreamWriter(bytes, StandardCharsets.UTF_8));
          content.writeTo(out);
          out.flush();
        });
  }

  <X extends Exception> void fillBytes(Bytes<X> content) throws IOException, X {
    if (!Files.exists(target)) {
      replace(target, content);
    } else if (Files.isRegularFile(target)) {
      replace(DatabasePlace.spared(target.toRealPath()), content);
    } else {
      write(target, StandardOpenOption.WRITE, content);
    }
  }

  private static <X extends Exception> void replace(Path file, Bytes<X> content)
      throws IOException, X {
    Path unfinished =
        file.resolveSibling("." + file.getFileName() + "." + UUID.randomUUID() + ".part");
    try {
      write(unfinished, StandardOpenOption.CREATE_NEW, content);
      move(unfinished, file);
    } finally {
      Files.deleteIfExists(unfinished);
    }
  }

  private static <X extends Exception> void write(
      Path file, StandardOpenOption how, Bytes<X> content) throws IOException, X {
    try (OutputStream out =
        new BufferedOutputStream(
            Files.newOutputStream(file, StandardOpenOption.WRITE, how), 1 << 16)) {
      content.writeTo(out);
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
