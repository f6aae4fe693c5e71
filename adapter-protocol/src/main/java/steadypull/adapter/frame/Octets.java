package steadypull.adapter.frame;

/** Bytes to be read one by one, wherever they stand. A view may end: its maker says when. */
public interface Octets {

  /** How many bytes there are. */
  int size();

  /**
   * The byte at an index, 0 to 255.
   *
   * @throws IndexOutOfBoundsException if the index is not from 0 to below the size
   */
  int at(int index);
}
