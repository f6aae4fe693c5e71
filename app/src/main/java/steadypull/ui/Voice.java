package steadypull.ui;

import steadypull.advice.Level;

/** Says something aloud. Any thread; returns at once. */
interface Voice {
  /** Says nothing. */
  Voice SILENT = (level, volume, words) -> {};

  /**
   * A tone, and words after it.
   *
   * @param volume 0 to 1; above 0
   * @param words what to speak; empty for the tone alone
   */
  void say(Level level, double volume, String words);
}
