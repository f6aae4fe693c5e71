package steadypull.cli;

import steadypull.drive.AdviceRecord;

/** How often advice worked, for people. Stateless. */
final class AdviceRecordText {
  private AdviceRecordText() {}

  /** One phrase; empty if none was given. */
  static String of(AdviceRecord advice) {
    if (advice.given() == 0) {
      return "";
    }
    String given = "given " + times(advice.given());
    return advice.followed() == 0
        ? given + ", not followed"
        : "%s, followed %s, held %s".formatted(given, times(advice.followed()), held(advice));
  }

  private static String held(AdviceRecord advice) {
    return advice.held() == advice.followed() ? "each time" : times(advice.held());
  }

  private static String times(int count) {
    return switch (count) {
      case 0 -> "never";
      case 1 -> "once";
      default -> count + " times";
    };
  }
}
