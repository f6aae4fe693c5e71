package steadypull.store;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;

/**
 * A table of which rows can go without any other row telling so. The database itself is asked
 * whether its pages are whole, and how many rows they hold.
 */
enum KeptTable {
  TRIP("trip", "trips"),
  EVENT("event", "events"),
  ROUTE("route", "routes"),
  TABLE_MAPPING("table_mapping", "mappings"),
  VEHICLE("vehicle", "vehicles"),
  ROAD_TILE("road_tile", "remembered roads"),
  ROAD_LEARNED("road_learned", "notes of what was learned from trips"),
  ROAD_QUIET("road_quiet", "places kept out of the memory of roads"),
  CLIMB("climb", "climbs"),
  CONFIGURATION("configuration", "what was fitted to vehicles"),
  TRIP_HEAT("trip_heat", "what trips have taught of vehicles' heat"),
  COMPARISON("comparison", "comparisons");

  private final String table;
  private final String things;

  KeptTable(String table, String things) {
    this.table = table;
    this.things = things;
  }

  /** How many rows each table holds; one that is not whole is missing here. */
  static Map<KeptTable, Long> wholeTables(Handle handle) {
    Map<KeptTable, Long> rows = new EnumMap<>(KeptTable.class);
    for (KeptTable table : values()) {
      table.rows(handle).ifPresent(count -> rows.put(table, count));
    }
    return rows;
  }

  /**
   * What may be missing from a salvage, in words; empty if it is proven that nothing of these
   * tables is.
   *
   * @param whole how many rows each table holds that is whole
   */
  static Optional<String> mayBeMissing(Map<KeptTable, Long> whole, LibraryFinds finds) {
    List<String> things = new ArrayList<>();
    for (KeptTable table : values()) {
      Long rows = whole.get(table);
      if (rows == null || rows > table.found(finds)) {
        things.add(table.things);
      }
    }
    return things.isEmpty()
        ? Optional.empty()
        : Optional.of(
            inWords(things) + " may be missing: not all that was kept of them could be read");
  }

  private OptionalLong rows(Handle handle) {
    try {
      String state =
          handle
              .createQuery(Sql.of("sqlite.checkIntegrity"))
              .define("what", table)
              .mapTo(String.class)
              .first();
      return state.equals("ok")
          ? OptionalLong.of(
              handle
                  .createQuery(Sql.of("countRows"))
                  .define("table", table)
                  .mapTo(Long.class)
                  .one())
          : OptionalLong.empty();
    } catch (JdbiException e) {
      // Not even that can be read: the table is not whole.
      return OptionalLong.empty();
    }
  }

  private long found(LibraryFinds finds) {
    return switch (this) {
      case TRIP -> finds.tripRows();
      case EVENT -> finds.eventRows();
      case ROUTE -> finds.routes().size();
      case TABLE_MAPPING -> finds.mappings().size();
      case VEHICLE -> finds.vehicles().size();
      case ROAD_TILE -> finds.roadTiles().size();
      case ROAD_LEARNED -> finds.roadLearned().size();
      case ROAD_QUIET -> finds.quietPlaces().size();
      case CLIMB -> finds.climbs().size();
      case CONFIGURATION -> finds.configurationRows();
      case TRIP_HEAT -> finds.tripHeat().size();
      case COMPARISON -> finds.comparisons().size();
    };
  }

  private static String inWords(List<String> things) {
    int last = things.size() - 1;
    return last == 0
        ? things.getFirst()
        : String.join(", ", things.subList(0, last)) + " or " + things.get(last);
  }
}
