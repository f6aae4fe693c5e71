package steadypull.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Predicate;

/** The program as a process of its own, as it runs on a machine without a display. */
final class ChildProgram implements AutoCloseable {
  private final Process process;
  private final BufferedReader out;
  private final BufferedReader err;
  private final StringBuilder said = new StringBuilder();

  private ChildProgram(Process process) {
    this.process = process;
    this.out = process.inputReader();
    this.err = process.errorReader();
  }

  static ChildProgram start(Path library, String... arguments) throws IOException {
    return start(List.of(), library, arguments);
  }

  /** Starts it with options for Java, such as how much memory it may have. */
  static ChildProgram start(List<String> javaOptions, Path library, String... arguments)
      throws IOException {
    ProcessBuilder builder = program(library, javaOptions, arguments);
    builder.environment().remove("DISPLAY");
    return new ChildProgram(builder.start());
  }

  /** With its window open, on JavaFX's own platform that needs no display. */
  static ChildProgram startWindow(Path library, String... arguments) throws IOException {
    ProcessBuilder builder =
        program(library, List.of("-Dglass.platform=Headless", "-Dprism.order=sw"), arguments);
    builder.environment().put("DISPLAY", ":none");
    return new ChildProgram(builder.start());
  }

  private static ProcessBuilder program(Path library, List<String> options, String... arguments) {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--sun-misc-unsafe-memory-access=allow",
                "--enable-native-access=ALL-UNNAMED",
                "-XX:TieredStopAtLevel=1"));
    command.addAll(options);
    command.addAll(
        List.of(
            "-cp",
            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")),
            "steadypull.Steadypull",
            "--library",
            library.toString()));
    Collections.addAll(command, arguments);
    return new ProcessBuilder(command);
  }

  /** Reads diagnostics up to a line; fails if the program ends without it. */
  String diagnosticLine(Predicate<String> wanted) throws IOException {
    for (String line = err.readLine(); line != null; line = err.readLine()) {
      hear(line);
      if (wanted.test(line)) {
        return line;
      }
    }
    throw new AssertionError("The program ended; it said " + said);
  }

  /** All diagnostics that were read so far. */
  String diagnostics() {
    return said.toString();
  }

  private void hear(String line) {
    said.append(line).append('\n');
  }

  /** Asks the program to end, as Ctrl-C and a closing system do; its output stays readable. */
  void askToEnd() {
    process.toHandle().destroy();
  }

  /** Ends the program as a failing machine does. */
  void kill() {
    process.toHandle().destroyForcibly();
  }

  /** Reads everything that is still to come on standard output, then waits for the end. */
  List<String> outputToTheEnd() throws IOException, InterruptedException {
    Thread drain = Thread.ofVirtual().start(() -> err.lines().forEach(this::hear));
    List<String> lines = out.lines().toList();
    drain.join();
    process.waitFor();
    return lines;
  }

  /** The exit status, once the program has ended. */
  int status() {
    return process.exitValue();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
