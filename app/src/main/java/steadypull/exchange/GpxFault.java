package steadypull.exchange;

import com.ctc.wstx.exc.WstxEOFException;
import java.io.CharConversionException;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.zip.ZipException;
import javax.xml.stream.Location;
import javax.xml.stream.XMLStreamException;
import org.jspecify.annotations.Nullable;

/** What a parser found wrong with a GPX file, in our words and with the place. Stateless. */
final class GpxFault {
  private static final int LONGEST = 200;
  private static final String COPY_AGAIN = " Copy the file again.";

  private GpxFault() {}

  /**
   * The refusal of a file that cannot be parsed.
   *
   * @param reached where the parser was, unless the fault itself knows better
   */
  static TableException of(Path file, XMLStreamException fault, Location reached) {
    Location at = fault.getLocation() == null ? reached : fault.getLocation();
    return refusal(
        new CellPlace(file, Math.max(1, at.getLineNumber()), Math.max(1, at.getColumnNumber()), ""),
        fault);
  }

  private static TableException refusal(CellPlace place, XMLStreamException fault) {
    if (fault instanceof WstxEOFException) {
      return place.refusal("the rest of a GPX file", "that it breaks off", COPY_AGAIN);
    }
    return switch (ioFault(fault)) {
      case MeteredStream.PieceTooLong _ ->
          place.refusal(
              "names, values and comments of at most " + MeteredStream.MOST_BYTES + " bytes",
              "one that is longer");
      case CharConversionException wrong ->
          WrongByte.in(place.file())
              .orElse(place)
              .refusal(
                  "UTF-8, or the encoding of its first line",
                  words(wrong).replaceFirst(" \\(at .*", ""),
                  " Save the file as UTF-8.");
      case EOFException _ -> place.refusal("a whole gzip file", "that it breaks off", COPY_AGAIN);
      case ZipException wrong -> place.refusal("a sound gzip file", words(wrong), COPY_AGAIN);
      case IOException wrong ->
          place.refusal(
              "a readable file", FileFault.whileReading(wrong), " Check path and rights.");
      case null -> place.refusal("well-formed XML of an ordinary size", words(fault));
    };
  }

  private static @Nullable IOException ioFault(Throwable fault) {
    @Nullable Throwable cause = fault.getCause();
    return cause instanceof IOException found ? found : null;
  }

  /** The first line of what a library says, without what would command a terminal. */
  private static String words(Exception fault) {
    String message = String.valueOf(fault.getMessage()).lines().findFirst().orElse("");
    String shown = message.replaceAll("\\p{Cntrl}", "?").replaceFirst("\\.$", "");
    return shown.length() > LONGEST ? shown.substring(0, LONGEST) + "..." : shown;
  }
}
