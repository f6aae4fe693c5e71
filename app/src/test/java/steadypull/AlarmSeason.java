package steadypull;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.advice.RuleSet;
import steadypull.channel.UnitSystem;
import steadypull.demo.season.Season;
import steadypull.demo.season.SeasonTrip;
import steadypull.drive.DrivePipeline;
import steadypull.drive.DriveSetup;
import steadypull.drive.PipelineOutput;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;

/** Trips of the demo season through the pipeline of the live drive, with nobody who answers. */
final class AlarmSeason {
  private static final RuleSet RULES = RuleSet.shipped();

  private AlarmSeason() {}

  /** All trips of the season, oldest first. */
  static List<SeasonTrip> trips() {
    return Season.of(1).trips();
  }

  /** Drives a trip and adds what was said; returns it. */
  static List<AdviceEvent> drive(SeasonTrip trip, AlarmLoad load) throws VehicleFileException {
    DemoSeasonTrip told = new DemoSeasonTrip(trip);
    Vehicle vehicle =
        VehicleJson.read(told.vehicleFile(), "demo:season")
            .withRig(VehicleJson.readRig(told.rigFile(), "demo:season"));
    List<AdviceEvent> said = new ArrayList<>();
    DrivePipeline pipeline =
        new DrivePipeline(
            new DriveSetup(vehicle, RULES, Locale.ENGLISH, UnitSystem.METRIC, true),
            Instant.EPOCH,
            new PipelineOutput() {
              @Override
              public void advice(AdviceEvent event) {
                said.add(event);
              }
            });
    long end = told.drive(pipeline::accept);
    pipeline.advanceTo(end);
    load.add(trip.start() + " " + trip.vehicleName(), isTowing(trip), said, end / 1e6);
    return said;
  }

  /**
   * The figures: one alarm in ten minutes in the worst hour, one a trip without a trailer (our
   * choice), under 1 % of ten-minute periods in flood, none chattering, none standing for a day,
   * and at most a fifth of what is announced asks for an answer (80, 15 and 5 % low, medium and
   * high).
   */
  static void check(AlarmLoad load) {
    assertThat(load.worstHour()).isLessThanOrEqualTo(6);
    assertThat(load.worstNotTowing()).isLessThanOrEqualTo(1);
    assertThat(load.floodShare()).isLessThan(0.01);
    assertThat(load.chattering()).isEmpty();
    assertThat(load.longestStandingSeconds()).isLessThan(86_400);
    assertThat(load.shareOf(Level.CAUTION) + load.shareOf(Level.WARNING)).isLessThanOrEqualTo(0.2);
    assertThat(load.shareOf(Level.WARNING)).isLessThanOrEqualTo(0.05);
  }

  static boolean isTowing(SeasonTrip trip) {
    return trip.fitted().contains("trailer");
  }
}
