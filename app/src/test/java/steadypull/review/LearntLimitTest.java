package steadypull.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.DerateBegun;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.TripHeat;
import steadypull.vehicle.Vehicle;

/** What derates say of a vehicle's limits, and what they must not say. */
class LearntLimitTest {
  private static final Instant FIRST = Instant.parse("2026-05-01T08:00:00Z");
  private static final Channel CHARGE = Channels.CHARGE_COOLANT_TEMP;
  private static final Channel ENGINE = Channels.ENGINE_COOLANT_TEMP;

  private static Vehicle vehicle(Channel channel, double celsius, Provenance.Kind kind) {
    return Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR)
        .withLimit(new Limit(channel, celsius, new Provenance(kind, "")));
  }

  /** A trip for each list of temperatures at which a derate began. */
  private static List<LessonOfTrip> trips(Channel channel, double[]... begun) {
    List<LessonOfTrip> lessons = new ArrayList<>();
    for (double[] trip : begun) {
      List<DerateBegun> derates = new ArrayList<>();
      for (double celsius : trip) {
        derates.add(new DerateBegun(channel.id(), celsius, List.of()));
      }
      lessons.add(
          new LessonOfTrip(
              FIRST.plusSeconds(86_400L * lessons.size()), new TripHeat(1, List.of(), derates)));
    }
    return lessons;
  }

  private static Optional<Limit> proposed(Vehicle vehicle, List<LessonOfTrip> lessons) {
    return LearntLimit.of(vehicle, lessons).stream()
        .flatMap(each -> each.proposal().stream())
        .findFirst();
  }

  @Test
  void whereDeratesBeginIsOfferedWithItsEvidence() {
    Limit limit =
        proposed(
                vehicle(CHARGE, 100, Provenance.Kind.DEFAULT),
                trips(CHARGE, new double[] {94, 95}, new double[] {96}, new double[] {}))
            .orElseThrow();

    assertThat(limit.celsius()).as("told 2 K after it began").isEqualTo(93);
    assertThat(limit.provenance())
        .isEqualTo(
            new Provenance(Provenance.Kind.LEARNT, "3 derates on 2 trips told at 94 to 96 degC"));
  }

  @Test
  void tooFewDeratesTripsOrTooFarApartOfferNothing() {
    Vehicle vehicle = vehicle(CHARGE, 100, Provenance.Kind.DEFAULT);

    assertThat(proposed(vehicle, trips(CHARGE, new double[] {95}, new double[] {95}))).isEmpty();
    assertThat(proposed(vehicle, trips(CHARGE, new double[] {95, 95, 95, 95}))).isEmpty();
    assertThat(proposed(vehicle, trips(CHARGE, new double[] {86, 95}, new double[] {95.5, 94})))
        .isEmpty();
    assertThat(proposed(vehicle, trips(CHARGE, new double[] {103, 103.5}, new double[] {102})))
        .as("it stands there already")
        .isEmpty();
  }

  @Test
  void aDerateWithTwoHotChannelsCountsForNoneAndIsTold() {
    List<LessonOfTrip> lessons =
        new ArrayList<>(trips(CHARGE, new double[] {94, 95}, new double[] {}));
    lessons.add(
        new LessonOfTrip(
            FIRST.plusSeconds(900_000),
            new TripHeat(
                1,
                List.of(),
                List.of(
                    new DerateBegun(
                        CHARGE.id(), 96, List.of(Channels.CHARGE_AIR_TEMP_OUT.id()))))));

    LearntLimit learnt =
        LearntLimit.of(vehicle(CHARGE, 100, Provenance.Kind.DEFAULT), lessons).getFirst();

    assertThat(learnt.proposal()).isEmpty();
    assertThat(learnt.celsius()).containsExactly(94.0, 95.0);
    assertThat(learnt.unclear()).isEqualTo(1);
  }

  @Test
  void whatOnlyCostsPowerMayBeRaised() {
    Optional<Limit> limit =
        proposed(
            vehicle(CHARGE, 100, Provenance.Kind.MAKER),
            trips(CHARGE, new double[] {106, 107}, new double[] {107}));

    assertThat(limit.map(Limit::celsius)).contains(105.0);
    assertThat(limit.map(each -> each.provenance().kind())).contains(Provenance.Kind.LEARNT);
  }

  /** Whatever trips show: what breaks is never given more than was entered. */
  @Test
  void noEvidenceEverRaisesWhatBreaks() {
    Random random = new Random(9);
    List<Channel> breaking =
        List.of(
            ENGINE,
            Channels.ENGINE_OIL_TEMP,
            Channels.TRANSMISSION_FLUID_TEMP,
            Channels.EXHAUST_TEMP_BEFORE_TURBINE,
            Channels.EXHAUST_TEMP_AFTER_TURBINE);
    int lowered = 0;
    for (int run = 0; run < 3000; run++) {
      Channel channel = breaking.get(random.nextInt(breaking.size()));
      Provenance.Kind[] kinds = Provenance.Kind.values();
      double entered = 80 + random.nextInt(60);
      double about = entered + random.nextInt(-15, 16);
      double[][] begun = new double[1 + random.nextInt(5)][];
      for (int trip = 0; trip < begun.length; trip++) {
        begun[trip] =
            random.doubles(random.nextInt(4), about - 3, about + 3).map(Math::rint).toArray();
      }
      Optional<Limit> limit =
          proposed(
              vehicle(channel, entered, kinds[random.nextInt(kinds.length)]),
              trips(channel, begun));
      assertThat(limit.map(Limit::celsius).orElse(entered)).isLessThanOrEqualTo(entered);
      lowered += limit.isPresent() ? 1 : 0;
    }
    assertThat(lowered).as("lowering is offered all the same").isGreaterThan(500);
  }
}
