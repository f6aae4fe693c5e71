package steadypull.advice;

/** How urgent an advisory is, least first. */
public enum Level {
  /** For information; no sound. */
  NOTICE("notice"),
  /** Act soon. */
  CAUTION("caution"),
  /** Act now; something breaks otherwise. */
  WARNING("warning");

  private final String word;

  Level(String word) {
    this.word = word;
  }

  /** The word used in rules, files and command output. */
  public String word() {
    return word;
  }
}
