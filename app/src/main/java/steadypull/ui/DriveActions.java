package steadypull.ui;

/**
 * What the Drive screen can ask for.
 *
 * @param mark puts a mark into the trip
 * @param gotIt answers the advice line
 * @param snooze puts the advice aside
 * @param show brings it back
 * @param light changes between day and night
 * @param menu opens the menu
 */
record DriveActions(
    Runnable mark, Runnable gotIt, Runnable snooze, Runnable show, Runnable light, Runnable menu) {}
