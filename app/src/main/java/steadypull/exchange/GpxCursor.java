package steadypull.exchange;

import com.ctc.wstx.api.WstxInputProperties;
import com.ctc.wstx.stax.WstxInputFactory;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Optional;
import javax.xml.stream.Location;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLResolver;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import org.codehaus.stax2.XMLInputFactory2;
import org.codehaus.stax2.XMLStreamLocation2;
import org.codehaus.stax2.XMLStreamReader2;

/**
 * Stands at one element of a GPX file and walks on through it, never back. Opens nothing but the
 * bytes it was given: a document type, with which a file could name other files or swell, ends the
 * walk, and so does XInclude. One thread.
 */
final class GpxCursor {
  private static final int DEEPEST = 100;
  private static final int MOST_ATTRIBUTES = 100;
  private static final int LONGEST_ATTRIBUTE = 16_384;
  private static final int LONGEST_TEXT = 16_384;
  private static final String INCLUSION = "http://www.w3.org/2001/XInclude";

  private static final XMLResolver REFUSING =
      (publicId, systemId, base, namespace) -> {
        throw new XMLStreamException("Nothing outside of the file is read");
      };

  private final Path file;
  private final MeteredStream bytes;
  private final XMLStreamReader2 xml;

  /**
   * Begins in front of the file's first element; the caller closes the bytes.
   *
   * @param file for the messages
   */
  GpxCursor(Path file, InputStream content) throws TableException {
    this.file = file;
    this.bytes = new MeteredStream(content);
    try {
      this.xml = (XMLStreamReader2) parsers().createXMLStreamReader(bytes);
    } catch (XMLStreamException e) {
      throw GpxFault.of(file, e, XMLStreamLocation2.NOT_AVAILABLE);
    }
  }

  private static XMLInputFactory2 parsers() {
    XMLInputFactory2 parsers = new WstxInputFactory();
    parsers.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    parsers.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    parsers.setXMLResolver(REFUSING);
    // A fault comes up where it stands, not when somebody asks for the text.
    parsers.setProperty(XMLInputFactory2.P_LAZY_PARSING, false);
    parsers.setProperty(WstxInputProperties.P_MAX_ELEMENT_DEPTH, DEEPEST);
    parsers.setProperty(WstxInputProperties.P_MAX_ATTRIBUTES_PER_ELEMENT, MOST_ATTRIBUTES);
    parsers.setProperty(WstxInputProperties.P_MAX_ATTRIBUTE_SIZE, LONGEST_ATTRIBUTE);
    return parsers;
  }

  /** Goes to the file's first element. */
  void toRoot() throws TableException {
    while (next() != XMLStreamConstants.START_ELEMENT) {
      // Comments and the like may stand in front.
    }
  }

  /** Goes to the next element inside of the present one, or to the end of the present one. */
  boolean toChild() throws TableException {
    while (true) {
      switch (next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          return true;
        }
        case XMLStreamConstants.END_ELEMENT -> {
          return false;
        }
        default -> {}
      }
    }
  }

  /** Goes to the end of the present element. */
  void skip() throws TableException {
    int depth = 1;
    while (depth > 0) {
      switch (next()) {
        case XMLStreamConstants.START_ELEMENT -> depth++;
        case XMLStreamConstants.END_ELEMENT -> depth--;
        default -> {}
      }
    }
  }

  /** Goes to the end of the present element and tells its own text, stripped. */
  String text() throws TableException {
    CellPlace place = place();
    StringBuilder text = new StringBuilder();
    while (true) {
      switch (next()) {
        case XMLStreamConstants.CHARACTERS, XMLStreamConstants.CDATA, XMLStreamConstants.SPACE ->
            text.append(xml.getText());
        case XMLStreamConstants.START_ELEMENT -> skip();
        case XMLStreamConstants.END_ELEMENT -> {
          return text.toString().strip();
        }
        default -> {}
      }
      if (text.length() > LONGEST_TEXT) {
        throw place.refusal("a text of at most " + LONGEST_TEXT + " characters", "a longer one");
      }
    }
  }

  /** Goes to the end of the file. */
  void toEnd() throws TableException {
    while (next() != XMLStreamConstants.END_DOCUMENT) {
      // Comments and the like may stand behind.
    }
  }

  /** The name of the present element if it is one of GPX, else nothing. */
  String element() {
    return isGpx() ? xml.getLocalName() : "";
  }

  /** The name of the present element, with its namespace. */
  String fullName() {
    return xml.getName().toString();
  }

  /** An attribute of the present element. */
  Optional<String> attribute(String name) {
    return Optional.ofNullable(xml.getAttributeValue(null, name)).map(String::strip);
  }

  /** Where the present element begins. */
  CellPlace place() {
    Location start = xml.getLocationInfo().getStartLocation();
    String name = xml.hasName() ? xml.getLocalName() : "";
    return new CellPlace(file, start.getLineNumber(), start.getColumnNumber(), name);
  }

  private boolean isGpx() {
    String namespace = xml.getNamespaceURI();
    return GpxNames.NAMESPACE.equals(namespace) || GpxNames.OLDER_NAMESPACE.equals(namespace);
  }

  private int next() throws TableException {
    bytes.beginPiece();
    try {
      int event = xml.next();
      if (event == XMLStreamConstants.DTD) {
        throw place().refusal("a GPX file without document type", "<!DOCTYPE", " Delete it.");
      }
      if (event == XMLStreamConstants.START_ELEMENT && INCLUSION.equals(xml.getNamespaceURI())) {
        throw place().refusal("a file that stands for itself", "an XInclude", " Delete it.");
      }
      return event;
    } catch (XMLStreamException e) {
      throw GpxFault.of(file, e, xml.getLocationInfo().getCurrentLocation());
    }
  }
}
