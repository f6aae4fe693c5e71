package steadypull.tablet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/** A program that is kept awake by the stand-in, says so, and waits to be killed. */
final class AwakeProgram {
  private AwakeProgram() {}

  @SuppressWarnings("SystemOut") // Says so to the test that started it.
  public static void main(String[] arguments) throws IOException {
    Awake awake = new ChildAwake(List.of(ChildAwakeTest.standIn(Path.of(arguments[0])))).begin();
    System.out.println(awake.getClass().getSimpleName());
    System.out.flush();
    int told = System.in.read();
    awake.close();
    System.exit(told);
  }
}
