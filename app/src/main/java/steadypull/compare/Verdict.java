package steadypull.compare;

/** How strong a claim of a change is. A closed set. */
public enum Verdict {
  /** Claimed; runs, days and the smallest change that could have shown bear it. */
  PROVEN("proven"),
  /** Claimed: the one-sided 97.5 % bound excludes zero. */
  LIKELY("likely"),
  NOT_PROVEN("not-proven");

  private final String id;

  Verdict(String id) {
    this.id = id;
  }

  /** The lasting word for machines. */
  public String id() {
    return id;
  }
}
