package steadypull.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;

/** A {@link KilledRecorder} in a process of its own, and what it promises. One thread. */
final class ChildRecorder implements AutoCloseable {
  private final Process process;
  private final BufferedReader lines;
  private final String tripId;
  private long lastPromised = -1;

  private ChildRecorder(Process process) throws IOException {
    this.process = process;
    this.lines = process.inputReader();
    this.tripId = next();
  }

  /**
   * Starts it.
   *
   * @param samplesPerCommit how many samples it commits at a time
   */
  static ChildRecorder start(Path folder, int samplesPerCommit) throws IOException {
    return new ChildRecorder(
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-Xmx128m",
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                System.getProperty("java.class.path"),
                KilledRecorder.class.getName(),
                folder.toString(),
                Integer.toString(samplesPerCommit))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start());
  }

  String tripId() {
    return tripId;
  }

  /** Number of the last sample of which we heard that it is committed; -1: of none. */
  long lastPromised() {
    return lastPromised;
  }

  void awaitCommits(int commits) throws IOException {
    for (int commit = 0; commit < commits; commit++) {
      lastPromised = number(next());
    }
  }

  /** Ends it with SIGKILL on systems that have it: no hook, no close, no flush. */
  @Override
  public void close() throws IOException {
    // By its handle: the process's own way would close the stream, and with it the last promises.
    process.toHandle().destroyForcibly();
    lines.lines().filter(line -> line.endsWith(".")).forEach(this::hear);
    try {
      process.waitFor();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(e);
    }
  }

  private void hear(String line) {
    lastPromised = number(line);
  }

  /** A line that was cut off by the kill promises nothing. */
  private static long number(String line) {
    return Long.parseLong(line.substring(0, line.length() - 1));
  }

  private String next() throws IOException {
    String line = lines.readLine();
    assertThat(line).as("what the recording program says").isNotNull();
    return String.valueOf(line);
  }
}
