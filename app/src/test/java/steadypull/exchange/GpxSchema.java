package steadypull.exchange;

import java.io.StringReader;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import javax.xml.validation.Validator;
import org.xml.sax.SAXException;

/** The published schema of GPX 1.1, as a judge that knows nothing of our writer. */
final class GpxSchema {
  private static final Schema SCHEMA = load();

  private GpxSchema() {}

  /** Throws if the text is not valid. */
  static void validate(String gpx) throws Exception {
    Validator validator = SCHEMA.newValidator();
    validator.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
    validator.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
    validator.validate(new StreamSource(new StringReader(gpx)));
  }

  private static Schema load() {
    try {
      SchemaFactory schemas = SchemaFactory.newDefaultInstance();
      schemas.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
      schemas.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
      return schemas.newSchema(
          new StreamSource(GpxSchema.class.getResourceAsStream("gpx-1.1.xsd")));
    } catch (SAXException e) {
      throw new IllegalStateException(e);
    }
  }
}
