package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import steadypull.adapter.ReaderSettings.Pace;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;

/** However a reader is ended, it ends and says so. */
class EndOfTheReaderTest {
  private final ScriptedDrive drive = new ScriptedDrive();
  private final ScriptedAdapter adapter = drive.adapter;
  private final Recording recording = drive.recording;

  @Test
  void interruptedThreadEndsTheReader() {
    VehicleReader reader = drive.reader();
    recording.at =
        now -> {
          if (now > 5) {
            Thread.currentThread().interrupt();
          }
        };

    reader.run();

    assertThat(Thread.interrupted()).isTrue();
    assertThat(recording.story()).endsWith("Connected", "Closed");
  }

  @Test
  void readerClosedBeforeItRunsOpensNothing() {
    VehicleReader reader = drive.reader();

    reader.close();
    reader.run();

    assertThat(adapter.openings).isZero();
    assertThat(recording.story()).containsExactly("Closed");
  }

  // A radio link may take its time to say that nobody is there.
  @Test
  void closingEndsAnOpeningThatBlocks() throws InterruptedException {
    CountDownLatch isOpening = new CountDownLatch(1);
    LinkSource blocking = new BlockingSource(adapter.clock, isOpening, new CountDownLatch(1));
    VehicleReader reader = new VehicleReader(blocking, drive.settings(Pace.POLITE), recording);
    Thread port = Thread.ofPlatform().daemon().start(reader);

    isOpening.await();
    reader.close();

    assertThat(port.join(Duration.ofSeconds(60))).isTrue();
    assertThat(recording.story()).containsExactly("Opening", "Closed");
  }

  private record BlockingSource(LinkClock clock, CountDownLatch isOpening, CountDownLatch never)
      implements LinkSource {
    @Override
    public String address() {
      return "blocking:port";
    }

    @Override
    public Link open() throws LinkException {
      isOpening.countDown();
      try {
        never.await();
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      throw new LinkException(address(), "open", "it was interrupted", "Try again.", null);
    }
  }
}
