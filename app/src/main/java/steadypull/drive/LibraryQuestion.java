package steadypull.drive;

import steadypull.store.LibraryException;

/**
 * Something that is asked of the library; its refusals are told as those of the desk.
 *
 * @param <T> the answer
 */
@FunctionalInterface
interface LibraryQuestion<T> {
  T answer() throws LibraryException;

  /** Asks it. */
  static <T> T ask(LibraryQuestion<T> question) throws DriveException {
    try {
      return question.answer();
    } catch (LibraryException refused) {
      throw new DriveException(FaultText.of(refused), refused);
    }
  }
}
