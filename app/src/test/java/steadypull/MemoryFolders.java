package steadypull;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.Set;
import org.junit.jupiter.api.extension.AnnotatedElementContext;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.api.io.TempDirFactory;

/**
 * Makes the tests' folders in memory where the system offers that, so that nobody waits for a disk:
 * a simulated drive commits a thousand times, and each time the disk is asked to keep it. What is
 * measured (bench) and what is large (soak) lies on the disk.
 */
public final class MemoryFolders implements TempDirFactory {
  private static final Path MEMORY = Path.of("/dev/shm");
  private static final long LEAST_ROOM_BYTES = 1L << 30;
  private static final Set<String> ON_DISK = Set.of("bench", "soak");

  @Override
  public Path createTempDirectory(AnnotatedElementContext element, ExtensionContext test)
      throws Exception {
    return isRoomInMemory() && Collections.disjoint(test.getTags(), ON_DISK)
        ? Files.createTempDirectory(MEMORY, "steadypull-test-")
        : Standard.INSTANCE.createTempDirectory(element, test);
  }

  private static boolean isRoomInMemory() throws IOException {
    return Files.isWritable(MEMORY)
        && Files.getFileStore(MEMORY).getUsableSpace() >= LEAST_ROOM_BYTES;
  }
}
