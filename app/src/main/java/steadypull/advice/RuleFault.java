package steadypull.advice;

/**
 * One fault in a rule file.
 *
 * @param line 1 is the first
 * @param column 1 is the first
 * @param message what was expected and what was found
 */
record RuleFault(int line, int column, String message) {}
