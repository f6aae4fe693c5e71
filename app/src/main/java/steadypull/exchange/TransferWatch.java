package steadypull.exchange;

/** Hears how far a long reading or writing has come, and may end it. Called on the same thread. */
@FunctionalInterface
public interface TransferWatch {
  /** Hears nothing and ends nothing. */
  TransferWatch NONE = done -> true;

  /**
   * Called every few thousand rows.
   *
   * @param done bytes of the file that were read, or samples that were written
   * @return false to end it; what was begun is then left as it was before
   */
  boolean goesOn(long done);
}
