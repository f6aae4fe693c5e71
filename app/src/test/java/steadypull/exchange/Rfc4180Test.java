package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * The rules of RFC 4180 (Shafranovich, "Common Format and MIME Type for Comma-Separated Values
 * (CSV) Files", October 2005), section 2, one by one. Read leniently, written strictly.
 */
class Rfc4180Test {
  private static final Channel ODD = new Channel("own", "a,\"b\"");

  @TempDir private Path folder;

  // Rule 1: "Each record is located on a separate line, delimited by a line break (CRLF)."
  @Test
  void recordsAreLinesEndedByCarriageReturnAndLineFeed() throws Exception {
    assertThat(written()).isEqualTo("time[s],gear[1],\"own[a,\"\"b\"\"]\"\r\n0,3,\r\n1,4,0.5\r\n");
    assertThat(values("time[s],gear[1]\r\n0,3\r\n1,4\r\n")).containsExactly(3.0, 4.0);
    assertThat(values("time[s],gear[1]\n0,3\n1,4\n")).containsExactly(3.0, 4.0);
    assertThat(values("time[s],gear[1]\r0,3\r1,4\r")).containsExactly(3.0, 4.0);
  }

  // Rule 2: "The last record in the file may or may not have an ending line break."
  @Test
  void theLastLineMayLackItsEnd() throws Exception {
    assertThat(values("time[s],gear[1]\r\n0,3\r\n1,4")).containsExactly(3.0, 4.0);
  }

  // Rule 3: "There maybe an optional header line appearing as the first line of the file with the
  // same format as normal record lines." Ours is not optional.
  @Test
  void theHeaderIsALineLikeOthersAndMustBeThere() throws Exception {
    assertThat(values("\"time[s]\",\"gear[1]\"\r\n0,3\r\n")).containsExactly(3.0);
    assertThatThrownBy(() -> values("0,3\r\n1,4\r\n"))
        .hasMessageContaining("line 1, column 1: expected the header time[s], found \"0\"");
  }

  // Rule 4: "Each line should contain the same number of fields throughout the file. Spaces are
  // considered part of a field and should not be ignored. The last field in the record must not be
  // followed by a comma." Spaces around a number change no number, so we do ignore them there.
  @Test
  void everyLineHasTheSameNumberOfFields() throws Exception {
    assertThat(values("time[s],gear[1]\r\n 0 , 3 \r\n")).containsExactly(3.0);
    assertThat(read("time[s],own[a  b]\r\n0,3\r\n").channels())
        .containsExactly(new Channel("own", "a  b"));
    assertThatThrownBy(() -> values("time[s],gear[1]\r\n0,3,\r\n"))
        .hasMessageContaining("line 2: expected 2 fields as in the header, found 3 fields");
    assertThatThrownBy(() -> values("time[s],gear[1]\r\n0\r\n"))
        .hasMessageContaining("line 2: expected 2 fields as in the header, found 1 fields");
  }

  // Rule 5: "Each field may or may not be enclosed in double quotes [...]. If fields are not
  // enclosed with double quotes, then double quotes may not appear inside the fields."
  @Test
  void fieldsMayBeQuoted() throws Exception {
    assertThat(values("time[s],gear[1]\r\n\"0\",\"3\"\r\n")).containsExactly(3.0);
    assertThatThrownBy(() -> values("time[s],gear[1]\r\n0,3\"4\r\n"))
        .hasMessageContaining("line 2, column 2 (gear[1]): expected a number");
    assertThatThrownBy(() -> values("time[s],gear[1]\r\n0,\"3\"4\r\n"))
        .hasMessageContaining(
            "line 2, column 2: expected a separator or a line end after the quote");
  }

  // Rule 6: "Fields containing line breaks (CRLF), double quotes, and commas should be enclosed in
  // double-quotes." No header of ours holds a line break.
  @Test
  void quotedFieldsMayHoldCommasAndLineEnds() throws Exception {
    assertThat(read("time[s],\"own[a,b]\"\r\n0,3\r\n").channels())
        .containsExactly(new Channel("own", "a,b"));
    assertThatThrownBy(() -> values("time[s],\"gear\r\n[1]\"\r\n0,3\r\n"))
        .hasMessageContaining("line 1, column 2: expected a header of the form id[unit]")
        .hasMessageContaining("\\u000d\\u000a");
    assertThatThrownBy(() -> values("time[s],gear[1]\r\n0,\"3\r\n\"\r\n1,\"x\"\r\n"))
        .hasMessageContaining("line 4, column 2");
  }

  // Rule 7: "If double-quotes are used to enclose fields, then a double-quote appearing inside a
  // field must be escaped by preceding it with another double quote."
  @Test
  void aQuoteInAQuotedFieldIsDoubled() throws Exception {
    assertThat(read("time[s],\"own[a,\"\"b\"\"]\"\r\n0,3\r\n").channels()).containsExactly(ODD);
    assertThat(read(written()).channels()).containsExactly(Channels.GEAR, ODD);
  }

  private String written() throws Exception {
    Path file = folder.resolve("written.csv");
    List<Sample> samples =
        List.of(
            new Sample(Channels.GEAR, 0, 3),
            new Sample(Channels.GEAR, 1_000_000, 4),
            new Sample(ODD, 1_000_000, 0.5));
    TripTable.write(
        file, List.of(ODD, Channels.GEAR), samples::forEach, ExportChoice.ALL, TransferWatch.NONE);
    return Files.readString(file);
  }

  private List<Double> values(String text) throws Exception {
    return read(text).samples().stream().map(Sample::value).toList();
  }

  private ImportedTable read(String text) throws Exception {
    return ImportedTable.read(
        Files.write(folder.resolve("read.csv"), text.getBytes(StandardCharsets.UTF_8)));
  }
}
