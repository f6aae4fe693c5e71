package steadypull.drive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.store.TripEvent;

/**
 * What a trip keeps of the road ahead as it was known at a moment, so that the trip can be run
 * again with what was known then and not with what was learned since. Grades and errors are rounded
 * to 0.01 %, odds to 0.0001. No places are kept. Stateless.
 */
final class RoadNews {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final String NOTHING = "nothing";
  private static final String UNGRADED = "ungraded";
  private static final String HEIGHT = "route_height_m";
  private static final double HIGHEST_METRES = 20_000;

  /** Nobody is told of more ways to choose from. */
  private static final int MOST_BRANCHES = 64;

  /** Odds are kept in so many parts of 1. */
  private static final double ODDS_PARTS = 1e4;

  private static final double MOST_ODDS = 1 + MOST_BRANCHES / ODDS_PARTS;

  private RoadNews() {}

  /** The event that tells of a road ahead. */
  static TripEvent event(long timeMicros, RoadAhead ahead) {
    ObjectNode node = JSON.createObjectNode();
    switch (ahead) {
      case RoadAhead.Unknown() -> node.put("known", NOTHING);
      case RoadAhead.Ungraded() -> node.put("known", UNGRADED);
      case RoadAhead.Known known -> put(node, known);
    }
    return new TripEvent(timeMicros, TripEvent.Kind.ROAD, node.toString());
  }

  private static void put(ObjectNode node, RoadAhead.Known known) {
    node.put("known", known.origin().name().toLowerCase(Locale.ROOT));
    node.put("piece_m", known.certain().pieceMetres());
    node.put("certain", WayText.write(known.certain()));
    ArrayNode branches = node.putArray("branches");
    for (RoadAhead.Branch branch : known.branches()) {
      branches
          .addObject()
          .put("odds", Math.max(1, Math.rint(branch.odds() * ODDS_PARTS)) / ODDS_PARTS)
          .put("way", WayText.write(branch.profile()));
    }
  }

  /** The event that tells of a route's height at the vehicle's place, to 0.1 m. */
  static TripEvent event(long timeMicros, double routeMetres) {
    ObjectNode node = JSON.createObjectNode();
    node.put(HEIGHT, Math.rint(routeMetres * 10) / 10);
    return new TripEvent(timeMicros, TripEvent.Kind.ROAD, node.toString());
  }

  /** The height that an event tells; empty if it tells something else. */
  static OptionalDouble routeHeight(TripEvent event) {
    try {
      JsonNode height = JSON.readTree(event.detail()).path(HEIGHT);
      return height.isNumber() && Math.abs(height.asDouble()) < HIGHEST_METRES
          ? OptionalDouble.of(height.asDouble())
          : OptionalDouble.empty();
    } catch (JsonProcessingException unreadable) {
      return OptionalDouble.empty();
    }
  }

  /** Reads what {@link #event} wrote; of an unreadable text nothing is known. */
  static RoadAhead read(TripEvent event) {
    try {
      JsonNode node = JSON.readTree(event.detail());
      String known = node.path("known").asText();
      return switch (known) {
        case NOTHING -> new RoadAhead.Unknown();
        case UNGRADED -> new RoadAhead.Ungraded();
        default -> known(node, RoadAhead.Origin.valueOf(known.toUpperCase(Locale.ROOT)));
      };
    } catch (JsonProcessingException | IllegalArgumentException unreadable) {
      return new RoadAhead.Unknown();
    }
  }

  private static RoadAhead known(JsonNode node, RoadAhead.Origin origin) {
    double piece = node.path("piece_m").asDouble();
    GradeProfile certain = WayText.read(node.path("certain").asText(), piece);
    return new RoadAhead.Known(certain, branches(node.path("branches"), piece), origin);
  }

  private static List<RoadAhead.Branch> branches(JsonNode told, double piece) {
    List<RoadAhead.Branch> branches = new ArrayList<>();
    double odds = 0;
    for (JsonNode branch : told) {
      odds += branch.path("odds").asDouble();
      if (branches.size() == MOST_BRANCHES || odds > MOST_ODDS) {
        throw new IllegalArgumentException("Ways to choose from are few, their odds 1 at most");
      }
      branches.add(
          new RoadAhead.Branch(
              branch.path("odds").asDouble(), WayText.read(branch.path("way").asText(), piece)));
    }
    return branches;
  }
}
