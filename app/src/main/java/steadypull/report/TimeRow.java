package steadypull.report;

/**
 * Both sides at one moment after the onset, as text. Immutable.
 *
 * @param time such as {@code 60 s} or {@code settled}
 * @param before of the side before; a dash where it cannot be told
 * @param after likewise
 * @param gain how much cooler, such as {@code 7.3°}; with its direction where it is hotter
 * @param range of the gain
 * @param isMeasured false where the model computed it
 */
public record TimeRow(
    String time, String before, String after, String gain, String range, boolean isMeasured) {}
