package steadypull.exchange;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.tomlj.TomlArray;
import org.tomlj.TomlTable;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.toml.TomlText;

/** How other programs call channels and units, from {@code channel-words.toml}. Immutable. */
final class ChannelWords {
  private static final String UNITS = "units";
  private static final int SHORT_WORD = 3;
  private static final ChannelWords SHIPPED = load();

  /**
   * What is known of a channel.
   *
   * @param phrases each a list of words
   * @param whole headers that must be just so, word by word
   * @param lowest of what a vehicle can show, in the channel's unit
   */
  record Entry(
      Channel channel,
      List<List<String>> phrases,
      List<List<String>> whole,
      double lowest,
      double highest) {
    boolean isPlausible(double value) {
      return value >= lowest && value <= highest;
    }

    /** Letters of the longest phrase that fits; 0 if none does. */
    private int fit(List<String> words) {
      return Stream.concat(
              phrases.stream()
                  .filter(
                      phrase ->
                          phrase.stream().allMatch(word -> words.stream().anyMatch(begins(word)))),
              whole.stream().filter(words::equals))
          .mapToInt(phrase -> phrase.stream().mapToInt(String::length).sum())
          .max()
          .orElse(0);
    }

    private static Predicate<String> begins(String word) {
      return found -> word.length() > SHORT_WORD ? found.startsWith(word) : found.equals(word);
    }
  }

  private final List<Entry> entries;
  private final Map<String, String> units;

  private ChannelWords(List<Entry> entries, Map<String, String> units) {
    this.entries = List.copyOf(entries);
    this.units = Map.copyOf(units);
  }

  /** The words that the program brings along. */
  static ChannelWords shipped() {
    return SHIPPED;
  }

  /** The channel whose words fit a header best, or empty if none fits. */
  Optional<Channel> best(String header) {
    return ranked(header, entry -> true).stream().findFirst().map(Entry::channel);
  }

  /** The accepted channels whose words fit a header, best first. */
  List<Entry> ranked(String header, Predicate<Entry> accepted) {
    List<String> words = words(header);
    return entries.stream()
        .filter(entry -> entry.fit(words) > 0)
        .filter(accepted)
        .sorted((one, other) -> Integer.compare(other.fit(words), one.fit(words)))
        .toList();
  }

  /** A unit in the spelling that we know, if that spelling is listed. */
  String unit(String spelling) {
    return units.getOrDefault(spelling.strip().toLowerCase(Locale.ROOT), spelling.strip());
  }

  /** The words of a header without its unit, in lower case, umlauts written out. */
  static List<String> words(String header) {
    String plain =
        header
            .replaceAll("[\\[(].*$", "")
            .replaceAll("(?<=\\p{Ll})(?=\\p{Lu})", " ")
            .toLowerCase(Locale.ROOT)
            .replace("ä", "ae")
            .replace("ö", "oe")
            .replace("ü", "ue")
            .replace("ß", "ss");
    return Arrays.stream(plain.split("[^\\p{L}\\p{N}]+", -1))
        .filter(word -> !word.isEmpty())
        .toList();
  }

  private static ChannelWords load() {
    TomlTable file = TomlText.parse(text());
    List<Entry> entries = new ArrayList<>();
    for (Channel channel : Channels.all()) {
      if (file.get(List.of(channel.id())) instanceof TomlTable table) {
        entries.add(entry(channel, table));
      }
    }
    Map<String, String> units = new TreeMap<>();
    TomlTable spelled = Objects.requireNonNull(file.getTable(List.of(UNITS)));
    spelled
        .keySet()
        .forEach(each -> units.put(each, Objects.requireNonNull(spelled.getString(List.of(each)))));
    return new ChannelWords(entries, units);
  }

  private static Entry entry(Channel channel, TomlTable table) {
    TomlArray range = Objects.requireNonNull(table.getArray("range"));
    return new Entry(
        channel,
        phrases(table.getArrayOrEmpty("words")),
        phrases(table.getArrayOrEmpty("whole")),
        range.getLong(0),
        range.getLong(1));
  }

  private static List<List<String>> phrases(TomlArray texts) {
    return texts.toList().stream().map(phrase -> words(String.valueOf(phrase))).toList();
  }

  private static String text() {
    try (InputStream bytes = ChannelWords.class.getResourceAsStream("channel-words.toml")) {
      return new String(Objects.requireNonNull(bytes).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
