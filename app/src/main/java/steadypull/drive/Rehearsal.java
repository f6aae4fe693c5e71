package steadypull.drive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import steadypull.advice.AdviceEvent;
import steadypull.advice.Level;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.review.EasedLoad;
import steadypull.review.ScoredDrive;
import steadypull.review.Warning;
import steadypull.road.LatestSamples;
import steadypull.store.LibraryException;
import steadypull.store.TripEntry;
import steadypull.store.TripLibrary;
import steadypull.store.TripSummary;
import steadypull.thermal.Derate;
import steadypull.vehicle.Limit;

/**
 * A trip of the library run again as the live drive would be, to be scored: what was warned of, and
 * what came. The calling thread does the work.
 */
public final class Rehearsal {
  /** Breaks that are shorter belong to one derate (our choice). */
  private static final double ONE_DERATE_SECONDS = 30;

  private static final double HEARD_SECONDS = 15;
  private static final double FRESH_SECONDS = 5;
  private static final double MICROS_PER_SECOND = 1e6;
  private static final long SECOND_MICROS = 1_000_000;

  /**
   * What came of a trip.
   *
   * @param drive what came
   * @param warnings what was said: advice of caution or warning that told a time to the limit
   * @param said what rules said: raised, escalated or put aside because it broke
   * @param isFollowed whether the driver eased the load after advice that the trip has kept, so
   *     that what was foretold could not come
   */
  public record Rehearsed(
      ScoredDrive drive, List<Warning> warnings, List<AdviceEvent> said, boolean isFollowed) {
    public Rehearsed {
      warnings = List.copyOf(warnings);
      said = List.copyOf(said);
    }
  }

  private Rehearsal() {}

  /**
   * Runs a trip.
   *
   * @throws LibraryException if the trip cannot be read
   */
  public static Rehearsed of(DriveSetup setup, TripLibrary library, TripSummary trip)
      throws LibraryException {
    Watching watching = new Watching(setup, (int) Math.ceil(trip.durationSeconds()) + 1);
    new Replay(setup, watching).run(library, trip);
    List<Integer> told = KeptAdvice.raisedSeconds(library.events(trip.id()));
    return watching.rehearsed(told);
  }

  private static final class Watching implements PipelineOutput {
    private final DriveSetup setup;
    private final LatestSamples latest = new LatestSamples();
    private final Map<Channel, double[]> celsius = new LinkedHashMap<>();
    private final List<ScoredDrive.Derated> derates = new ArrayList<>();
    private final WarningLog warnings;
    private final List<AdviceEvent> said = new ArrayList<>();
    private final double[] power;
    private final double[] speed;
    private final boolean[] isCut;
    private int seconds;

    Watching(DriveSetup setup, int most) {
      this.setup = setup;
      warnings = new WarningLog(setup.rules());
      power = new double[most + 1];
      speed = new double[most + 1];
      isCut = new boolean[most + 1];
    }

    @Override
    public void entry(TripEntry entry) {
      if (entry instanceof TripEntry.OfSample(Sample sample)) {
        latest.accept(sample);
      }
    }

    @Override
    public void derate(long micros, Derate derate) {
      int second = (int) (micros / SECOND_MICROS);
      if (second < isCut.length && derate instanceof Derate.Active active) {
        isCut[second] = true;
        cut(active.sinceMicros() / MICROS_PER_SECOND, second);
      }
    }

    @Override
    public void advice(AdviceEvent event) {
      warnings.accept(event);
      if (isSaid(event)) {
        said.add(event);
      }
    }

    /** A notice that is shelved is a rule that broke: nobody can put a notice aside. */
    private static boolean isSaid(AdviceEvent event) {
      return switch (event.kind()) {
        case RAISED, ESCALATED -> true;
        case SHELVED -> event.level().filter(level -> level == Level.NOTICE).isPresent();
        case EASED,
            CLEARED,
            ACKNOWLEDGED,
            UNSHELVED,
            JOINED,
            SUPPRESSED,
            ADVICE_HELD,
            ADVICE_FAILED,
            ADVICE_NOT_FOLLOWED,
            OUT_OF_SERVICE,
            DERATE_BEGAN,
            DERATE_ENDED,
            POWER_LIMITED ->
            false;
      };
    }

    @Override
    public void second(long micros, Supplier<DriveSnapshot> picture) {
      int second = (int) (micros / SECOND_MICROS);
      if (second >= power.length) {
        return;
      }
      seconds = second;
      for (Channel channel : Channels.thermal()) {
        latest
            .within(channel, micros, HEARD_SECONDS)
            .ifPresent(value -> celsius(channel)[second] = value);
      }
      speed[second] = fresh(Channels.VEHICLE_SPEED, micros);
      power[second] =
          fresh(Channels.DELIVERED_TORQUE, micros) * fresh(Channels.ENGINE_SPEED, micros);
    }

    private double fresh(Channel channel, long micros) {
      return latest.within(channel, micros, FRESH_SECONDS).orElse(Double.NaN);
    }

    private double[] celsius(Channel channel) {
      return celsius.computeIfAbsent(
          channel,
          _ -> {
            double[] unheard = new double[power.length];
            Arrays.fill(unheard, Double.NaN);
            return unheard;
          });
    }

    private void cut(double since, int second) {
      boolean isSame =
          !derates.isEmpty() && since - derates.getLast().untilSeconds() <= ONE_DERATE_SECONDS;
      double from = isSame ? derates.removeLast().fromSeconds() : since;
      derates.add(new ScoredDrive.Derated(from, second));
    }

    Rehearsed rehearsed(List<Integer> told) {
      Map<Channel, Double> limits = new HashMap<>();
      for (Limit limit : setup.vehicle().limits().values()) {
        limits.put(limit.channel(), limit.celsius());
      }
      boolean isFollowed =
          told.stream()
              .anyMatch(
                  second -> second <= seconds && EasedLoad.isSeen(second, power, speed, isCut));
      return new Rehearsed(
          new ScoredDrive(seconds, derates, celsius, limits),
          warnings.upTo(seconds),
          said,
          isFollowed);
    }
  }
}
