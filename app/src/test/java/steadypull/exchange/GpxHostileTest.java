package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.channels.ServerSocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Files that mean harm or are broken: each is refused whole, with the place, and opens nothing. */
class GpxHostileTest {
  private static final String HEAD =
      "<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" version=\"1.1\" creator=\"t\">";

  private static final String TAIL =
      "<trk><trkseg><trkpt lat=\"1\" lon=\"2\"/><trkpt lat=\"3\" lon=\"4\"/></trkseg></trk></gpx>";

  @TempDir Path folder;

  // Entities that swell ("billion laughs"), parameter entities, external document types: XML 1.0,
  // fifth edition, 4.2 and 2.8.
  @ParameterizedTest
  @ValueSource(
      strings = {
        "<!DOCTYPE gpx>",
        "<!DOCTYPE gpx [<!ENTITY a \"haha\"><!ENTITY b \"&a;&a;&a;&a;\"><!ENTITY c \"&b;&b;\">]>",
        "<!DOCTYPE gpx [<!ENTITY c SYSTEM \"file:///etc/hostname\">]>",
        "<!DOCTYPE gpx SYSTEM \"file:///etc/hostname\">",
        "<!DOCTYPE gpx PUBLIC \"-//x\" \"http://127.0.0.1:1/x.dtd\">",
        "<!DOCTYPE gpx [<!ENTITY % p SYSTEM \"file:///etc/hostname\"> %p;]>",
      })
  void aDocumentTypeIsRefusedWhateverItSays(String documentType) {
    refuses(
        "<?xml version=\"1.0\"?>\n" + documentType + HEAD + "<metadata>&c;</metadata>" + TAIL,
        "line 2, column 1: expected a GPX file without document type, found <!DOCTYPE.");
  }

