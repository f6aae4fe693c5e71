package steadypull.store.page;

/** Octets that are not what the file format lets stand there. */
final class DamagedPageException extends Exception {
  private static final long serialVersionUID = 1;

  DamagedPageException(String message) {
    super(message);
  }
}
