package steadypull.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;

/**
 * Shows other programs that a trip is being recorded. The system takes the lock back when the
 * program ends, however it ends, so that a trip that is neither sealed nor locked was left behind.
 * Thread-safe.
 */
final class RecordingLock implements AutoCloseable {
  /** Of this program: closing a second channel would let go of the first one's lock. */
  private static final Set<Path> HELD = ConcurrentHashMap.newKeySet();

  private final Path file;

  /** Null where the file system has no locks: then nobody can hold one, and nobody takes over. */
  private final @Nullable FileChannel channel;

  private RecordingLock(Path file, @Nullable FileChannel channel) {
    this.file = file;
    this.channel = channel;
  }

  /** Locks a trip that nobody else knows yet. */
  static RecordingLock hold(Path library, String tripId) {
    Path file = fileOf(library, tripId);
    HELD.add(file);
    return new RecordingLock(file, locked(file).orElse(null));
  }

  /** Locks a trip, or gives nothing if somebody records it or nobody can tell. */
  static Optional<RecordingLock> takeOver(Path library, String tripId) {
    Path file = fileOf(library, tripId);
    if (!HELD.add(file)) {
      return Optional.empty();
    }
    Optional<FileChannel> channel = locked(file);
    if (channel.isEmpty()) {
      HELD.remove(file);
    }
    return channel.map(held -> new RecordingLock(file, held));
  }

  @Override
  public void close() {
    FileChannel held = channel;
    if (held != null) {
      forget(held);
    }
    HELD.remove(file);
  }

  private void forget(FileChannel held) {
    // The file goes first: who opens it after the lock is free finds a trip that is sealed or to be
    // recovered. Where an open file cannot be deleted, it goes afterwards.
    boolean isGone = delete();
    try {
      held.close();
    } catch (IOException e) {
      // The system lets go of the lock with the program at the latest.
      return;
    }
    if (!isGone) {
      delete();
    }
  }

  private boolean delete() {
    try {
      return Files.deleteIfExists(file);
    } catch (IOException e) {
      return false;
    }
  }

  private static Optional<FileChannel> locked(Path file) {
    try {
      FileChannel channel =
          FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock lock = channel.tryLock();
      if (lock != null) {
        return Optional.of(channel);
      }
      channel.close();
      return Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private static Path fileOf(Path library, String tripId) {
    return library.toAbsolutePath().resolveSibling(tripId + ".recording");
  }
}
