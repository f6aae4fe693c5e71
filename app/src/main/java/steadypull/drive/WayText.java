package steadypull.drive;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Base64;
import java.util.zip.Deflater;
import java.util.zip.DeflaterOutputStream;
import java.util.zip.Inflater;
import java.util.zip.InflaterInputStream;
import steadypull.road.GradeProfile;

/**
 * A profile of grades as a short text: steps of 0.01 % from piece to piece as variable-length
 * integers, then the errors as runs, deflated (RFC 1951), in letters and digits (RFC 4648, URL
 * alphabet). Stateless.
 */
final class WayText {
  /** So many pieces a profile may have. */
  static final int MOST_PIECES = 4000;

  /** Steps of grades and errors in 100 %. */
  private static final int MOST_STEPS = 10_000;

  private static final double SHORTEST_METRES = 1;
  private static final double LONGEST_METRES = 1000;
  private static final int CONTINUES = 0x80;

  private WayText() {}

  /**
   * Writes a profile; grades and errors are rounded to 0.01 %. What is steeper or surely wronger
   * than 100 % is told as that.
   *
   * @param profile of up to {@link #MOST_PIECES} pieces
   */
  static String write(GradeProfile profile) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    Deflater deflater = new Deflater(Deflater.BEST_COMPRESSION, true);
    try (DeflaterOutputStream out = new DeflaterOutputStream(bytes, deflater)) {
      long before = 0;
      write(out, profile.size());
      for (int piece = 0; piece < profile.size(); piece++) {
        long step = steps(profile.grade(piece));
        write(out, zigzag(step - before));
        before = step;
      }
      writeErrors(out, profile);
    } catch (IOException impossible) {
      throw new IllegalStateException("Memory takes every byte", impossible);
    } finally {
      deflater.end();
    }
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes.toByteArray());
  }

  private static void writeErrors(DeflaterOutputStream out, GradeProfile profile)
      throws IOException {
    for (int piece = 0; piece < profile.size(); ) {
      long error = steps(profile.error(piece));
      int end = piece + 1;
      while (end < profile.size() && steps(profile.error(end)) == error) {
        end++;
      }
      write(out, end - piece);
      write(out, error);
      piece = end;
    }
  }

  private static long steps(double fraction) {
    return Math.round(Math.clamp(fraction, -1, 1) * MOST_STEPS);
  }

  private static double fraction(long steps) {
    if (steps < -MOST_STEPS || steps > MOST_STEPS) {
      throw new IllegalArgumentException(
          "A grade lies within 100 %%, found %d steps of 0.01 %%".formatted(steps));
    }
    return steps / (double) MOST_STEPS;
  }

  /**
   * Reads what {@link #write} wrote.
   *
   * @param pieceMetres length of each piece, 1 to 1000
   * @throws IllegalArgumentException if the text is no such profile
   */
  static GradeProfile read(String text, double pieceMetres) {
    if (!(pieceMetres >= SHORTEST_METRES && pieceMetres <= LONGEST_METRES)) {
      throw new IllegalArgumentException(
          "A way's pieces are 1 to 1000 m long, found " + pieceMetres);
    }
    byte[] bytes = Base64.getUrlDecoder().decode(text);
    Inflater inflater = new Inflater(true);
    try (InputStream in = new InflaterInputStream(new ByteArrayInputStream(bytes), inflater)) {
      int size = (int) within(read(in), MOST_PIECES);
      double[] grades = new double[size];
      long step = 0;
      for (int piece = 0; piece < size; piece++) {
        step += unzigzag(read(in));
        grades[piece] = fraction(step);
      }
      double[] errors = readErrors(in, size);
      if (in.read() >= 0) {
        throw new IllegalArgumentException("A way's text goes on behind its end: " + text);
      }
      return new GradeProfile(pieceMetres, grades, errors);
    } catch (IOException broken) {
      throw new IllegalArgumentException("A way's text breaks off: " + text, broken);
    } finally {
      inflater.end();
    }
  }

  private static double[] readErrors(InputStream in, int size) throws IOException {
    double[] errors = new double[size];
    for (int piece = 0; piece < size; ) {
      int end = piece + (int) within(read(in), size - piece);
      double error = fraction(within(read(in), MOST_STEPS));
      if (end == piece) {
        throw new IllegalArgumentException("A way's errors come in runs of one or more");
      }
      while (piece < end) {
        errors[piece] = error;
        piece++;
      }
    }
    return errors;
  }

  private static long within(long count, int most) {
    if (count < 0 || count > most) {
      throw new IllegalArgumentException(
          "A number of a way's text is 0 to %d, found %d".formatted(most, count));
    }
    return count;
  }

  private static long zigzag(long value) {
    return (value << 1) ^ (value >> 63);
  }

  private static long unzigzag(long value) {
    return (value >>> 1) ^ -(value & 1);
  }

  private static void write(DeflaterOutputStream out, long value) throws IOException {
    long left = value;
    while ((left & ~0x7FL) != 0) {
      out.write((int) (left & 0x7F) | CONTINUES);
      left >>>= 7;
    }
    out.write((int) left);
  }

  private static long read(InputStream in) throws IOException {
    long value = 0;
    for (int shift = 0; shift < Long.SIZE; shift += 7) {
      int next = in.read();
      if (next < 0) {
        throw new IOException("end of the text");
      }
      value |= (long) (next & 0x7F) << shift;
      if ((next & CONTINUES) == 0) {
        return value;
      }
    }
    throw new IllegalArgumentException("A number of a way has more than 64 bits");
  }
}
