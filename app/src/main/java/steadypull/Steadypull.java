package steadypull;

/** Starts the program. */
public final class Steadypull {
  private Steadypull() {}

  /** Runs a command, or opens the window when there is none. */
  public static void main(String[] arguments) {}
}
