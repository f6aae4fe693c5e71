package steadypull.advice;

/**
 * A rule that takes part in nothing until its file says otherwise, such as one that watches a
 * broken sensor. Immutable.
 *
 * @param rule its id as written, or as told for one channel of it
 * @param reason in the words of whoever took it out
 * @param line where the file says so, 1 is the first
 * @param column likewise
 */
record OutOfService(String rule, String reason, int line, int column) {
  boolean isMeant(Rule other) {
    return other.id().equals(rule) || other.idsTold().contains(rule);
  }
}
