package steadypull.exchange;

/**
 * What has become of trips that were written as tracks.
 *
 * @param points how many points were written
 * @param segments in how many unbroken stretches
 * @param impossibleLeftOut how many positions were left out because there is no such place
 */
public record WrittenTracks(long points, long segments, long impossibleLeftOut) {}
