package steadypull.demo.bench;

import java.util.HexFormat;

/** Prints frames the way an AT-command adapter does. */
final class FrameText {
  private static final HexFormat HEX = HexFormat.of().withUpperCase();

  private final AdapterMode mode;
  private final boolean isLong;

  FrameText(AdapterMode mode, boolean isLong) {
    this.mode = mode;
    this.isLong = isLong;
  }

  /** One frame as a line, without its end; two lines where a length line comes first. */
  String of(Frame frame, String lineEnd) {
    return switch (frame) {
      case CanFrame can -> ofCan(can, lineEnd);
      case OlderFrame older -> {
        byte[] shown = mode.headers ? older.bytes() : older.data();
        yield bytes(shown, 0, shown.length);
      }
    };
  }

  private String ofCan(CanFrame frame, String lineEnd) {
    byte[] data = frame.data();
    if (mode.headers) {
      return identifier(frame.identifier()) + bytes(data, 0, data.length);
    }
    if (!mode.formatting) {
      return bytes(data, 0, data.length);
    }
    int control = data[0] & 0xFF;
    if (frame.isFirstOfSeveral()) {
      int length = (control & 0x0F) << 8 | (data[1] & 0xFF);
      String first = "0:" + gap() + bytes(data, 2, data.length);
      return "%03X".formatted(length) + gap() + lineEnd + first;
    }
    if (frame.isConsecutive()) {
      return "%X:".formatted(control & 0x0F) + gap() + bytes(data, 1, data.length);
    }
    return bytes(data, 1, 1 + Math.min(data.length - 1, control & 0x0F));
  }

  /** 29 bits are printed as four bytes. */
  private String identifier(int identifier) {
    String digits = HEX.toHexDigits(identifier);
    return isLong
        ? bytes(HEX.parseHex(digits), 0, 4)
        : digits.substring(digits.length() - 3) + gap();
  }

  private String bytes(byte[] data, int from, int to) {
    StringBuilder text = new StringBuilder();
    for (int i = from; i < to; i++) {
      text.append(HEX.toHexDigits(data[i])).append(gap());
    }
    return text.toString();
  }

  private String gap() {
    return mode.spaces ? " " : "";
  }
}
