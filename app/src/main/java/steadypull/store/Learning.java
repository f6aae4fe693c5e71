package steadypull.store;

/** Something that is learned from one trip after the other. Any thread. */
interface Learning {
  /** Learns from the next trip that waits; false if none does, or if learning is to end. */
  boolean next() throws LibraryException;

  /** Lets learning end soon, for good. */
  void stop();
}
