package steadypull.adapter.position;

import java.util.Locale;

/** What receivers say; written from the field tables, with its own checksum. */
final class SpokenSentences {
  private SpokenSentences() {}

  /** A sentence with its checksum (XOR of what stands between the dollar sign and the star). */
  static String spoken(String body) {
    int sum = 0;
    for (int i = 0; i < body.length(); i++) {
      sum ^= body.charAt(i);
    }
    return "$%s*%02X\r\n".formatted(body, sum);
  }

  static String fixData(String time, double altitude) {
    return spoken(
        String.format(
            Locale.ROOT,
            "GNGGA,%s,3513.21000,N,11428.43800,W,1,11,0.8,%.1f,M,-29.6,M,,",
            time,
            altitude));
  }

  static String minimum(String time, double knots) {
    return spoken(
        String.format(
            Locale.ROOT,
            "GNRMC,%s,A,3513.21000,N,11428.43800,W,%.2f,078.6,150726,,,A",
            time,
            knots));
  }

  /** The noise between the sentences that matter. */
  static String others() {
    return spoken("GPGSV,1,1,01,14,48,017,27")
        + spoken("GNGLL,3513.21000,N,11428.43800,W,174512.00,A,A")
        + spoken("GNGSA,A,3,80,71,73,79,69,,,,,,,,1.83,1.09,1.47");
  }
}
