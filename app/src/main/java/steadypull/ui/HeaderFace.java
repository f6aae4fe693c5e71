package steadypull.ui;

/**
 * The header line, ready to show.
 *
 * @param vehicle name of the vehicle
 * @param note what is known about it; may be empty
 * @param noteTone neutral unless it asks for something
 * @param recording whether samples are kept
 * @param recordingTone neutral while they are
 * @param link the link in words
 * @param linkTone neutral while it is well
 * @param shortBars of the five link bars, how many are short
 * @param clock hours and minutes
 */
record HeaderFace(
    String vehicle,
    String note,
    Tone noteTone,
    String recording,
    Tone recordingTone,
    String link,
    Tone linkTone,
    int shortBars,
    String clock) {}
