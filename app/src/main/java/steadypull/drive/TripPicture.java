package steadypull.drive;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import steadypull.channel.Channel;
import steadypull.store.TripSummary.Gap;
import steadypull.store.column.PixelLine;

/**
 * The limited channels of a trip in a window, as far as a small drawing needs them. Immutable.
 *
 * @param window what of the trip it shows
 * @param lines in the order of the vehicle's limits; channels without a sample are absent
 * @param isExact whether the lines are those through every sample; else they are the bounds between
 *     which those lie
 * @param damaged stretches that cannot be read, s since the start of the trip
 */
public record TripPicture(TripWindow window, List<Line> lines, boolean isExact, List<Gap> damaged) {
  public TripPicture {
    Objects.requireNonNull(window);
    lines = List.copyOf(lines);
    damaged = List.copyOf(damaged);
  }

  /**
   * One channel.
   *
   * @param limitCelsius its limit on that trip, degC
   * @param line from the start of the window to its end
   */
  public record Line(Channel channel, double limitCelsius, PixelLine line) {
    public Line {
      Objects.requireNonNull(channel);
      Objects.requireNonNull(line);
    }

    /** How far the hottest sample stayed under the limit, K; negative if it went over. */
    public double leastHeadroomKelvin() {
      return IntStream.range(0, line.columns())
          .filter(column -> !line.isEmpty(column))
          .mapToDouble(column -> limitCelsius - line.greatest(column))
          .min()
          .orElse(Double.POSITIVE_INFINITY);
    }

    boolean hasSamples() {
      return IntStream.range(0, line.columns()).anyMatch(column -> !line.isEmpty(column));
    }
  }

  /** The channel that came nearest to its limit; empty if there is none. */
  public Optional<Line> nearest() {
    return lines.stream().min(Comparator.comparingDouble(Line::leastHeadroomKelvin));
  }
}
