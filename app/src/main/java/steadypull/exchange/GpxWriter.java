package steadypull.exchange;

import com.ctc.wstx.stax.WstxOutputFactory;
import java.io.Writer;
import java.math.BigDecimal;
import java.time.Instant;
import java.time.format.DateTimeFormatter;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;
import steadypull.channel.Sample;
import steadypull.road.RoutePoint;

/**
 * Writes GPX 1.1, each element where the schema wants it; characters that XML cannot hold become
 * the replacement character. Numbers and times are the same in every language. The caller begins
 * and ends in order. One thread.
 */
final class GpxWriter {
  private static final String CREATOR = "Steadypull";
  private static final String NEW_LINE = "\n";

  private final XMLStreamWriter xml;

  GpxWriter(Writer out) throws XMLStreamException {
    this.xml = new WstxOutputFactory().createXMLStreamWriter(out);
  }

  void begin() throws XMLStreamException {
    xml.writeStartDocument("UTF-8", "1.0");
    xml.writeCharacters(NEW_LINE);
    xml.writeStartElement("gpx");
    xml.writeDefaultNamespace(GpxNames.NAMESPACE);
    xml.writeNamespace(GpxNames.OWN_PREFIX, GpxNames.OWN_NAMESPACE);
    xml.writeAttribute("version", "1.1");
    xml.writeAttribute("creator", CREATOR);
    xml.writeCharacters(NEW_LINE);
  }

  void metadata(Instant created, GpxBounds bounds) throws XMLStreamException {
    xml.writeStartElement("metadata");
    text("time", DateTimeFormatter.ISO_INSTANT.format(created));
    xml.writeEmptyElement("bounds");
    xml.writeAttribute("minlat", decimal(bounds.leastLatitude()));
    xml.writeAttribute("minlon", decimal(bounds.leastLongitude()));
    xml.writeAttribute("maxlat", decimal(bounds.greatestLatitude()));
    xml.writeAttribute("maxlon", decimal(bounds.greatestLongitude()));
    close();
  }

  /** Begins a track; texts that are empty are left out. */
  void beginTrack(String name, String description) throws XMLStreamException {
    xml.writeStartElement("trk");
    xml.writeCharacters(NEW_LINE);
    if (!name.isEmpty()) {
      text("name", name);
    }
    if (!description.isEmpty()) {
      text("desc", description);
    }
  }

  void beginSegment() throws XMLStreamException {
    xml.writeStartElement("trkseg");
    xml.writeCharacters(NEW_LINE);
  }

  void point(RoutePoint place, Iterable<Sample> values) throws XMLStreamException {
    xml.writeStartElement("trkpt");
    xml.writeAttribute("lat", decimal(place.latitudeDegrees()));
    xml.writeAttribute("lon", decimal(place.longitudeDegrees()));
    if (place.elevationMetres().isPresent()) {
      text("ele", decimal(place.elevationMetres().getAsDouble()));
    }
    if (place.time().isPresent()) {
      text("time", DateTimeFormatter.ISO_INSTANT.format(place.time().get()));
    }
    if (values.iterator().hasNext()) {
      extensions(values);
    }
    close();
  }

  /** Ends the segment or the track. */
  void close() throws XMLStreamException {
    xml.writeEndElement();
    xml.writeCharacters(NEW_LINE);
  }

  /** Ends the file; the caller closes what it is written to. */
  void end() throws XMLStreamException {
    xml.writeEndDocument();
    xml.flush();
  }

  private void extensions(Iterable<Sample> values) throws XMLStreamException {
    xml.writeStartElement("extensions");
    for (Sample sample : values) {
      xml.writeStartElement(GpxNames.OWN_PREFIX, "value", GpxNames.OWN_NAMESPACE);
      xml.writeAttribute("channel", sample.channel().id());
      xml.writeAttribute("unit", legal(sample.channel().unit()));
      xml.writeAttribute("time_s", NumberCell.seconds(sample.timeMicros()));
      xml.writeCharacters(NumberCell.text(sample.value()));
      xml.writeEndElement();
    }
    xml.writeEndElement();
  }

  private void text(String element, String text) throws XMLStreamException {
    xml.writeStartElement(element);
    xml.writeCharacters(legal(text));
    xml.writeEndElement();
  }

  /** A text as XML can hold it (XML 1.0, fifth edition, 2.2). */
  private static String legal(String text) {
    int[] characters = text.codePoints().map(found -> isLegal(found) ? found : '\uFFFD').toArray();
    return new String(characters, 0, characters.length);
  }

  private static boolean isLegal(int character) {
    return character == '\t'
        || character == '\n'
        || character == '\r'
        || (character >= 0x20 && character <= 0xD7FF)
        || (character >= 0xE000 && character <= 0xFFFD)
        || character >= 0x10000;
  }

  /** The shortest decimal that reads back as the same value; the schema knows no exponents. */
  private static String decimal(double value) {
    return value == 0
        ? "0"
        : new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }
}
