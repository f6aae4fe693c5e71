package steadypull.demo.bench;

import java.util.Locale;

/** Prints frames the way an AT-command adapter does. */
final class FrameText {
  private final AdapterMode mode;

  FrameText(AdapterMode mode) {
    this.mode = mode;
  }

  /** One frame as a line, without its end; two lines where a length line comes first. */
  String of(Frame frame, String lineEnd) {
    if (mode.headers) {
      return "%03X".formatted(frame.identifier()) + gap() + bytes(frame.data(), 0, 8);
    }
    if (!mode.formatting) {
      return bytes(frame.data(), 0, 8);
    }
    int control = frame.data()[0] & 0xFF;
    if (frame.isFirstOfSeveral()) {
      int length = (control & 0x0F) << 8 | (frame.data()[1] & 0xFF);
      String first = "0:" + gap() + bytes(frame.data(), 2, 8);
      return "%03X".formatted(length) + gap() + lineEnd + first;
    }
    if (frame.isConsecutive()) {
      return "%X:".formatted(control & 0x0F) + gap() + bytes(frame.data(), 1, 8);
    }
    return bytes(frame.data(), 1, 1 + Math.min(7, control & 0x0F));
  }

  private String bytes(byte[] data, int from, int to) {
    StringBuilder text = new StringBuilder();
    for (int i = from; i < to; i++) {
      text.append(String.format(Locale.ROOT, "%02X", data[i])).append(gap());
    }
    return text.toString();
  }

  private String gap() {
    return mode.spaces ? " " : "";
  }
}
