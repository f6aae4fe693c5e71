package steadypull.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import steadypull.vehicle.Consequence;
import steadypull.vehicle.DerateBegun;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Vehicle;

/**
 * Where a vehicle really began to take torque away at a channel, as its trips have shown it, and
 * the limit that follows. What breaks when it is passed is never given more than was entered; what
 * only costs power may be. Immutable.
 *
 * @param entered the vehicle's limit now
 * @param celsius where derates at this channel and at no other were told, degC, lowest first
 * @param trips how many trips showed one
 * @param unclear how many more began while another channel was as near to its limit: nobody can say
 *     which it was
 */
public record LearntLimit(Limit entered, List<Double> celsius, int trips, int unclear) {
  /** Fewer derates may be anything's (estimated). */
  static final int FEWEST_DERATES = 3;

  static final int FEWEST_TRIPS = 2;

  /** Derates that begin farther apart have another cause, K (estimated). */
  private static final double WIDEST_KELVIN = 8;

  /**
   * A soft derate takes 2 to 4 % of torque a kelvin (common practice, no source), so that the 5
   * points by which one is told are reached some 2 K after its beginning.
   */
  private static final double TOLD_LATE_KELVIN = 2;

  /** Sensors tell whole degrees, and the beginning is known no better than that and the above. */
  private static final double LEAST_DIFFERENCE_KELVIN = 2;

  public LearntLimit {
    Objects.requireNonNull(entered);
    celsius = celsius.stream().sorted().toList();
  }

  /** What lessons tell of every channel at which something began, in the vehicle's order. */
  public static List<LearntLimit> of(Vehicle vehicle, List<LessonOfTrip> lessons) {
    List<LearntLimit> all = new ArrayList<>();
    for (Limit limit : vehicle.limits().values()) {
      LearntLimit learnt = of(limit, lessons);
      if (!learnt.celsius().isEmpty() || learnt.unclear() > 0) {
        all.add(learnt);
      }
    }
    return all;
  }

  private static LearntLimit of(Limit limit, List<LessonOfTrip> lessons) {
    List<Double> celsius = new ArrayList<>();
    int trips = 0;
    int unclear = 0;
    for (LessonOfTrip lesson : lessons) {
      int before = celsius.size();
      for (DerateBegun derate : lesson.heat().derates()) {
        if (derate.channelId().equals(limit.channel().id())) {
          if (derate.alsoHot().isEmpty()) {
            celsius.add(derate.celsius());
          } else {
            unclear++;
          }
        }
      }
      trips += celsius.size() > before ? 1 : 0;
    }
    return new LearntLimit(limit, celsius, trips, unclear);
  }

  /**
   * The limit to be confirmed, with its evidence as the note of where it comes from.
   *
   * @return empty if too little was shown, derates began too far apart, or the entered limit is
   *     right or must not be raised
   */
  public Optional<Limit> proposal() {
    if (celsius.size() < FEWEST_DERATES || trips < FEWEST_TRIPS || width() > WIDEST_KELVIN) {
      return Optional.empty();
    }
    double begins = Math.floor(middle() - TOLD_LATE_KELVIN);
    boolean isNews = Math.abs(begins - entered.celsius()) >= LEAST_DIFFERENCE_KELVIN;
    boolean mayBe =
        begins < entered.celsius() || Consequence.of(entered.channel()) == Consequence.COSTS_POWER;
    return isNews && mayBe
        ? Optional.of(
            new Limit(
                entered.channel(), begins, new Provenance(Provenance.Kind.LEARNT, evidence())))
        : Optional.empty();
  }

  /** The median of where derates began, degC. */
  public double middle() {
    int half = celsius.size() / 2;
    return celsius.size() % 2 == 1
        ? celsius.get(half)
        : (celsius.get(half - 1) + celsius.get(half)) / 2;
  }

  private double width() {
    return celsius.getLast() - celsius.getFirst();
  }

  /** How many derates on how many trips, and between which temperatures. */
  public String evidence() {
    long lowest = Math.round(celsius.getFirst());
    long highest = Math.round(celsius.getLast());
    return "%s on %s told at %s degC"
        .formatted(
            celsius.size() == 1 ? "1 derate" : celsius.size() + " derates",
            trips == 1 ? "1 trip" : trips + " trips",
            lowest == highest ? lowest : lowest + " to " + highest);
  }
}
