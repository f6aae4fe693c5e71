package steadypull.drive;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.road.FlatGround;
import steadypull.store.TripDetails;

/**
 * Whether a trip was driven on a dynamometer: somebody said so, or the wheels turned and the place
 * stayed. Without a receiver and without a word nobody can know. One thread.
 */
final class OnRollers {
  /** How people say it, in English and German, as words of their own. */
  private static final Pattern SAID =
      Pattern.compile(
          "\\b(dynamometer|dyno|rollers|rolling"
              + " road|indoors|prüfstand|rollenprüfstand|leistungsprüfstand)\\b",
          Pattern.UNICODE_CHARACTER_CLASS);

  /** A receiver's wandering and reflections at a workshop's door stay within it (our choice). */
  private static final double STAYED_METRES = 50;

  private static final double LEAST_WHEEL_METRES = 1000;
  private static final double KILOMETRES_PER_HOUR = 3.6;
  private static final double LONGEST_STEP_SECONDS = 5;

  private OptionalDouble latitude = OptionalDouble.empty();
  private Optional<FlatGround> ground = Optional.empty();
  private boolean hasLeft;
  private double wheelMetres;
  private long lastSpeedMicros = Long.MAX_VALUE;

  /** Whether what was said of a trip names a dynamometer. */
  static boolean isSaid(TripDetails details) {
    String all =
        String.join(
            "\n",
            details.label(),
            details.note(),
            String.join("\n", details.tags()),
            details.outside());
    return SAID.matcher(all.toLowerCase(Locale.ROOT)).find();
  }

  void accept(Sample sample) {
    if (sample.channel().equals(Channels.VEHICLE_SPEED)) {
      turn(sample);
    } else if (sample.channel().equals(Channels.LATITUDE)) {
      latitude = OptionalDouble.of(sample.value());
    } else if (sample.channel().equals(Channels.LONGITUDE) && latitude.isPresent()) {
      locate(latitude.getAsDouble(), sample.value());
    }
  }

  private void turn(Sample sample) {
    double seconds = (sample.timeMicros() - lastSpeedMicros) / 1e6;
    if (seconds > 0) {
      wheelMetres += sample.value() / KILOMETRES_PER_HOUR * Math.min(seconds, LONGEST_STEP_SECONDS);
    }
    lastSpeedMicros = sample.timeMicros();
  }

  private void locate(double latitudeDegrees, double longitudeDegrees) {
    FlatGround around =
        ground.orElseGet(() -> FlatGround.around(latitudeDegrees, longitudeDegrees));
    ground = Optional.of(around);
    FlatGround.Spot here = around.spot(latitudeDegrees, longitudeDegrees);
    hasLeft |= here.distanceTo(new FlatGround.Spot(0, 0)) >= STAYED_METRES;
  }

  /** Whether the wheels have turned for long and the place has stayed all the time. */
  boolean hasStayed() {
    return ground.isPresent() && !hasLeft && wheelMetres >= LEAST_WHEEL_METRES;
  }
}
