package steadypull.demo.bench;

/** Identifiers of diagnostic requests and answers, ISO 15765-4 (from memory). */
record CanAddressing(boolean isLong) {
  private static final int EVERYBODY = 0x7DF;
  private static final int EVERYBODY_LONG = 0x18DB33F1;
  private static final int PHYSICAL_LONG = 0x18DA00F1;
  private static final int ANSWER_LONG = 0x18DAF100;

  /** Requests to all control units. */
  int everybody() {
    return isLong ? EVERYBODY_LONG : EVERYBODY;
  }

  /** Requests to one. */
  int requestTo(ControlUnit unit) {
    return isLong ? PHYSICAL_LONG | unit.node() << 8 : unit.requestAddress();
  }

  /** Answers of one. */
  int answerOf(ControlUnit unit) {
    return isLong ? ANSWER_LONG | unit.node() : unit.requestAddress() + 8;
  }

  /** Whom flow control for an answer goes to. */
  int requestToSenderOf(int answer) {
    return isLong ? PHYSICAL_LONG | (answer & 0xFF) << 8 : answer - 8;
  }
}
