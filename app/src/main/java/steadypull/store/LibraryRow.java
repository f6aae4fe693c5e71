package steadypull.store;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.road.climb.KnownClimb;
import steadypull.store.page.FoundRow;
import steadypull.vehicle.Configuration;

/** What a row found in the pages of a library says. Immutable. */
sealed interface LibraryRow {
  /** A trip; see the columns of that table. */
  record OfTrip(
      long tripKey,
      String id,
      String origin,
      String vehicleName,
      long vehicleKey,
      long startEpochMicros,
      Optional<Integer> startOffsetSeconds,
      TripDetails details,
      String source,
      LinkIdentity link,
      String softwareVersion,
      long reachedMicros,
      long sampleCount,
      List<Long> channelKeys,
      boolean isSealed,
      boolean isRemoved)
      implements LibraryRow {
    public OfTrip {
      Objects.requireNonNull(details);
      channelKeys = List.copyOf(channelKeys);
    }
  }

  /** The second telling of a trip. */
  record OfTripTwin(OfTrip trip) implements LibraryRow {
    public OfTripTwin {
      Objects.requireNonNull(trip);
    }
  }

  /** A trip's id, as an index keeps it beside the trip itself. */
  record OfTripId(long tripKey, String id) implements LibraryRow {}

  /**
   * A segment.
   *
   * @param isWhole whether it is known what samples it has, and they are what the rest of the row
   *     says; single channels or stretches of it may be lost all the same
   */
  record OfSegment(
      FoundRow.Place place,
      long tripKey,
      long firstSample,
      long sampleCount,
      long firstMicros,
      long lastMicros,
      boolean isWhole)
      implements LibraryRow {
    long nextSample() {
      return firstSample + sampleCount;
    }
  }

  /** An event of a trip. */
  record OfEvent(long tripKey, long sequence, long afterSamples, TripEvent event)
      implements LibraryRow {}

  /** A channel. */
  record OfChannel(long channelKey, Channel channel) implements LibraryRow {}

  /** A vehicle as it was when trips began. */
  record OfTripVehicle(long vehicleKey, String vehicleFile) implements LibraryRow {}

  /** A vehicle as it is. */
  record OfVehicle(String name, String vehicleFile, long usedOrder, String sensorEvidence)
      implements LibraryRow {}

  /** A route. */
  record OfRoute(String id, String name, String routeFile) implements LibraryRow {}

  /** A tile of the memory of roads, whole. */
  @SuppressWarnings("ArrayRecordComponent") // never compared
  record OfRoadTile(long tileKey, byte[] tile) implements LibraryRow {
    public OfRoadTile {
      Objects.requireNonNull(tile);
    }
  }

  /** A trip from which roads were learned. */
  record OfRoadLearned(String origin, long passes) implements LibraryRow {}

  /** A place that the memory of roads leaves out. */
  record OfRoadQuiet(long quietKey, QuietPlace place) implements LibraryRow {}

  /** A climb that was recognised. */
  record OfClimb(KnownClimb climb) implements LibraryRow {
    public OfClimb {
      Objects.requireNonNull(climb);
    }
  }

  /** How a vehicle was fitted. */
  record OfConfiguration(String vehicleName, Configuration configuration) implements LibraryRow {
    public OfConfiguration {
      Objects.requireNonNull(configuration);
    }
  }

  /** What a trip has told of its vehicle's heat. */
  record OfTripHeat(String origin, String vehicleName, Instant start, String told)
      implements LibraryRow {
    public OfTripHeat {
      Objects.requireNonNull(start);
    }
  }

  /** A comparison as somebody put it together. */
  record OfComparison(KeptComparison comparison) implements LibraryRow {
    public OfComparison {
      Objects.requireNonNull(comparison);
    }
  }

  /** How a kind of table is read. */
  record OfMapping(String headerLine, String mappingFile) implements LibraryRow {}
}
