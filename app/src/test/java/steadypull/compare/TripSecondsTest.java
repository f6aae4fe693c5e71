package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.exchange.ExportChoice;
import steadypull.exchange.TransferWatch;
import steadypull.exchange.TripTable;
import steadypull.store.AddedTrip;
import steadypull.store.LinkIdentity;
import steadypull.store.NewTrip;
import steadypull.store.TripDetails;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** Trips of a library and tables as runs are taken from them. */
class TripSecondsTest {
  private static final Vehicle WATTLE = Vehicle.unknown("Wattle 9", CoolingLayout.WATER_TO_AIR);

  private static final PlantTrip PULL =
      PlantTrip.onRollers(1).rollers(30, 0.15).rollers(90, 0.85).rollers(60, 0.15);

  @TempDir Path folder;

  /** An evening in the west is the next day by universal time. */
  @Test
  void aTripOfALibraryKeepsItsOwnDayAndWhatWasNoticed() throws Exception {
    NewTrip trip =
        new NewTrip(
            WATTLE,
            Instant.parse("2026-05-05T02:10:00Z"),
            Optional.of(ZoneOffset.ofHours(-8)),
            TripDetails.NONE.withOutsideCelsius(OptionalDouble.of(18.5)),
            "test",
            "0");
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id = library.keep(trip, PULL.samples(), 180_000_000);
      TripSummary summary = library.find(id);

      TripSeconds read = TripSeconds.ofTrip(library, summary);

      assertThat(read.day()).contains(LocalDate.of(2026, 5, 4));
      assertThat(read.name()).isEqualTo(id);
      Run run = only(read);
      assertThat(run.onsetSeconds()).isCloseTo(30, within(2.0));
      assertThat(run.start().outsideCelsius()).hasValue(18.5);
    }
  }

  /** The same samples give the same run, whichever way they come. */
  @Test
  void aTableGivesTheSameRunAsTheTrip() throws Exception {
    Path file = folder.resolve("pull.csv");
    TripTable.write(
        file,
        PULL.samples().stream().map(Sample::channel).distinct().toList(),
        taker -> PULL.samples().forEach(taker),
        ExportChoice.ALL,
        TransferWatch.NONE);

    TripSeconds read =
        TripSeconds.ofTable("pull.csv", TripTable.open(file), WATTLE, Optional.empty());

    Run run = only(read);
    Run direct = only(PULL.read("pull.csv"));
    assertThat(read.day()).isEmpty();
    assertThat(run.onsetSeconds()).isEqualTo(direct.onsetSeconds());
    assertThat(run.start()).isEqualTo(direct.start());
    assertThat(run.series().channels()).isEqualTo(direct.series().channels());
  }

  /** A roller's own power is measured; what is computed from torque gives way to it. */
  @Test
  void aPowerAtTheWheelsThatATableBringsIsTaken() {
    List<Sample> samples = new ArrayList<>(PULL.samples());
    for (int second = 0; second < 180; second++) {
      samples.add(
          new Sample(
              Channels.WHEEL_POWER, second * 1_000_000L, second >= 50 && second < 110 ? 80 : 4));
    }
    samples.sort(Comparator.comparingLong(Sample::timeMicros));

    ProposedRun found = RunFinding.propose(PlantTrip.of("roller", samples)).getFirst();

    assertThat(found.onsetSeconds()).isCloseTo(50, within(1.0));
    assertThat(found.kilowatts()).isCloseTo(80, within(1.0));
  }

  /** On a drive it was computed up to a second late; afterwards it need not be. */
  @Test
  void whatALiveDriveHasComputedIsComputedAnew() throws Exception {
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id =
          library.addTrips(
              adder -> {
                AddedTrip added =
                    adder.begin(
                        new NewTrip(
                            WATTLE, Instant.parse("2026-05-05T02:10:00Z"), "", "port", "0"));
                added.describe(new LinkIdentity("an adapter", "", ""));
                added.append(new Sample(Channels.WHEEL_POWER, 0, 999));
                PULL.samples().forEach(added::append);
                return added.seal(180_000_000);
              });

      TripSeconds live = TripSeconds.ofTrip(library, library.find(id));

      assertThat(live.at(Channels.WHEEL_POWER, 0)).isEmpty();
      assertThat(RunFinding.propose(live)).isEqualTo(RunFinding.propose(PULL.read("pull")));
    }
  }

  private static Run only(TripSeconds trip) {
    return RunFinding.of(List.of(PlantTrip.before(trip)), Channels.CHARGE_AIR_TEMP_OUT, Job.NONE)
        .runs()
        .getFirst();
  }
}
