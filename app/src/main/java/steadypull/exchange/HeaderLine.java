package steadypull.exchange;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Path;

/** The first line of a table as it stands in the file, by which tables of one kind are known. */
final class HeaderLine {
  private static final int LONGEST = 100_000;

  private HeaderLine() {}

  static String of(Path file) throws TableException {
    try (TableBytes bytes = TableBytes.open(file);
        Reader text = bytes.text(bytes.isWide() ? TextEncoding.UTF_16 : TextEncoding.UTF_8)) {
      StringBuilder line = new StringBuilder();
      for (int letter = text.read();
          letter >= 0 && letter != '\n' && letter != '\r' && line.length() < LONGEST;
          letter = text.read()) {
        line.append((char) letter);
      }
      return line.toString();
    } catch (IOException e) {
      throw FileFault.unreadable(file, FileFault.whileReading(e));
    }
  }
}
