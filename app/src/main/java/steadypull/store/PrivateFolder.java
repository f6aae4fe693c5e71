package steadypull.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * A folder that only this user can see, for one library on its way in or out; gone when closed. One
 * thread.
 */
final class PrivateFolder implements AutoCloseable {
  private final Path folder;

  private PrivateFolder(Path folder) {
    this.folder = folder;
  }

  /** Makes an empty one; where the file system knows owners, for its owner only. */
  static PrivateFolder make() throws IOException {
    return new PrivateFolder(Files.createTempDirectory("steadypull-"));
  }

  Path path() {
    return folder;
  }

  @Override
  public void close() {
    try {
      for (Path file : files()) {
        Files.deleteIfExists(file);
      }
      Files.deleteIfExists(folder);
    } catch (IOException e) {
      // It lies where the system clears up by itself.
      return;
    }
  }

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.toList();
    }
  }
}
