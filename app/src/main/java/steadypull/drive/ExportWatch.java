package steadypull.drive;

/** Hears how far an export has come, and may end it. Called on the export's thread. */
@FunctionalInterface
public interface ExportWatch {
  /**
   * Called again and again.
   *
   * @param share how much is done, 0 to 1
   * @return false to end it; the file is then as it was before
   */
  boolean goesOn(double share);
}
