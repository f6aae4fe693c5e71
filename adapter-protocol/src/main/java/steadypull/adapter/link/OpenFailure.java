package steadypull.adapter.link;

import java.util.Locale;

/** Why a system would not open a serial port, told from its error code. */
enum OpenFailure {
  NO_SUCH_PORT("there is no such port", "Plug the adapter in or pair it, then try again."),
  NOT_ALLOWED(
      "this user may not use it",
      "Add the user to the group that owns the port, usually with: sudo usermod -aG dialout $USER;"
          + " then log out and in again."),
  IN_USE("another program is using it", "Close the other program, then try again."),
  NOT_A_PORT("it is not a serial port", "Choose one of the ports that the ports command lists."),
  OTHER(
      "the system refused",
      "Unplug the adapter and plug it in again; if it stays so, try another port or cable.");

  private final String found;
  private final String remedy;

  OpenFailure(String found, String remedy) {
    this.found = found;
    this.remedy = remedy;
  }

  String found() {
    return found;
  }

  String remedy() {
    return remedy;
  }

  /**
   * Reads an error code.
   *
   * @param code POSIX errno (IEEE Std 1003.1, errno.h; the numbers are those of Linux and macOS),
   *     or a Windows system error code
   */
  static OpenFailure of(int code, String system) {
    return system.toLowerCase(Locale.ROOT).startsWith("windows") ? ofWindows(code) : ofPosix(code);
  }

  private static OpenFailure ofPosix(int errno) {
    return switch (errno) {
      case 2, 6, 19 -> NO_SUCH_PORT; // ENOENT, ENXIO, ENODEV
      case 1, 13 -> NOT_ALLOWED; // EPERM, EACCES
      case 11, 16, 35 -> IN_USE; // EAGAIN on Linux, EBUSY, EAGAIN on macOS: the lock is held
      case 22, 25 -> NOT_A_PORT; // EINVAL, ENOTTY
      default -> OTHER;
    };
  }

  private static OpenFailure ofWindows(int code) {
    return switch (code) {
      case 2, 3 -> NO_SUCH_PORT; // ERROR_FILE_NOT_FOUND, ERROR_PATH_NOT_FOUND
      case 5, 32 -> IN_USE; // ERROR_ACCESS_DENIED, ERROR_SHARING_VIOLATION
      default -> OTHER;
    };
  }
}
