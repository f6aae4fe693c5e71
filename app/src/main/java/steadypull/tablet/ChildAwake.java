package steadypull.tablet;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/**
 * Keeps a machine awake by commands of its system that do so while another command runs. That other
 * command says that it has begun, and ends as soon as our end of its input is closed: by us, or by
 * the system when the program ends, however it ends.
 *
 * @param commands to be put before the other command; the machine is kept awake if one of them
 *     works
 */
record ChildAwake(List<List<String>> commands) implements Tablet.AwakeKeeper {
  private static final String WHY = "Recording a drive";
  private static final String BEGUN = "held";
  private static final int PATIENCE_SECONDS = 5;

  /** Reads until its input ends. */
  private static final List<String> UNTIL_INPUT_ENDS =
      List.of("/bin/sh", "-c", "echo " + BEGUN + "; exec cat >/dev/null");

  ChildAwake {
    commands = commands.stream().map(List::copyOf).toList();
  }

  /**
   * The system's own lock against sleep and idleness (systemd-inhibit(1)), and the desktop's
   * against a dark screen where it has one (gnome-session-inhibit(1) and kde-inhibit, from memory).
   */
  static ChildAwake onLinux(Map<String, String> environment) {
    List<List<String>> commands = new ArrayList<>();
    commands.add(
        List.of("systemd-inhibit", "--what=idle:sleep", "--who=Steadypull", "--why=" + WHY));
    String desktop = environment.getOrDefault("XDG_CURRENT_DESKTOP", "");
    if (desktop.contains("GNOME")) {
      commands.add(List.of("gnome-session-inhibit", "--inhibit", "idle:suspend", "--reason", WHY));
    }
    if (desktop.contains("KDE")) {
      commands.add(List.of("kde-inhibit", "--power", "--screenSaver"));
    }
    return new ChildAwake(commands);
  }

  /**
   * "Assertions will persist for the duration of the utility's execution", display and idle sleep:
   * caffeinate(8), from memory.
   */
  static ChildAwake onMac() {
    return new ChildAwake(List.of(List.of("/usr/bin/caffeinate", "-di")));
  }

  @Override
  public Awake begin() {
    List<Process> held = new ArrayList<>();
    List<String> refusals = new ArrayList<>();
    for (List<String> command : commands) {
      begin(command, held, refusals);
    }
    return held.isEmpty()
        ? new Awake.NotHeld(String.join("; ", refusals))
        : new Awake.Held(
            () -> held.stream().anyMatch(Process::isAlive), () -> held.forEach(ChildAwake::end));
  }

  private static void begin(List<String> command, List<Process> held, List<String> refusals) {
    List<String> whole = new ArrayList<>(command);
    whole.addAll(UNTIL_INPUT_ENDS);
    try {
      Process child = new ProcessBuilder(whole).redirectErrorStream(true).start();
      String said = firstLine(child);
      if (said.equals(BEGUN)) {
        held.add(child);
      } else {
        end(child);
        refusals.add(command.getFirst() + ": " + said);
      }
    } catch (IOException absent) {
      refusals.add(String.valueOf(absent.getMessage()));
    }
  }

  /** What a child says first, or why that is not known. */
  private static String firstLine(Process child) {
    BufferedReader output = child.inputReader();
    CompletableFuture<String> line = new CompletableFuture<>();
    Thread.ofVirtual().start(() -> line.completeAsync(() -> read(output), Runnable::run));
    try {
      return line.get(PATIENCE_SECONDS, TimeUnit.SECONDS);
    } catch (TimeoutException | ExecutionException silent) {
      return "no answer in %d s".formatted(PATIENCE_SECONDS);
    } catch (InterruptedException ending) {
      Thread.currentThread().interrupt();
      return "the recording ended first";
    }
  }

  private static String read(BufferedReader output) {
    try {
      return String.valueOf(output.readLine());
    } catch (IOException gone) {
      return String.valueOf(gone.getMessage());
    }
  }

  /** Ends a child gently; one that does not end by itself loses its process. */
  private static void end(Process child) {
    try {
      child.getOutputStream().close();
    } catch (IOException gone) {
      // Safe to go on: a child that is gone holds nothing.
    }
    child.destroy();
  }
}
