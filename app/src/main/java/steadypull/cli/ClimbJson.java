package steadypull.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import steadypull.channel.Channel;
import steadypull.review.ClimbReview;
import steadypull.road.climb.Climb;
import steadypull.road.climb.ClimbIdentity;
import steadypull.road.climb.KnownClimb;
import steadypull.thermal.Sustainable;

/** Climbs for machines. Keys are stable; more may be added. What cannot be told has no key. */
final class ClimbJson {
  private static final ObjectMapper JSON = new ObjectMapper();

  private ClimbJson() {}

  static String of(String tripId, List<ClimbReview> reviews) {
    ArrayNode array = JSON.createArrayNode();
    reviews.forEach(review -> describe(tripId, review, array.addObject()));
    return array.toString();
  }

  private static void describe(String tripId, ClimbReview review, ObjectNode node) {
    Climb climb = review.climb();
    node.put("id", tripId + "/" + review.number());
    identify(review.identity(), node);
    node.put("start_s", rounded(climb.startSeconds(), 1));
    node.put("end_s", rounded(climb.endSeconds(), 1));
    node.put("start_m", rounded(climb.startMetres(), 1));
    node.put("length_m", rounded(climb.lengthMetres(), 1));
    node.put("rise_m", rounded(climb.riseMetres(), 1));
    node.put("mean_grade_pct", rounded(climb.meanGrade() * 100, 2));
    node.put("steepest_grade_pct", rounded(climb.steepestGrade() * 100, 2));
    node.put("mean_speed_km_h", rounded(climb.meanKilometresPerHour(), 1));
    describe(review.peaksCelsius(), node.putObject("peaks"));
    describe(review.leastHeadroomKelvin(), node.putObject("least_headroom_degC"));
    review.deratedSeconds().ifPresent(seconds -> node.put("derated_s", seconds));
    review
        .wheelKilowattHours()
        .ifPresent(energy -> node.put("wheel_energy_kWh", rounded(energy, 3)));
    review.sustainableKilowatts().ifPresent(found -> describe(found, node));
    node.put("name", review.name());
    node.put("begun_by", word(climb.begun()));
    node.put("ended_by", word(climb.ended()));
    node.put("gap_s", rounded(climb.gapSeconds(), 1));
  }

  private static void describe(Sustainable found, ObjectNode node) {
    switch (found) {
      case Sustainable.UpTo upTo -> {
        node.put("sustainable_power_kW", rounded(upTo.p50(), 1));
        node.put("sustainable_power_p10_kW", rounded(upTo.p10(), 1));
        node.put("sustainable_power_p90_kW", rounded(upTo.p90(), 1));
        node.put("sustainable_power_limited_by", upTo.channel().id());
      }
      case Sustainable.AtLeast atLeast ->
          node.put("sustainable_power_at_least_kW", rounded(atLeast.value(), 1));
      case Sustainable.Nothing() -> node.put("sustainable_power_kW", 0);
    }
  }

  private static void identify(ClimbIdentity identity, ObjectNode node) {
    switch (identity) {
      case ClimbIdentity.Known(KnownClimb climb) -> node.put("climb_id", climb.id());
      case ClimbIdentity.New(KnownClimb climb) -> node.put("climb_id", climb.id());
      case ClimbIdentity.Part(KnownClimb climb, double from, double to) ->
          node.putObject("part_of")
              .put("climb_id", climb.id())
              .put("from_m", rounded(from, 1))
              .put("to_m", rounded(to, 1));
      case ClimbIdentity.Fragment(), ClimbIdentity.Unplaced() -> {
        // nobody knows which climb it is
      }
    }
  }

  private static void describe(Map<Channel, Double> temperatures, ObjectNode node) {
    temperatures.forEach((channel, value) -> node.put(channel.id(), rounded(value, 1)));
  }

  private static String word(Climb.End end) {
    return end.name().toLowerCase(Locale.ROOT);
  }

  private static double rounded(double value, int decimals) {
    double scale = Math.pow(10, decimals);
    return Math.round(value * scale) / scale;
  }
}
