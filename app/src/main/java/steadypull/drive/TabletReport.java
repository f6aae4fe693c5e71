package steadypull.drive;

import java.util.Objects;
import steadypull.tablet.TabletNews;

/**
 * News of the tablet that records. Immutable.
 *
 * @param timeMicros microseconds since trip start
 * @param news what is new
 */
public record TabletReport(long timeMicros, TabletNews news) {
  public TabletReport {
    Objects.requireNonNull(news);
  }

  /** The news as whole sentences, in English. */
  public String sentence() {
    return TabletText.sentence(news);
  }
}
