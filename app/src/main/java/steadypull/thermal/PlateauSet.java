package steadypull.thermal;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import steadypull.channel.Sample;

/**
 * The plateaus of all channels, and how far each is believed against the physical model of its
 * channel. What the plateau knows better is added to the physical courses, so that what the model
 * says of another load stays. Pipeline thread only.
 */
final class PlateauSet {
  private static final double MICROS_PER_SECOND = 1e6;

  /** With nothing but its own readings a channel is listened to for so long first. */
  private static final double FIRST_SECONDS = 60;

  /** Courses are paired by how hot they are by then. */
  private static final double RANKING_SECONDS = 180;

  private static final class Member {
    private final Plateau plateau;
    private final ModelTrust trust;
    private double firstSeconds = Double.POSITIVE_INFINITY;

    Member(Store store) {
      RiseNature nature = RiseNature.of(store);
      plateau = new Plateau(nature);
      trust = new ModelTrust(nature.wanderKelvin());
    }
  }

  private final double[] secondsAhead;
  private final Map<Store, Member> members = new EnumMap<>(Store.class);
  private final Map<Store, Courses> corrections = new EnumMap<>(Store.class);
  private final LoadStep powerStep = new LoadStep();
  private final LoadStep speedStep = new LoadStep();

  /**
   * Plateaus of a drive.
   *
   * @param secondsAhead moments of every course, the first is 0
   */
  PlateauSet(double[] secondsAhead) {
    this.secondsAhead = secondsAhead.clone();
  }

  /** Takes a sample if it shows a store's temperature. */
  void accept(Sample sample) {
    StoreSet.of(sample.channel()).ifPresent(store -> accept(store, sample));
  }

  private void accept(Store store, Sample sample) {
    double seconds = sample.timeMicros() / MICROS_PER_SECOND;
    Member member = members.computeIfAbsent(store, Member::new);
    member.firstSeconds = Math.min(member.firstSeconds, seconds);
    member.plateau.accept(seconds, sample.value());
  }

  /**
   * Moves on to a moment.
   *
   * @param kilowatts engine power, if known
   * @param kilometresPerHour road speed, if known
   */
  void advance(double seconds, OptionalDouble kilowatts, OptionalDouble kilometresPerHour) {
    corrections.clear();
    boolean powerStepped =
        kilowatts.isPresent() && powerStep.accept(seconds, kilowatts.getAsDouble());
    boolean speedStepped =
        kilometresPerHour.isPresent() && speedStep.accept(seconds, kilometresPerHour.getAsDouble());
    boolean hasStepped = kilowatts.isPresent() ? powerStepped : speedStepped;
    for (Member member : members.values()) {
      if (hasStepped) {
        member.plateau.restart(seconds);
        member.trust.restart();
      }
      member.plateau.fit(seconds);
    }
  }

  /**
   * The courses of a channel of which nothing is known but its own readings.
   *
   * @param stretch how many times as wide as the fit says
   */
  Optional<Courses> alone(Store store, double seconds, double stretch) {
    Member member = members.get(store);
    if (member == null
        || !member.plateau.isFitted()
        || seconds - member.firstSeconds < FIRST_SECONDS) {
      return Optional.empty();
    }
    double now = member.plateau.celsius();
    return Optional.of(
        new Courses(
            now, member.plateau.courses(secondsAhead, now, stretch), member.plateau.settled()));
  }

  /** Checks and notes what a plateau alone says. */
  void follow(Store store, double seconds) {
    Member member = member(store);
    if (member.plateau.isFitted()) {
      double now = member.plateau.celsius();
      member.trust.check(seconds, now);
      ModelTrust.Median own = horizon -> member.plateau.middle(horizon, now);
      member.trust.promise(seconds, own, own);
      member.plateau.wanders(member.trust.wanderKelvin());
    }
  }

  /**
   * Weighs the plateau of a channel against its physical model under the present load.
   *
   * @param now where all courses begin, degC
   * @param physical courses of the model alone, as far as {@link ModelTrust#FARTHEST} at least
   */
  void weigh(Store store, double seconds, double now, double[][] physical) {
    Member member = member(store);
    member.trust.check(seconds, now);
    if (member.plateau.isFitted()) {
      member.trust.promise(
          seconds, median(physical), horizon -> member.plateau.middle(horizon, now));
      member.plateau.wanders(member.trust.wanderKelvin());
    }
  }

  /**
   * Finds by how much courses under the present load are to be put right; {@link #corrected} does
   * it until time moves on.
   *
   * @param physical of the model alone
   * @param hasInputs whether all that the model goes by is measured
   */
  void mend(Store store, Courses physical, boolean hasInputs) {
    Member member = member(store);
    if (!member.plateau.isFitted()) {
      return;
    }
    double now = physical.nowCelsius();
    double share = member.trust.plateauShare(hasInputs);
    if (share > 0) {
      double[][] own = member.plateau.courses(secondsAhead, now, 1);
      corrections.put(
          store,
          new Courses(
              now,
              difference(physical, own, share),
              share * (member.plateau.settled() - physical.settledCelsius())));
    }
  }

  private Member member(Store store) {
    return members.computeIfAbsent(store, Member::new);
  }

  /** Physical courses, put right by what the plateau knows better; they are changed in place. */
  Courses corrected(Store store, Courses physical) {
    Courses correction = corrections.get(store);
    if (correction == null) {
      return physical;
    }
    for (int draw = 0; draw < physical.draws().length; draw++) {
      for (int point = 0; point < secondsAhead.length; point++) {
        physical.draws()[draw][point] += correction.draws()[draw][point];
      }
    }
    return new Courses(
        physical.nowCelsius(),
        physical.draws(),
        physical.settledCelsius() + correction.settledCelsius());
  }

  private double[][] difference(Courses model, double[][] own, double share) {
    double[][] physical = model.draws();
    int[] physicalOrder = coolestFirst(physical);
    int[] ownOrder = coolestFirst(own);
    double[] physicalMiddle = Band.quantiles(model.ranks(), 0.5);
    double[] ownMiddle = Band.quantiles(RankedDraws.of(own), 0.5);
    double[][] difference = new double[physical.length][secondsAhead.length];
    for (int rank = 0; rank < physicalOrder.length; rank++) {
      int draw = physicalOrder[rank];
      double[] partner = own[ownOrder[rank * own.length / physical.length]];
      for (int point = 0; point < secondsAhead.length; point++) {
        double apart =
            farther(
                partner[point] - ownMiddle[point], physical[draw][point] - physicalMiddle[point]);
        difference[draw][point] = share * (ownMiddle[point] + apart - physical[draw][point]);
      }
    }
    return difference;
  }

  /** A level course says nothing of the load to come; the model that knows loads is less sure. */
  private static double farther(double own, double physical) {
    return Math.abs(own) > Math.abs(physical) ? own : physical;
  }

  private int[] coolestFirst(double[][] draws) {
    int point = pointAt(RANKING_SECONDS);
    return IntStream.range(0, draws.length)
        .boxed()
        .sorted((left, right) -> Double.compare(draws[left][point], draws[right][point]))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private ModelTrust.Median median(double[][] draws) {
    return horizon -> middle(draws, pointAt(horizon));
  }

  private static double middle(double[][] draws, int point) {
    return Band.quantile(
        Arrays.stream(draws).mapToDouble(draw -> draw[point]).sorted().toArray(), 0.5);
  }

  private int pointAt(double seconds) {
    int point = Arrays.binarySearch(secondsAhead, seconds);
    return point >= 0 ? point : Math.min(-point - 1, secondsAhead.length - 1);
  }
}
