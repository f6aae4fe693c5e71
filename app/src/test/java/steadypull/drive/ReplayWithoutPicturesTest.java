package steadypull.drive;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import steadypull.advice.AdviceEvent;
import steadypull.advice.AdviceJson;
import steadypull.advice.RuleSet;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** A replay at which nobody looks is spared its pictures, and nothing else. */
class ReplayWithoutPicturesTest {
  private static final int SECONDS = 300;

  private static final Map<Channel, Double> PULL =
      Map.of(
          Channels.REFERENCE_TORQUE, 1000.0,
          Channels.DELIVERED_TORQUE, 80.0,
          Channels.ENGINE_SPEED, 2000.0,
          Channels.VEHICLE_SPEED, 80.0,
          Channels.AIR_MASS_FLOW, 210.0,
          Channels.FUEL_RATE, 41.0,
          Channels.AMBIENT_AIR_TEMP, 36.0);

  private static final class Said implements PipelineOutput {
    private final boolean isLooking;
    private final List<String> advice = new ArrayList<>();
    private int pictures;

    Said(boolean isLooking) {
      this.isLooking = isLooking;
    }

    @Override
    public void advice(AdviceEvent event) {
      advice.add(AdviceJson.event(event));
    }

    @Override
    public void second(long timeMicros, Supplier<DriveSnapshot> picture) {
      if (isLooking) {
        assertThat(picture.get().timeMicros()).isEqualTo(timeMicros);
        pictures++;
      }
    }
  }

  @Test
  void whatIsSaidDoesNotDependOnWhoLooks() {
    Said watched = replayed(true);
    Said unwatched = replayed(false);
    assertThat(watched.pictures).isEqualTo(SECONDS);
    assertThat(watched.advice).isNotEmpty();
    assertThat(unwatched.advice).isEqualTo(watched.advice);
  }

  /** A pull that drives the coolant by a kelvin every ten seconds. */
  private static Said replayed(boolean isLooking) {
    Said said = new Said(isLooking);
    DriveSetup setup =
        new DriveSetup(
            Vehicle.unknown("rig", CoolingLayout.AIR_TO_AIR),
            RuleSet.shipped(),
            Locale.ENGLISH,
            UnitSystem.METRIC,
            true);
    new Replay(setup, said)
        .<RuntimeException>run(
            taker -> {
              for (int second = 1; second <= SECONDS; second++) {
                long micros = second * 1_000_000L;
                PULL.forEach((channel, value) -> taker.accept(new Sample(channel, micros, value)));
                double coolant = 88 + Math.floor(second / 10.0);
                taker.accept(new Sample(Channels.ENGINE_COOLANT_TEMP, micros, coolant));
              }
            });
    return said;
  }
}
