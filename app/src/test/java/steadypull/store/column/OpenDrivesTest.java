package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIfSystemProperty;

/** Real drives, where they are at hand: {@code -Dopen.drives=FOLDER}. */
@EnabledIfSystemProperty(named = OpenDrives.PROPERTY, matches = ".+")
class OpenDrivesTest {
  /** A trial with differences of differences, varints and deflate in chunks of 60 s reached 2.3. */
  @Test
  void realDrivesComeBackAndTakeLessThanHalfOfWhatATrialReached() throws Exception {
    OpenDrives drives = OpenDrives.ofProperty();
    long octets = 0;
    long samples = 0;
    for (int trip = 0; trip < drives.count(); trip++) {
      SampleList drive = new SampleList();
      drives.tell(trip, drive);
      SegmentList segments = new SegmentList(32_768);
      drive.forEach(segments::add);
      segments.finish();

      SampleList back = new SampleList();
      for (int number = 0; number < segments.count(); number++) {
        Segment.decode(segments.segment(number)).forEach(back);
        octets += segments.segment(number).length + segments.overview(number).length;
      }
      assertThat(back).isEqualTo(drive);
      samples += drive.size();
    }
    assertThat(octets / (double) samples).as("bytes a sample").isLessThan(1.15);
  }
}
