package steadypull.cli;

import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.NoSuchFileException;
import org.jspecify.annotations.Nullable;

/** What the user reads when a command fails: one message, never a stack trace. */
final class Explanation {
  private Explanation() {}

  static String of(Throwable failure) {
    return switch (failure) {
      case NoSuchFileException missing -> "Could not find the file " + missing.getFile() + ".";
      case AccessDeniedException denied ->
          "Could not use the file " + denied.getFile() + ": permission denied.";
      case UncheckedIOException unchecked -> of(cause(unchecked));
      default -> message(failure);
    };
  }

  private static Throwable cause(Throwable failure) {
    Throwable cause = failure.getCause();
    return cause == null ? new IllegalStateException("unknown trouble") : cause;
  }

  private static String message(Throwable failure) {
    @Nullable String message = failure.getMessage();
    return message == null || message.isBlank()
        ? "Something failed that should not: " + failure.getClass().getSimpleName()
        : message;
  }
}
