package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.demo.DemoWorld;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleSignal;

/** Faults of the program itself: nobody waits for ever, and what was recorded is kept. */
@Timeout(300)
class DriveThatFailsTest {
  private static final String ADDRESS = "demo:cool-day?speed=max&start=300";

  @TempDir private Path folder;

  @Test
  void aScreenThatFailsEndsTheDriveWithItsTripSealed() throws Exception {
    Heard heard = new Heard();
    PipelineOutput failing =
        new PipelineOutput() {
          @Override
          public void second(DriveSnapshot snapshot) {
            heard.second(snapshot);
            if (snapshot.link().state() != LinkSummary.State.CLOSED && heard.seconds.size() > 20) {
              throw new IllegalStateException("no paint left");
            }
          }
        };
    try (TripLibrary library = TripLibrary.open(folder)) {
      RunningDrive drive = begin(library, find(ADDRESS), failing);

      assertThatThrownBy(() -> drive.outcome().join())
          .isInstanceOf(CompletionException.class)
          .hasMessageContainingAll(ADDRESS, "expected", "no paint left", "begin a new drive");
      drive.close();

      assertThat(library.trips(Optional.empty())).singleElement().matches(TripSummary::sealed);
      assertThat(heard.last().link().state()).isEqualTo(LinkSummary.State.CLOSED);
      assertThat(heard.last().recording()).isInstanceOf(RecordingState.Failed.class);
    }
  }

  @Test
  void aPortThatFailsInAnUnforeseenWayEndsTheDriveAndSaysSo() throws Exception {
    Heard heard = new Heard();
    LinkSource bench = find(ADDRESS);
    try (TripLibrary library = TripLibrary.open(folder)) {
      RunningDrive drive = begin(library, new Port(bench, 20, 0), heard);

      assertThatThrownBy(() -> drive.outcome().join()).hasMessageContaining("driver of the port");
      assertThat(library.trips(Optional.empty())).singleElement().matches(TripSummary::sealed);
      assertThat(heard.last().link().detail()).contains("driver of the port");
    }
  }

  // Whoever begins another drive at once must find the port free.
  @Test
  void aDriveHasEndedOnlyWhenItsPortIsClosed() throws Exception {
    Port port = new Port(find(ADDRESS), Double.POSITIVE_INFINITY, 1);
    try (TripLibrary library = TripLibrary.open(folder)) {
      CompletableFuture<DriveSnapshot> connected = new CompletableFuture<>();
      PipelineOutput waiting =
          new PipelineOutput() {
            @Override
            public void second(DriveSnapshot snapshot) {
              if (snapshot.link().state() == LinkSummary.State.CONNECTED) {
                connected.complete(snapshot);
              }
            }
          };
      RunningDrive drive = begin(library, port, waiting);
      connected.join();
      assertThat(port.open).isEqualTo(1);
      CompletableFuture<Void> closed = CompletableFuture.runAsync(drive::close);

      port.closing.await();
      assertThat(drive.outcome()).isNotDone();
      assertThat(closed).isNotDone();
      port.mayClose.countDown();
      closed.join();

      assertThat(port.open).isZero();
    }
  }

  @Test
  void aDriveMayBeEndedFromItsOwnThread() throws Exception {
    CompletableFuture<RunningDrive> self = new CompletableFuture<>();
    PipelineOutput impatient =
        new PipelineOutput() {
          @Override
          public void second(DriveSnapshot snapshot) {
            self.join().close();
          }
        };
    try (TripLibrary library = TripLibrary.open(folder)) {
      RunningDrive drive = begin(library, find(ADDRESS), impatient);
      self.complete(drive);

      assertThat(drive.outcome().join().unkept()).isEmpty();
    }
  }

  // A vehicle file is written by people; the gate refuses a header that is none.
  @Test
  void aVehicleFileWithAHeaderThatIsNoneIsRefusedInWords() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      library.save(
          Vehicle.unknown("My rig", CoolingLayout.AIR_TO_AIR)
              .withSignals(
                  List.of(
                      new VehicleSignal(
                          "transmission_fluid_temp",
                          0x1E1C,
                          "7E8",
                          0,
                          16,
                          false,
                          0.0625,
                          -40,
                          "degC",
                          -40,
                          215))));

      assertThatThrownBy(() -> begin(library, find(ADDRESS), new Heard()))
          .isInstanceOf(DriveException.class)
          .hasMessageContainingAll("My rig", "transmission_fluid_temp", "7E8", "Correct");
    }
  }

  private static RunningDrive begin(TripLibrary library, LinkSource source, PipelineOutput observer)
      throws DriveException {
    LinkOffer offer =
        new LinkOffer(
            address -> Optional.of(source),
            List.of(),
            address -> Optional.empty(),
            address -> Optional.empty());
    LiveDrives drives =
        new LiveDrives(
            library,
            List.of(offer),
            DemoDrives.ENGLISH,
            InstantSource.fixed(DemoDrives.START),
            "test");
    return drives.begin(
        new DriveRequest(source.address(), "My rig", "", Pace.POLITE, DriveEnd.never()), observer);
  }

  private static LinkSource find(String address) throws LinkException {
    return DemoWorld.links().find(address).orElseThrow();
  }

  /** A bench whose port fails at a time, and whose closing waits until it may. */
  private static final class Port implements LinkSource {
    private final LinkSource bench;
    private final double failsAtSeconds;
    private final CountDownLatch closing = new CountDownLatch(1);
    private final CountDownLatch mayClose;
    private volatile int open;

    Port(LinkSource bench, double failsAtSeconds, int waitsToClose) {
      this.bench = bench;
      this.failsAtSeconds = failsAtSeconds;
      this.mayClose = new CountDownLatch(waitsToClose);
    }

    @Override
    public String address() {
      return bench.address();
    }

    @Override
    public LinkClock clock() {
      return bench.clock();
    }

    @Override
    @SuppressWarnings("NonAtomicVolatileUpdate") // written by the port's thread alone
    public Link open() throws LinkException {
      Link link = bench.open();
      open++;
      return new Link() {
        @Override
        public String address() {
          return link.address();
        }

        @Override
        public void write(byte[] bytes) throws LinkException {
          link.write(bytes);
        }

        @Override
        public byte[] read(Duration patience) throws LinkException {
          if (clock().nanoTime() / 1e9 > failsAtSeconds) {
            throw new IllegalStateException("the driver of the port is broken");
          }
          return link.read(patience);
        }

        @Override
        public void close() {
          closing.countDown();
          awaitUninterruptibly(mayClose);
          link.close();
          open--;
        }
      };
    }

    /**
     * The drive interrupts its port's thread to hurry it; a port that is slow to close stays so.
     */
    private static void awaitUninterruptibly(CountDownLatch latch) {
      boolean wasHurried = false;
      boolean isOpen = false;
      while (!isOpen) {
        try {
          latch.await();
          isOpen = true;
        } catch (InterruptedException hurried) {
          wasHurried = true;
        }
      }
      if (wasHurried) {
        Thread.currentThread().interrupt();
      }
    }
  }
}
