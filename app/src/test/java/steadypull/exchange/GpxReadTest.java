package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import steadypull.road.Route;
import steadypull.road.RoutePoint;
import steadypull.road.RouteSegment;

/** What is taken from files that other programs may have written. */
class GpxReadTest {
  private static final String HEAD =
      "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"t\">";

  private static final String TWO_POINTS =
      "<trkpt lat=\"1\" lon=\"2\"/><trkpt lat=\"1.5\" lon=\"2.5\"/>";

  @TempDir Path folder;

  // GPX 1.1 schema, gpxType, rteType, trkType and trksegType: routes and tracks, any number, a
  // track of any number of segments.
  @Test
  void everyRouteAndEveryTrackOfAFileIsTaken() throws Exception {
    ImportedRoutes read =
        read(
            HEAD
                + "<rte><name>Quarry climb</name><rtept lat=\"1\" lon=\"2\"/>"
                + "<rtept lat=\"3\" lon=\"4\"/></rte>"
                + "<trk><name>There</name><trkseg>"
                + TWO_POINTS
                + "</trkseg><trkseg><trkpt lat=\"5\" lon=\"6\"/></trkseg></trk>"
                + "<trk><trkseg>"
                + TWO_POINTS
                + "</trkseg></trk></gpx>");

    RouteSegment two = RouteSegment.of(new RoutePoint(1, 2), new RoutePoint(1.5, 2.5));
    assertThat(read.routes())
        .containsExactly(
            new Route(
                "Quarry climb",
                List.of(RouteSegment.of(new RoutePoint(1, 2), new RoutePoint(3, 4)))),
            new Route("There", List.of(two, RouteSegment.of(new RoutePoint(5, 6)))),
            new Route("", List.of(two)));
  }

