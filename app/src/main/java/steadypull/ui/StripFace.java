package steadypull.ui;

import steadypull.drive.StripState;

/**
 * One strip, ready to show. Texts that do not apply are empty.
 *
 * @param state what is drawn
 * @param name short name of the channel
 * @param trend direction in one word
 * @param trendInFull direction with its rate
 * @param value digits of the last value
 * @param stale whether the value is old
 * @param tone how loud the strip is
 * @param glyph the clearance glyph
 * @param word the state in a word
 * @param more headroom or limit beside the word
 * @param detail the course to come
 * @param title the line over the large figure of a leading strip
 * @param hero that figure
 * @param heroUnit what it counts
 * @param limit the limit in words
 * @param note what stands in place of a forecast
 * @param eased the label of the dashed line
 * @param spoken all of it for a screen reader
 */
record StripFace(
    StripState state,
    String name,
    String trend,
    String trendInFull,
    String value,
    boolean stale,
    Tone tone,
    Glyph glyph,
    String word,
    String more,
    String detail,
    String title,
    String hero,
    String heroUnit,
    String limit,
    String note,
    String eased,
    String spoken) {}
