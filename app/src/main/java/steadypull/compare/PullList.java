package steadypull.compare;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * Leads a day of pulls: warm up, pull, cool to the same start, repeat, change, repeat. A reducer:
 * each second of what was heard, and each word of the driver, gives the next state. It has no clock
 * and no screen. Immutable.
 */
public final class PullList {
  /** A thermostat has begun to open, or nearly (common practice, no source). */
  private static final double WARM_CELSIUS = 80;

  /** A block is warm when its coolant has been for a while. */
  private static final int WARM_SECONDS = 60;

  /** Repeats whose starts lie within 3 K agree; one is left for sensors of whole degrees. */
  private static final double READY_KELVIN = 2;

  private static final double ALIKE_KELVIN = 3;

  /** Less is no pull for any tow vehicle (estimated). */
  private static final double LEAST_KILOWATTS = 25;

  /** Loads that are farther apart are not equal (our choice, as for found runs). */
  private static final double EQUAL_SHARE = 0.1;

  private static final double BEGUN_SHARE = 0.6;

  /** The end of a pull may be a little early. */
  private static final double LONG_ENOUGH = 0.95;

  private static final List<Channel> ABOVE_OUTSIDE =
      List.of(Channels.CHARGE_COOLANT_TEMP, Channels.CHARGE_AIR_TEMP_OUT);

  private final PullPlan plan;
  private final int group;
  private final int counted;
  private final int pulls;
  private final boolean isChanging;
  private final OptionalDouble warmSince;
  private final boolean isCoolantHeard;
  private final Map<Channel, Double> firstStarts;
  private final OptionalDouble firstKilowatts;
  private final Optional<PullUnderWay> pull;
  private final Optional<PullFault> lastFault;
  private final PullSecond now;

  private PullList(Draft draft) {
    this.plan = draft.plan;
    this.group = draft.group;
    this.counted = draft.counted;
    this.pulls = draft.pulls;
    this.isChanging = draft.isChanging;
    this.warmSince = draft.warmSince;
    this.isCoolantHeard = draft.isCoolantHeard;
    this.firstStarts = Map.copyOf(draft.firstStarts);
    this.firstKilowatts = draft.firstKilowatts;
    this.pull = draft.pull;
    this.lastFault = draft.lastFault;
    this.now = draft.now;
  }

  /** The next state while it is put together. */
  private static final class Draft {
    private final PullPlan plan;
    private int group;
    private int counted;
    private int pulls;
    private boolean isChanging;
    private OptionalDouble warmSince = OptionalDouble.empty();
    private boolean isCoolantHeard;
    private Map<Channel, Double> firstStarts = new HashMap<>();
    private OptionalDouble firstKilowatts = OptionalDouble.empty();
    private Optional<PullUnderWay> pull = Optional.empty();
    private Optional<PullFault> lastFault = Optional.empty();
    private PullSecond now = new PullSecond(0, Map.of(), OptionalDouble.empty());

    Draft(PullPlan plan) {
      this.plan = plan;
    }
  }

  /** The morning. */
  public static PullList begin(PullPlan plan) {
    return new PullList(new Draft(plan));
  }

  private Draft draft() {
    Draft draft = new Draft(plan);
    draft.group = group;
    draft.counted = counted;
    draft.pulls = pulls;
    draft.isChanging = isChanging;
    draft.warmSince = warmSince;
    draft.isCoolantHeard = isCoolantHeard;
    draft.firstStarts = new HashMap<>(firstStarts);
    draft.firstKilowatts = firstKilowatts;
    draft.pull = pull;
    draft.lastFault = lastFault;
    draft.now = now;
    return draft;
  }

  /** The day after one more second; seconds do not run backwards. */
  public PullList after(PullSecond second) {
    Draft next = draft();
    next.now = second;
    next.warmSince = warmSince(second);
    next.isCoolantHeard =
        isCoolantHeard || second.reading(Channels.ENGINE_COOLANT_TEMP).isPresent();
    if (isOver() || isChanging) {
      return new PullList(next);
    }
    if (pull.isPresent()) {
      PullUnderWay later = pull.get().after(second);
      next.pull = Optional.of(later);
      if (later.hasEnded(second)) {
        end(next, later);
      }
    } else if (isReady() && isPulling(second)) {
      next.pull = Optional.of(PullUnderWay.begin(now, second));
      next.lastFault = Optional.empty();
    }
    return new PullList(next);
  }

  /** The day after somebody said that the change is done; nothing else is waited for then. */
  public PullList changed() {
    if (!isChanging) {
      return this;
    }
    Draft next = draft();
    next.isChanging = false;
    next.warmSince = OptionalDouble.empty();
    return new PullList(next);
  }

