package steadypull.store;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** The comparisons that a library keeps, by their names. */
final class ComparisonRows {
  private ComparisonRows() {}

  /** Keeps one in place of what has its name. */
  static void save(Handle handle, KeptComparison comparison) {
    handle
        .createUpdate(Sql.of("saveComparison"))
        .bind("name", comparison.name())
        .bind("keptMicros", ChronoUnit.MICROS.between(Instant.EPOCH, comparison.kept()))
        .bind("channelId", comparison.channelId())
        .bind("sides", text(comparison.sides()))
        .bind("answers", comparison.answers())
        .execute();
  }

  /** All of them, last kept first. */
  static List<KeptComparison> all(Handle handle) {
    return handle
        .createQuery(Sql.of("selectComparisons"))
        .map(
            (row, _) ->
                comparison(
                    row.getString("name"),
                    row.getLong("kept_epoch_micros"),
                    row.getString("channel_id"),
                    row.getString("sides"),
                    row.getString("answers")))
        .list();
  }

  /** Forgets one; returns whether it was there. */
  static boolean delete(Handle handle, String name) {
    return handle.createUpdate(Sql.of("deleteComparison")).bind("name", name).execute() > 0;
  }

  /**
   * What a row says.
   *
   * @throws IllegalArgumentException if no library says so
   */
  static KeptComparison comparison(
      String name, long keptMicros, String channelId, String sides, String answers) {
    return new KeptComparison(
        name,
        Instant.EPOCH.plus(keptMicros, ChronoUnit.MICROS),
        channelId,
        sides.lines().map(ComparisonRows::source).toList(),
        answers);
  }

  private static KeptComparison.Source source(String line) {
    int blank = Math.max(0, line.indexOf(' '));
    return new KeptComparison.Source(line.substring(0, blank), line.substring(blank).strip());
  }

  private static String text(List<KeptComparison.Source> sides) {
    return sides.stream()
        .map(source -> source.side() + " " + source.what())
        .collect(Collectors.joining("\n"));
  }
}
