package steadypull.adapter.position;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import steadypull.adapter.link.Link;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.LinkSource;
import steadypull.adapter.link.ListeningSource;

/** A receiver that comes and goes, in scripted time. */
class SatelliteReceiverTest {
  private static final String GONE = "gone";

  private final ScriptedPort port = new ScriptedPort();
  private final Heard heard = new Heard();

  @Test
  void receiverThatFindsItsSatellitesIsTold() throws LinkException {
    port.says(SpokenSentences.spoken("GNGGA,174511.00,,,,,0,00,99.99,,,,,,"), "");
    port.says(SpokenSentences.minimum("174512.00", 40), SpokenSentences.fixData("174512.00", 600));
    listen();

    assertThat(heard.story()).containsExactly("Unfixed", "Fixed", "Closed");
    assertThat(heard.reports).hasSize(2);
  }

  // The trip's clock is that of the vehicle's link, which may be another one.
  @Test
  void reportsCarryTheClockThatWasGiven() throws LinkException {
    port.says(SpokenSentences.minimum("174512.00", 40), SpokenSentences.fixData("174512.00", 600));
    listen();

    assertThat(heard.reports).extracting(PositionReport::nanoTime).containsExactly(77L);
  }

  @Test
  void absenceIsToldOnceHoweverLongItLasts() throws LinkException {
    for (int tries = 0; tries < 20; tries++) {
      port.refuses();
    }
    listen();

    assertThat(heard.story()).containsExactly("Absent", "Closed");
    assertThat(heard.absence()).contains("scripted:receiver", "no such port");
  }

  @Test
  void waitsBetweenTriesGrowAndEndAtHalfAMinute() throws LinkException {
    for (int tries = 0; tries < 8; tries++) {
      port.refuses();
    }
    listen();

    assertThat(port.openedAtSeconds).containsExactly(0L, 1L, 3L, 8L, 18L, 48L, 78L, 108L, 138L);
  }

  @Test
  void receiverThatIsPluggedInAgainIsFoundAgain() throws LinkException {
    port.says(SpokenSentences.minimum("174512.00", 40), SpokenSentences.fixData("174512.00", 600));
    port.says(GONE);
    port.refuses();
    port.says(SpokenSentences.minimum("174612.00", 40), SpokenSentences.fixData("174612.00", 700));
    listen();

    assertThat(heard.story()).containsExactly("Fixed", "Absent", "Fixed", "Closed");
    assertThat(heard.reports).hasSize(2);
  }

  @Test
  void portOnWhichSomethingElseSpeaksIsNoReceiver() throws LinkException {
    port.says("READY\r\n>", "", "$GPGGA,nonsense*00\r\n");
    port.saysNothingForSeconds(6);
    listen();

    assertThat(heard.story()).containsExactly("Absent", "Closed");
    assertThat(heard.absence()).contains("scripted:receiver", "NMEA 0183");
    assertThat(heard.reports).isEmpty();
  }

  @Test
  void pauseOfTheReceiverEndsAMoment() throws LinkException {
    port.says(SpokenSentences.fixData("174512.00", 600), "");
    listen();

    assertThat(heard.reports).hasSize(1);
  }

  @Test
  void nothingIsEverSaidToAReceiver() throws LinkException {
    port.says("READY\r\n>", SpokenSentences.minimum("174512.00", 40));
    port.saysNothingForSeconds(20);
    listen();

    assertThat(port.written).isZero();
  }

  private void listen() throws LinkException {
    ListeningSource source =
        ListeningSource.find("scripted:receiver", List.of(address -> Optional.of(port)))
            .orElseThrow();
    SatelliteReceiver receiver = new SatelliteReceiver(source, new StandingClock(), heard);
    port.onEnd = receiver::close;
    receiver.run();
  }

  /** Says what it was told to, piece by piece; at the end of the script the test is over. */
  private static final class ScriptedPort implements LinkSource, LinkClock {
    private static final String REFUSED = "refused";

    final List<Long> openedAtSeconds = new ArrayList<>();
    private final Deque<String> script = new ArrayDeque<>();
    int written;
    Runnable onEnd = () -> {};
    private long nanoTime;

    void says(String... pieces) {
      script.addAll(List.of(pieces));
    }

    void refuses() {
      script.add(REFUSED);
    }

    void saysNothingForSeconds(int seconds) {
      for (int slice = 0; slice < seconds * 5; slice++) {
        script.add("");
      }
    }

    @Override
    public String address() {
      return "scripted:receiver";
    }

    @Override
    public LinkClock clock() {
      return this;
    }

    @Override
    public Link open() throws LinkException {
      openedAtSeconds.add(nanoTime / 1_000_000_000);
      if (REFUSED.equals(script.peek())) {
        script.remove();
        throw failure("there is no such port");
      }
      return new Opened();
    }

    private LinkException failure(String found) {
      return new LinkException(address(), "open", found, "Plug it in.", /* cause= */ null);
    }

    @Override
    public long nanoTime() {
      return nanoTime;
    }

    @Override
    public void pause(Duration span) {
      nanoTime += span.toNanos();
    }

    private final class Opened implements Link {
      @Override
      public String address() {
        return ScriptedPort.this.address();
      }

      @Override
      public void write(byte[] bytes) {
        written++;
      }

      @Override
      public byte[] read(Duration patience) throws LinkException {
        String next = script.poll();
        if (next == null) {
          onEnd.run();
          return new byte[0];
        }
        if (next.equals(GONE)) {
          throw failure("the device has gone");
        }
        nanoTime += next.isEmpty() ? patience.toNanos() : 0;
        return next.getBytes(StandardCharsets.US_ASCII);
      }

      @Override
      public void close() {}
    }
  }

  private static final class StandingClock implements LinkClock {
    @Override
    public long nanoTime() {
      return 77;
    }

    @Override
    public void pause(Duration span) {
      throw new IllegalStateException("The clock of the stamps is only read");
    }
  }

  private static final class Heard implements ReceiverListener {
    final List<PositionReport> reports = new ArrayList<>();
    final List<ReceiverState> states = new ArrayList<>();

    @Override
    public void report(PositionReport report) {
      reports.add(report);
    }

    @Override
    public void receiverState(ReceiverState state, long nanoTime) {
      states.add(state);
    }

    List<String> story() {
      return states.stream().map(state -> state.getClass().getSimpleName()).toList();
    }

    String absence() {
      return states.stream()
          .filter(ReceiverState.Absent.class::isInstance)
          .map(state -> ((ReceiverState.Absent) state).reason())
          .findFirst()
          .orElseThrow();
    }
  }
}
