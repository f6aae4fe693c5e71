package steadypull.tablet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.BufferedReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Real child processes, with a stand-in for the system's command: a shell that waits for them. */
@Timeout(300)
@Execution(ExecutionMode.CONCURRENT)
class ChildAwakeTest {
  private static final Path SHELL = Path.of("/bin/sh");

  @TempDir private Path folder;

  @BeforeEach
  void onlyWhereThereIsAShell() {
    assumeThat(SHELL).exists();
  }

  /** Writes down its process id, then runs the command that it is given, as long as that runs. */
  static List<String> standIn(Path folder) {
    String script = "echo $$ > '" + folder.resolve("pid") + "'; \"$@\"; exit $?";
    return List.of(SHELL.toString(), "-c", script, "stand-in");
  }

  private ProcessHandle standInProcess() throws Exception {
    long pid = Long.parseLong(Files.readString(folder.resolve("pid")).strip());
    return ProcessHandle.of(pid).orElseThrow();
  }

  @Test
  void theMachineIsKeptAwakeUntilTheRecordingEnds() throws Exception {
    Awake awake = new ChildAwake(List.of(standIn(folder))).begin();
    ProcessHandle child = standInProcess();
    assertThat(awake).isInstanceOf(Awake.Held.class);
    assertThat(child.isAlive()).isTrue();
    assertThat(((Awake.Held) awake).holds().getAsBoolean()).isTrue();

    awake.close();

    child.onExit().join();
    assertThat(child.isAlive()).isFalse();
  }

  // A lock that outlives the program would drain the tablet over night.
  @Test
  void aProgramThatIsKilledLeavesNothingThatKeepsTheMachineAwake() throws Exception {
    Process parent =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path")),
                AwakeProgram.class.getName(),
                folder.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (BufferedReader output = parent.inputReader()) {
      assertThat(output.readLine()).isEqualTo("Held");
      ProcessHandle child = standInProcess();
      assertThat(child.isAlive()).isTrue();

      parent.toHandle().destroyForcibly();
      parent.waitFor();

      child.onExit().join();
      assertThat(child.isAlive()).isFalse();
    } finally {
      parent.destroyForcibly();
    }
  }

  @Test
  void aCommandThatFailsGivesItsReason() {
    List<String> refusing = List.of(SHELL.toString(), "-c", "echo no bus >&2; exit 1");

    assertThat(new ChildAwake(List.of(refusing)).begin())
        .isEqualTo(new Awake.NotHeld("/bin/sh: no bus"));
  }

  @Test
  void aCommandThatIsNotThereGivesItsName() {
    assertThat(new ChildAwake(List.of(List.of("/nowhere/inhibit"))).begin())
        .isInstanceOfSatisfying(
            Awake.NotHeld.class, not -> assertThat(not.reason()).contains("/nowhere/inhibit"));
  }

  @Test
  void oneCommandThatWorksIsEnough() {
    Awake awake = new ChildAwake(List.of(List.of("/nowhere/inhibit"), standIn(folder))).begin();
    assertThat(awake).isInstanceOf(Awake.Held.class);
    awake.close();
  }

  // The words of systemd-inhibit(1): idle covers the dark screen, sleep the rest.
  @Test
  void linuxIsAskedForTheSystemAndForItsDesktop() {
    assertThat(ChildAwake.onLinux(Map.of()).commands())
        .singleElement()
        .satisfies(
            command -> assertThat(command).startsWith("systemd-inhibit", "--what=idle:sleep"));
    assertThat(ChildAwake.onLinux(Map.of("XDG_CURRENT_DESKTOP", "GNOME-Classic:GNOME")).commands())
        .extracting(List::getFirst)
        .containsExactly("systemd-inhibit", "gnome-session-inhibit");
    assertThat(ChildAwake.onLinux(Map.of("XDG_CURRENT_DESKTOP", "KDE")).commands())
        .extracting(List::getFirst)
        .containsExactly("systemd-inhibit", "kde-inhibit");
  }
}
