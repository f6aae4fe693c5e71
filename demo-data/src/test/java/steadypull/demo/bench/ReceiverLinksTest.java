package steadypull.demo.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import steadypull.adapter.link.LinkException;
import steadypull.adapter.link.ListeningSource;
import steadypull.adapter.position.PositionReport;
import steadypull.adapter.position.ReceiverListener;
import steadypull.adapter.position.ReceiverState;
import steadypull.adapter.position.SatelliteReceiver;
import steadypull.demo.DemoWorld;
import steadypull.demo.road.Drive;
import steadypull.demo.road.Road;

/** The invented receiver is understood by the reader of real ones, and tells the truth. */
class ReceiverLinksTest {
  private static final double METRES_PER_DEGREE = 111_195; // sphere of 6371 km

  @Test
  void receiverIsWhereTheVehicleIs() throws LinkException {
    Heard heard = listen("demo-receiver:long-hot-grade?speed=10000&start=60", 30);

    Drive drive = DemoWorld.drive(DemoWorld.scenario("long-hot-grade").orElseThrow(), 1);
    assertThat(heard.reports).hasSizeGreaterThanOrEqualTo(30);
    for (int second = 1; second <= 30; second++) {
      drive.advanceTo(60 + second);
      Road.Place place = drive.place().orElseThrow();
      PositionReport.Fixed fix = (PositionReport.Fixed) heard.reports.get(second - 1);
      // Four standard deviations of a usual receiver; two decimals of a knot are told.
      assertThat(fix.latitudeDegrees()).isCloseTo(place.latitude(), within(9 / METRES_PER_DEGREE));
      assertThat(fix.longitudeDegrees())
          .isCloseTo(place.longitude(), within(9 / METRES_PER_DEGREE / 0.78));
      assertThat(fix.altitudeMetres().orElseThrow()).isCloseTo(place.altitude(), within(16.0));
      assertThat(fix.speedKilometresPerHour().orElseThrow())
          .isCloseTo(drive.state().motion().speed() * 3.6, within(0.01));
    }
    assertThat(heard.states.getFirst()).isEqualTo(new ReceiverState.Fixed());
  }

  @Test
  void withoutSatellitesThereIsNoPosition() throws LinkException {
    Heard heard = listen("demo-receiver:cool-day?speed=10000&fault=silent@3-6", 10);

    assertThat(heard.reports.subList(0, 8))
        .extracting(report -> report instanceof PositionReport.Fixed)
        .containsExactly(true, true, false, false, false, true, true, true);
  }

  @Test
  void indoorsNoSatelliteIsSeen() throws LinkException {
    String indoors =
        DemoWorld.scenarios().stream()
            .filter(each -> DemoWorld.drive(each, 1).place().isEmpty())
            .findFirst()
            .orElseThrow()
            .name();

    assertThat(listen("demo-receiver:" + indoors + "?speed=10000", 3).reports)
        .allMatch(PositionReport.Unfixed.class::isInstance);
  }

  @Test
  void receiverThatVanishesIsFoundAgain() throws LinkException {
    Heard heard = listen("demo-receiver:cool-day?speed=10000&fault=vanish@5-9", 12);

    assertThat(heard.states)
        .extracting(state -> state.getClass().getSimpleName())
        .startsWith("Fixed", "Absent", "Fixed");
  }

  @Test
  void receiverCannotRunAheadOfTheDay() {
    assertThatThrownBy(() -> DemoWorld.receivers().find("demo-receiver:cool-day?speed=max"))
        .isInstanceOf(LinkException.class)
        .hasMessageContaining("speed=20");
  }

  @Test
  void otherAddressesAreLeftToOthers() throws LinkException {
    assertThat(DemoWorld.receivers().find("demo:cool-day")).isEmpty();
    assertThat(DemoWorld.links().find("demo-receiver:cool-day")).isEmpty();
  }

  private static Heard listen(String address, int reports) throws LinkException {
    ListeningSource source =
        ListeningSource.find(address, List.of(DemoWorld.receivers())).orElseThrow();
    Heard heard = new Heard(reports);
    SatelliteReceiver receiver = new SatelliteReceiver(source, source.clock(), heard);
    heard.onEnough = receiver::close;
    receiver.run();
    return heard;
  }

  private static final class Heard implements ReceiverListener {
    final List<PositionReport> reports = new ArrayList<>();
    final List<ReceiverState> states = new ArrayList<>();
    private final int enough;
    Runnable onEnough = () -> {};

    Heard(int enough) {
      this.enough = enough;
    }

    @Override
    public void report(PositionReport report) {
      reports.add(report);
      if (reports.size() >= enough) {
        onEnough.run();
      }
    }

    @Override
    public void receiverState(ReceiverState state, long nanoTime) {
      states.add(state);
    }
  }
}
