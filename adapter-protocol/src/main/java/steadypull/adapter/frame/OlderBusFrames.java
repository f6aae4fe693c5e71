package steadypull.adapter.frame;

/**
 * Messages of the buses before CAN: three header bytes, data, one check byte. ISO 9141-2 and SAE
 * J1850: priority, target, source; ISO 14230: format byte, whose low six bits tell the number of
 * data bytes, target, source. Used by one thread.
 */
final class OlderBusFrames {
  private static final int HEADER_BYTES = 3;
  private static final int SOURCE = 2;
  private static final int SOURCE_DIGITS = 2;

  private final MessageBuffer messages;
  private final SenderNames names;
  private final OctetWindow checked = new OctetWindow();

  OlderBusFrames(MessageBuffer messages, SenderNames names) {
    this.messages = messages;
    this.names = names;
  }

  /** Takes so many bytes of a line; what is damaged or of another length is left out. */
  void accept(MessageFormat format, byte[] bytes, int count) {
    int last = count - 1;
    if (last <= HEADER_BYTES) {
      return;
    }
    checked.show(bytes, 0, last);
    int check = bytes[last] & 0xFF;
    boolean isIntact =
        switch (format) {
          case J1850 -> Checksum.J1850_CRC.of(checked) == check;
          case ISO_9141 -> Checksum.SUM.of(checked) == check;
          case ISO_14230 ->
              Checksum.SUM.of(checked) == check && (bytes[0] & 0x3F) == last - HEADER_BYTES;
          case CAN_11_BIT, CAN_29_BIT -> false;
        };
    if (isIntact) {
      messages.add(names.of(bytes[SOURCE] & 0xFF, SOURCE_DIGITS), bytes, HEADER_BYTES, last);
    }
  }
}
