package steadypull.store;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.Scanner;
import java.util.concurrent.ForkJoinPool;
import java.util.concurrent.TimeUnit;
import steadypull.store.column.PixelLine;

/**
 * A program of its own that opens a library, lists its trips and draws one, as somebody does who
 * starts the program and taps a trip: nothing is loaded or compiled yet. One thread.
 *
 * @param libraryMillis from asking for the library to its list of trips; on the wall, as all
 * @param tripMillis from asking for the trip to its lines, right after the list
 * @param aheadMillis until its samples have been read ahead
 * @param unpackedMillis until they are unpacked too
 * @param windowMillis from asking for the window in its middle that takes the most samples
 * @param laterMillis the trip opened once more
 */
record FirstOpening(
    double libraryMillis,
    double tripMillis,
    double aheadMillis,
    double unpackedMillis,
    double windowMillis,
    double laterMillis) {
  private static final int CHANNELS = 20;
  private static final int COLUMNS = 1_280;

  /** Runs that program on a library's only trip. */
  static FirstOpening of(Path folder, long endMicros, long windowMicros) throws IOException {
    Process process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "--enable-native-access=ALL-UNNAMED",
                "-cp",
                System.getProperty("java.class.path"),
                FirstOpening.class.getName(),
                folder.toString(),
                Long.toString(endMicros),
                Long.toString(windowMicros))
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    try (Scanner told = new Scanner(process.inputReader()).useLocale(Locale.ROOT)) {
      return new FirstOpening(
          told.nextDouble(),
          told.nextDouble(),
          told.nextDouble(),
          told.nextDouble(),
          told.nextDouble(),
          told.nextDouble());
    }
  }

  public static void main(String[] arguments) throws LibraryException {
    Path folder = Path.of(arguments[0]);
    long endMicros = Long.parseLong(arguments[1]);
    long windowMicros = Long.parseLong(arguments[2]);
    long begun = System.nanoTime();
    try (TripLibrary library = TripLibrary.open(folder)) {
      String id = library.trips(Optional.empty()).getFirst().id();
      tell(begun);
      long asked = System.nanoTime();
      try (TripDrawing drawing = library.draw(id)) {
        draw(drawing, 0, endMicros);
        tell(asked);
        long shown = System.nanoTime();
        drawing.readAhead();
        tell(shown);
        ForkJoinPool.commonPool().awaitQuiescence(1, TimeUnit.MINUTES);
        tell(shown);
        long zoomed = System.nanoTime();
        draw(drawing, (endMicros - windowMicros) / 2, (endMicros + windowMicros) / 2);
        tell(zoomed);
      }
      long askedAgain = System.nanoTime();
      try (TripDrawing drawing = library.draw(id)) {
        draw(drawing, 0, endMicros);
      }
      tell(askedAgain);
    }
  }

  private static void tell(long sinceNanos) {
    System.out.printf(Locale.ROOT, "%.1f%n", (System.nanoTime() - sinceNanos) / 1e6);
  }

  private static void draw(TripDrawing drawing, long fromMicros, long toMicros)
      throws LibraryException {
    for (int channel = 0; channel < CHANNELS; channel++) {
      PixelLine line = drawing.line(channel, fromMicros, toMicros, COLUMNS);
      if (line.isEmpty(0) || line.isEmpty(COLUMNS - 1)) {
        throw new IllegalStateException("A line has samples at both ends, found none");
      }
    }
  }
}