  private OptionalDouble warmSince(PullSecond second) {
    Optional<Double> coolant = second.reading(Channels.ENGINE_COOLANT_TEMP);
    if (coolant.isPresent() && coolant.get() < WARM_CELSIUS) {
      return OptionalDouble.empty();
    }
    return warmSince.isPresent() || coolant.isEmpty()
        ? warmSince
        : OptionalDouble.of(second.second());
  }

  /** Of a vehicle that never tells its coolant nobody knows; a minute is waited, and no longer. */
  private boolean isWarm() {
    if (!isCoolantHeard) {
      return now.second() >= WARM_SECONDS;
    }
    return warmSince.isPresent() && now.second() - warmSince.getAsDouble() >= WARM_SECONDS;
  }

  private boolean isOver() {
    return group >= plan.groups().size();
  }

  /** Whether a pull that begins now may count. */
  private boolean isReady() {
    return step() instanceof PullStep.Pull;
  }

  private boolean isPulling(PullSecond second) {
    double least = Math.max(LEAST_KILOWATTS, BEGUN_SHARE * firstKilowatts.orElse(LEAST_KILOWATTS));
    return second.kilowatts().orElse(0) >= least;
  }

  private void end(Draft next, PullUnderWay ended) {
    next.pull = Optional.empty();
    next.lastFault = fault(ended);
    if (next.lastFault.isPresent()) {
      return;
    }
    if (firstKilowatts.isEmpty()) {
      next.firstKilowatts = OptionalDouble.of(ended.kilowatts());
      next.firstStarts = starts(ended.start());
    }
    next.pulls = pulls + 1;
    next.counted = counted + 1;
    if (next.counted == plan.pullsEach()) {
      next.counted = 0;
      next.group = group + 1;
      next.isChanging = next.group < plan.groups().size();
    }
  }

  private Optional<PullFault> fault(PullUnderWay ended) {
    if (ended.seconds() < LONG_ENOUGH * plan.pullSeconds()) {
      return Optional.of(new PullFault.TooShort(ended.seconds(), plan.pullSeconds()));
    }
    double wished = firstKilowatts.orElse(ended.kilowatts());
    return Math.abs(ended.kilowatts() - wished) > EQUAL_SHARE * wished
        ? Optional.of(new PullFault.OtherLoad(ended.kilowatts(), wished))
        : Optional.empty();
  }

  private Map<Channel, Double> starts(PullSecond second) {
    Map<Channel, Double> starts = new HashMap<>();
    for (Channel channel : plan.alike()) {
      start(channel, second).ifPresent(celsius -> starts.put(channel, celsius));
    }
    return starts;
  }

  /** Charge air and its coolant count above outside air, where that is heard. */
  private static Optional<Double> start(Channel channel, PullSecond second) {
    double outside =
        ABOVE_OUTSIDE.contains(channel) ? second.reading(Channels.AMBIENT_AIR_TEMP).orElse(0.0) : 0;
    return second.reading(channel).map(celsius -> celsius - outside);
  }

  /** What to do now. */
  public PullStep step() {
    if (isOver()) {
      return new PullStep.Done(pulls);
    }
    if (isChanging) {
      return new PullStep.Change(plan.groups().get(group));
    }
    PullStep.Place place =
        new PullStep.Place(plan.groups().get(group), counted + 1, plan.pullsEach());
    if (pull.isPresent()) {
      return under(place, pull.get());
    }
    if (!isWarm()) {
      return new PullStep.WarmUp(
          now.reading(Channels.ENGINE_COOLANT_TEMP).stream()
              .mapToDouble(Double::doubleValue)
              .findFirst());
    }
    return waiting(place);
  }

  private PullStep under(PullStep.Place place, PullUnderWay under) {
    int left = plan.pullSeconds() - under.seconds();
    return left <= 0
        ? new PullStep.EaseOff(place)
        : new PullStep.Hold(place, left, under.kilowatts(), firstKilowatts);
  }

  private PullStep waiting(PullStep.Place place) {
    Optional<Channel> farthest = Optional.empty();
    double away = 0;
    for (Map.Entry<Channel, Double> first : firstStarts.entrySet()) {
      Optional<Double> present = start(first.getKey(), now);
      if (present.isEmpty()) {
        return new PullStep.Silent(place, first.getKey());
      }
      double kelvin = present.get() - first.getValue();
      if (Math.abs(kelvin) > Math.abs(away)) {
        away = kelvin;
        farthest = Optional.of(first.getKey());
      }
    }
    if (farthest.isPresent() && away > READY_KELVIN) {
      return new PullStep.Cool(place, farthest.get(), away, lastFault);
    }
    if (farthest.isPresent() && away < -ALIKE_KELVIN) {
      return new PullStep.Warm(place, farthest.get(), -away);
    }
    return new PullStep.Pull(place, firstKilowatts, lastFault);
  }
}