  @Test
  void noOtherFileIsReadAndNobodyIsCalled() throws Exception {
    Path secret = folder.resolve("secret.txt");
    Files.writeString(secret, "<!ENTITY c \"open sesame\">");
    try (ServerSocketChannel server = ServerSocketChannel.open()) {
      server.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0));
      server.configureBlocking(false);
      String web = "http://127.0.0.1:" + server.socket().getLocalPort() + "/x";
      for (String target : new String[] {secret.toUri().toString(), web}) {
        for (String hostile :
            new String[] {
              "<!DOCTYPE gpx SYSTEM \"%s\">".formatted(target) + HEAD + TAIL,
              "<!DOCTYPE gpx [<!ENTITY c SYSTEM \"%s\">]>".formatted(target)
                  + HEAD
                  + "<trk><name>&c;</name></trk>"
                  + TAIL,
              HEAD
                  + "<xi:include xmlns:xi=\"http://www.w3.org/2001/XInclude\" href=\"%s\"/>"
                      .formatted(target)
                  + TAIL,
            }) {
          assertThatThrownBy(() -> read(hostile))
              .isInstanceOf(TableException.class)
              .hasMessageContaining("line 1, column ")
              .hasMessageNotContaining("sesame");
        }
        // A hint where a schema lies is no order to fetch it.
        String hint =
            " xmlns:xsi=\"http://www.w3.org/2001/XMLSchema-instance\" xsi:schemaLocation=";
        assertThat(read(HEAD.replace(">", hint + "\"urn:x " + target + "\">") + TAIL).routes())
            .hasSize(1);
      }
      // Every connection attempt would wait here.
      assertThat(server.accept()).isNull();
    }
  }

  // XML Inclusions 1.0, second edition, 3.1.
  @Test
  void inclusionsAreRefusedEvenInsideOfWhatIsPassedOver() {
    refuses(
        HEAD
            + "\n<extensions><o xmlns=\"urn:o\"><include xmlns=\"http://www.w3.org/2001/XInclude\""
            + " href=\"other.gpx\" parse=\"text\"/></o></extensions>"
            + TAIL,
        "line 2, column 30 (include): expected a file that stands for itself, found an XInclude.");
  }

  @Test
  void whatWouldFillTheMemoryIsRefused() {
    String huge = "z".repeat(20_000_000);
    refuses(HEAD + "\n<trk o=\"" + huge + "\"/>" + TAIL, "line 2, ", "attribute size limit");
    refuses(HEAD + "\n<" + huge + "/>" + TAIL, "line 2, ", "at most 1048576 bytes");
    refuses(HEAD + "\n<!--" + huge + "-->" + TAIL, "line 2, ", "at most 1048576 bytes");
    refuses(HEAD + "\n<?o " + huge + "?>" + TAIL, "line 2, ", "at most 1048576 bytes");
    refuses(HEAD + "\n<trk><name>" + huge + "</name></trk>" + TAIL, "line 2, column 6 (name)");
    refuses(HEAD + "\n<metadata>" + "<a>".repeat(1_000_000), "line 2, ", "Depth limit");
    refuses(HEAD + "\n<trk " + attributes(5000) + "/>" + TAIL, "line 2, ", "ttribute limit");
  }

  @Test
  void aPackedFileThatSwellsIsReadInBoundedMemory() throws Exception {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(packed)) {
      out.write((HEAD + "\n<trk><name>").getBytes(StandardCharsets.UTF_8));
      byte[] blanks = new byte[1 << 20];
      Arrays.fill(blanks, (byte) ' ');
      for (int count = 0; count < 64; count++) {
        out.write(blanks);
      }
    }
    refuses(packed.toByteArray(), "line 2, column 6 (name): expected a text of at most 16384");
  }

  @Test
  void morePointsThanAMemoryTakesAreRefused() throws Exception {
    byte[] twoPoints = (HEAD + TAIL).getBytes(StandardCharsets.UTF_8);
    Path name = Path.of("route.gpx");

    assertThat(new GpxReader(name, new ByteArrayInputStream(twoPoints), 2).read().routes())
        .hasSize(1);
    assertThatThrownBy(() -> new GpxReader(name, new ByteArrayInputStream(twoPoints), 1).read())
        .hasMessageContaining("(trkpt): expected at most 1 points, found more. Part the file.");
  }

  // GPX 1.1 schema: latitudeType -90 to 90, longitudeType -180 up to but not 180, ele xsd:decimal,
  // time xsd:dateTime; "NaN" and "INF" are no decimals (XML Schema part 2, 3.2.3).
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "lat='90.001' lon='2' | (trkpt): expected lat from -90 to 90 degrees, found \"90.001\"",
        "lat='-91' lon='2'    | expected lat from -90 to 90 degrees, found \"-91\"",
        "lat='NaN' lon='2'    | expected lat from -90 to 90 degrees, found \"NaN\"",
        "lat='' lon='2'       | expected lat from -90 to 90 degrees, found \"\"",
        "lon='2'              | expected lat from -90 to 90 degrees, found nothing",
        "lat='1,5' lon='2'    | expected lat from -90 to 90 degrees, found \"1,5\"",
        "lat='0x1' lon='2'    | expected lat from -90 to 90 degrees, found \"0x1\"",
        "lat='1d' lon='2'     | expected lat from -90 to 90 degrees, found \"1d\"",
        "lat='1' lon='180'    | expected lon from -180 up to but not 180 degrees, found \"180\"",
        "lat='1' lon='-180.1' | expected lon from -180 up to but not 180 degrees",
        "lat='1' lon='1e999'  | expected lon from -180 up to but not 180 degrees",
        "lat='1' lon='INF'    | expected lon from -180 up to but not 180 degrees, found \"INF\"",
        "lat='1'              | expected lon from -180 up to but not 180 degrees, found nothing",
      })
  void aPlaceThatIsNoneIsRefusedWhereItStands(String attributes, String message) {
    refuses(
        HEAD + "<trk><trkseg><trkpt lat=\"1\" lon=\"2\"/>\n  <trkpt " + attributes + "/>",
        "line 2, column 3 (trkpt): ",
        message.strip());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<ele>NaN</ele>     | (ele): expected metres from -1000 to 10000, found \"NaN\"",
        "<ele>1e9</ele>     | (ele): expected metres from -1000 to 10000, found \"1e9\"",
        "<ele>-1001</ele>   | (ele): expected metres from -1000 to 10000, found \"-1001\"",
        "<ele>3 m</ele>     | (ele): expected metres from -1000 to 10000, found \"3 m\"",
        "<time>noon</time>  | (time): expected a time such as 2026-07-15T17:45:12.000Z, found",
        "<time>2026-13-01T00:00:00Z</time> | (time): expected a time such as",
        "<time>+999999999-01-01T00:00:00Z</time> | (time): expected a time such as",
        "<time>2026-07-15</time> | (time): expected a time such as",
      })
  void valuesOfAPointAreRefusedWhereTheyStand(String inside, String message) {
    refuses(
        HEAD + "<trk><trkseg>\n <trkpt lat=\"1\" lon=\"2\">\n   " + inside.strip() + "</trkpt>",
        "line 3, column 4 " + message.strip());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''                       | line 1, column 1: expected the rest of a GPX file",
        "'time[s],gear[1]'        | line 1, column 1: expected well-formed XML",
        "'<html/>'                | line 1, column 1 (html): expected gpx of the namespace",
        "'<gpx/>'                 | found \"gpx\". Is it a GPX file?",
        "'<gpx xmlns=\"urn:o\"/>' | found \"{urn:o}gpx\". Is it a GPX file?",
      })
  void whatIsNoGpxFileIsRefused(String text, String message) {
    refuses(text, message.strip());
  }

  @Test
  void aFileWithoutAnyWayIsRefused() {
    refuses(
        "\n" + HEAD + "<wpt lat=\"1\" lon=\"2\"/><rte/></gpx>",
        "line 2, column 1 (gpx): expected a route or track with two points or more, found 1"
            + " waypoints and 1 routes or tracks with fewer points.");
  }

  // XML 1.0, fifth edition, 2.1 (well-formed documents), 2.2 (characters) and 4.1 (references).
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "<trk>\\n</gpx>            | line 2, ",
        "\\n<trk><name>&c;</name>   | Undeclared general entity",
        "\\n<trk><name>&#0;</name>  | null character not allowed",
        "\\n<trk><name>\\0</name>    | line 2, column 12: expected well-formed XML",
        "\\n<trk a=\"1\" a=\"2\"/>  | line 2, ",
        "\\n<o:trk/>                | Undeclared namespace prefix",
        "</gpx><gpx/>              | line 1, ",
        "</gpx>more                | line 1, ",
      })
  void whatIsNotWellFormedIsRefused(String inside, String message) {
    refuses(
        HEAD + inside.strip().replace("\\n", "\n").replace("\\0", "\0") + TAIL, message.strip());
  }

  @Test
  void bytesThatAreNotInTheEncodingAreRefused() {
    // Long enough that a parser has decoded far ahead.
    String before = HEAD + "\n" + "<!-- \u00fc -->\n".repeat(3000) + "<trk><name>M";
    byte[] gpx = (before + "?hle</name></trk>" + TAIL).getBytes(StandardCharsets.UTF_8);
    gpx[before.getBytes(StandardCharsets.UTF_8).length] = (byte) 0xFC;

    refuses(
        gpx,
        "line 3002, column 13: expected UTF-8, or the encoding of its first line, found Invalid"
            + " UTF-8 start byte 0xfc. Save the file as UTF-8.");
    refuses("<?xml version=\"1.0\" encoding=\"klingon\"?>" + HEAD + TAIL, "line 1, ", "klingon");
  }

  @Test
  void aFileThatBreaksOffIsRefusedWhereverItDoes() throws Exception {
    String whole = HEAD + "<trk><name>a&amp;b</name>" + TAIL.substring("<trk>".length());
    Path file = folder.resolve("route.gpx");
    for (int length = 0; length < whole.length(); length++) {
      Files.writeString(file, whole.substring(0, length));
      assertThatThrownBy(() -> GpxFile.read(file))
          .as("cut at %d", length)
          .isInstanceOf(TableException.class)
          .hasMessageContaining("line 1")
          .hasMessageContaining("Nothing was taken.");
    }
    Files.writeString(file, whole);
    assertThat(GpxFile.read(file).routes()).hasSize(1);
  }

  @Test
  void aPackedFileThatBreaksOffOrIsDamagedIsRefused() throws Exception {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = new GZIPOutputStream(packed)) {
      out.write((HEAD + TAIL).getBytes(StandardCharsets.UTF_8));
    }
    byte[] whole = packed.toByteArray();
    Path file = folder.resolve("route.gpx");
    for (int length = 2; length < whole.length; length++) {
      Files.write(file, Arrays.copyOf(whole, length));
      assertThatThrownBy(() -> GpxFile.read(file))
          .as("cut at %d", length)
          .isInstanceOf(TableException.class);
    }
  }

  /** Whatever a byte becomes, the file is taken or refused in words; never anything else. */
  @Test
  void damagedFilesAreTakenOrRefusedInWords() throws Exception {
    long seed = 20261128;
    SplittableRandom random = new SplittableRandom(seed);
    byte[] sound =
        (HEAD
                + "<wpt lat=\"1\" lon=\"2\"/><rte><name>&lt;a</name></rte><!-- c --><![CDATA[ ]]>"
                + TAIL)
            .getBytes(StandardCharsets.UTF_8);
    Path file = folder.resolve("route.gpx");
    for (int run = 0; run < 3000; run++) {
      byte[] damaged = sound.clone();
      for (int count = random.nextInt(1, 4); count > 0; count--) {
        damaged[random.nextInt(damaged.length)] = (byte) random.nextInt();
      }
      Files.write(file, damaged);
      try {
        assertThat(GpxFile.read(file).routes()).as("seed %d, run %d", seed, run).isNotEmpty();
      } catch (TableException refused) {
        assertThat(refused.getMessage())
            .as("seed %d, run %d", seed, run)
            .contains(file.toString(), "expected", "found")
            .doesNotContainPattern("\\p{Cntrl}");
      }
    }
  }

  @Test
  void aFolderOrNothingIsRefused() {
    assertThatThrownBy(() -> GpxFile.read(folder))
        .hasMessageContaining("expected a GPX file, found a folder");
    assertThatThrownBy(() -> GpxFile.read(folder.resolve("none.gpx")))
        .hasMessageContaining("expected a GPX file, found no file of that name");
  }

  private static String attributes(int count) {
    StringBuilder text = new StringBuilder();
    for (int each = 0; each < count; each++) {
      text.append(" a").append(each).append("=\"\"");
    }
    return text.toString();
  }

  private void refuses(String gpx, String... messages) {
    refuses(gpx.getBytes(StandardCharsets.UTF_8), messages);
  }

  private void refuses(byte[] gpx, String... messages) {
    Path file = folder.resolve("route.gpx");
    assertThatThrownBy(
            () -> {
              Files.write(file, gpx);
              GpxFile.read(file);
            })
        .isInstanceOf(TableException.class)
        .hasMessageStartingWith(file + ", line ")
        .hasMessageContainingAll(messages)
        .hasMessageEndingWith("Nothing was taken.");
  }

  private ImportedRoutes read(String gpx) throws Exception {
    Path file = folder.resolve("route.gpx");
    Files.writeString(file, gpx);
    return GpxFile.read(file);
  }
}