  // GPX 1.1 schema, wptType: ele in metres (xsd:decimal), time in UTC (xsd:dateTime; XML Schema
  // part 2, 3.2.7: fractions, offset). The last two forms are kinder than the schema.
  @ParameterizedTest
  @CsvSource({
    "612.4, 2026-07-15T17:45:12.000Z, 612.4, 2026-07-15T17:45:12Z",
    "-3, 2026-07-15T17:45:12.125Z, -3, 2026-07-15T17:45:12.125Z",
    "+.5, 2026-07-15T19:45:12+02:00, 0.5, 2026-07-15T17:45:12Z",
    "7., 2026-07-15T17:45:12, 7, 2026-07-15T17:45:12Z",
    "1.5E2, 1926-07-15T17:45:12Z, 150, 1926-07-15T17:45:12Z",
  })
  void elevationAndTimeAreReadInTheirForms(
      String elevation, String time, double metres, Instant moment) throws Exception {
    RoutePoint point =
        firstPoint("<ele> " + elevation + "\n</ele><time>" + time + "</time><sat>7</sat>");

    assertThat(point)
        .isEqualTo(new RoutePoint(1, 2, OptionalDouble.of(metres), Optional.of(moment)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "<ele/><time/>", "<name>a</name><extensions><ele>9</ele></extensions>"})
  void elevationAndTimeMayBeMissing(String inside) throws Exception {
    assertThat(firstPoint(inside)).isEqualTo(new RoutePoint(1, 2));
  }

  @Test
  void whatIsLeftOutIsCounted() throws Exception {
    ImportedRoutes read =
        read(
            HEAD
                + "<wpt lat=\"1\" lon=\"2\"><name>w</name></wpt><wpt lat=\"1\" lon=\"2\"/>"
                + "<trk/><trk><trkseg/></trk><rte><rtept lat=\"1\" lon=\"2\"/></rte>"
                + "<trk><trkseg>"
                + TWO_POINTS
                + "</trkseg></trk></gpx>");

    assertThat(read.routes()).hasSize(1);
    assertThat(read.waypointsLeftOut()).isEqualTo(2);
    assertThat(read.shortsLeftOut()).isEqualTo(3);
  }

  // Own elements of other programs: GPX 1.1 schema, extensionsType (any namespace but GPX).
  @Test
  void whatOtherProgramsAddIsPassedOver() throws Exception {
    ImportedRoutes read =
        read(
            "<?xml version=\"1.0\"?><?style x?><!-- c -->\n"
                + HEAD.replace(">", " xmlns:o=\"urn:other\">")
                + "<metadata><name>not this</name></metadata><trk><o:name>nor this</o:name>"
                + "<name>a<!-- c -->b&amp;<![CDATA[<c>]]></name><extensions><o:trkseg/>"
                + "</extensions><trkseg>"
                + TWO_POINTS.replace("/>", "><extensions><o:lat>77</o:lat></extensions></trkpt>")
                + "</trkseg></trk></gpx><!-- end -->\n");

    assertThat(read.routes())
        .containsExactly(
            new Route(
                "ab&<c>",
                List.of(RouteSegment.of(new RoutePoint(1, 2), new RoutePoint(1.5, 2.5)))));
  }

  // GPX 1.0 has the same rte, rtept, trk, trkseg, trkpt, ele, time (its schema; from memory).
  @Test
  void theOlderFormAndPrefixedNamesAreRead() throws Exception {
    String older = HEAD.replace("GPX/1/1", "GPX/1/0").replace("version=\"1.1\"", "version=\"1.0\"");
    assertThat(read(older + "<trk><trkseg>" + TWO_POINTS + "</trkseg></trk></gpx>").routes())
        .hasSize(1);

    String prefixed =
        (HEAD + "<trk><trkseg>" + TWO_POINTS + "</trkseg></trk></gpx>")
            .replace("xmlns=", "xmlns:g=")
            .replaceAll("<(/?)([a-z])", "<$1g:$2");
    assertThat(read(prefixed).routes()).hasSize(1);
  }

  // XML 1.0, fifth edition, 4.3.3: a byte-order mark or the declaration tells the encoding.
  @ParameterizedTest
  @ValueSource(strings = {"UTF-8", "UTF-16", "UTF-16BE", "ISO-8859-1"})
  void namesArriveInEveryEncodingThatTheFileDeclares(String encoding) throws Exception {
    String mark = encoding.equals("UTF-16BE") ? "\uFEFF" : "";
    String gpx =
        mark
            + "<?xml version=\"1.0\" encoding=\"%s\"?>".formatted(encoding)
            + HEAD
            + "<trk><name>M\u00fchle</name><trkseg>"
            + TWO_POINTS
            + "</trkseg></trk></gpx>";
    Path file = folder.resolve("route.gpx");
    Files.write(file, gpx.getBytes(Charset.forName(encoding)));

    assertThat(GpxFile.read(file).routes()).extracting(Route::name).containsExactly("M\u00fchle");
  }

  @Test
  void aPackedFileIsReadWhateverItsName() throws Exception {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(packed)) {
      out.write(
          (HEAD + "<trk><trkseg>" + TWO_POINTS + "</trkseg></trk></gpx>")
              .getBytes(StandardCharsets.UTF_8));
    }
    Path file = folder.resolve("route.gpx");
    Files.write(file, packed.toByteArray());

    assertThat(GpxFile.read(file).routes()).hasSize(1);
  }

  private RoutePoint firstPoint(String inside) throws Exception {
    return read(HEAD
            + "<trk><trkseg><trkpt lat=\"1\" lon=\"2\">"
            + inside
            + "</trkpt><trkpt lat=\"3\" lon=\"4\"/></trkseg></trk></gpx>")
        .routes()
        .getFirst()
        .segments()
        .getFirst()
        .point(0);
  }

  private ImportedRoutes read(String gpx) throws Exception {
    Path file = folder.resolve("route.gpx");
    Files.writeString(file, gpx);
    return GpxFile.read(file);
  }
}
