package steadypull.compare;

/** On which side of a change a run was driven. A closed set. */
public enum Side {
  BEFORE,
  AFTER
}
