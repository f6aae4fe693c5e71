package steadypull.drive;

/** The one message that a refusal of another room carries. */
final class FaultText {
  private FaultText() {}

  static String of(Throwable fault) {
    String message = fault.getMessage();
    return message == null ? fault.getClass().getSimpleName() : message;
  }
}
