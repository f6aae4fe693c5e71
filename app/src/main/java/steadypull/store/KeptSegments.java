package steadypull.store;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.LongStream;

/**
 * The segments of one trip that can be read, in their order and without overlap, and the holes
 * between them. Immutable.
 *
 * @param segments ascending
 * @param holes ascending
 */
record KeptSegments(List<LibraryRow.OfSegment> segments, List<Hole> holes) {
  KeptSegments {
    segments = List.copyOf(segments);
    holes = List.copyOf(holes);
  }

  /**
   * Samples that are missing.
   *
   * @param firstSample number of the first
   * @param nextSample number of the first after them
   * @param fromMicros none lies before
   * @param toMicros none lies after
   */
  record Hole(long firstSample, long nextSample, long fromMicros, long toMicros) {
    LostPart lostOf(String tripId) {
      return LostPart.piece(tripId, fromMicros, toMicros, nextSample - firstSample);
    }

    private void ifNotEmpty(List<Hole> holes) {
      if (firstSample < nextSample) {
        holes.add(this);
      }
    }
  }

  /** Of segments that cover the same samples, the long one is kept. */
  static KeptSegments of(LibraryRow.OfTrip trip, List<LibraryRow.OfSegment> found) {
    List<LibraryRow.OfSegment> inOrder =
        found.stream()
            .filter(it -> it.isWhole() && it.nextSample() <= trip.sampleCount())
            .sorted(
                Comparator.comparingLong(LibraryRow.OfSegment::firstSample)
                    .thenComparing(
                        Comparator.comparingLong(LibraryRow.OfSegment::sampleCount).reversed()))
            .toList();
    List<LibraryRow.OfSegment> kept = new ArrayList<>();
    List<Hole> holes = new ArrayList<>();
    long reached = 0;
    long reachedMicros = 0;
    for (LibraryRow.OfSegment segment : inOrder) {
      if (segment.firstSample() >= reached) {
        Hole before =
            hole(found, reached, segment.firstSample(), reachedMicros, segment.firstMicros());
        before.ifNotEmpty(holes);
        kept.add(segment);
        reached = segment.nextSample();
        reachedMicros = segment.lastMicros();
      }
    }
    hole(found, reached, trip.sampleCount(), reachedMicros, trip.reachedMicros()).ifNotEmpty(holes);
    return new KeptSegments(kept, holes);
  }

  /** Told by the lost segments themselves where their rows can still be read. */
  private static Hole hole(
      List<LibraryRow.OfSegment> found, long from, long to, long beforeMicros, long afterMicros) {
    List<LibraryRow.OfSegment> lost =
        found.stream()
            .filter(it -> !it.isWhole() && it.firstSample() >= from && it.nextSample() <= to)
            .toList();
    long told = lost.stream().mapToLong(LibraryRow.OfSegment::sampleCount).sum();
    LongStream.Builder times = LongStream.builder();
    if (told == to - from) {
      lost.forEach(it -> times.add(it.firstMicros()).add(it.lastMicros()));
    } else {
      times.add(beforeMicros).add(afterMicros);
    }
    var span = times.build().summaryStatistics();
    return new Hole(from, to, span.getMin(), span.getMax());
  }
}
