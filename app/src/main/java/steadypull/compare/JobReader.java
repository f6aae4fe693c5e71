package steadypull.compare;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.tomlj.TomlArray;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;
import steadypull.channel.NearMatch;
import steadypull.toml.TomlText;

/** Reads the text of a job; collects every fault instead of stopping at the first. */
final class JobReader {
  private static final String NAME = "name";
  private static final String BEFORE = "before";
  private static final String AFTER = "after";
  private static final String RUN = "run";
  static final String SOURCE = "source";
  static final String AT = "at_s";
  static final String PROBE = "probe_degC";
  static final String LEFT_OUT = "left_out";

  private static final List<String> ASKED = Arrays.stream(Asked.values()).map(Asked::id).toList();
  private static final double LEAST_NUMBER = -60;
  private static final double MOST_NUMBER = 500;
  private static final double HOTTEST_CELSIUS = 60;
  private static final int MOST_TOLD = 10;
  private static final int DIGITS = 3;

  private final String name;
  private final TomlParseResult file;
  private final List<String> faults = new ArrayList<>();

  JobReader(String text, String name) {
    this.name = name;
    this.file = TomlText.parse(text);
  }

  Job job() throws JobException {
    file.errors()
        .forEach(
            error ->
                fault(error.position(), "expected TOML, found a fault: " + error.getMessage()));
    refuseIfFaulty();
    refuseUnknown(file, List.of(NAME, BEFORE, AFTER, RUN));
    Job job =
        new Job(text(file, NAME).orElse(""), answers(file), side(BEFORE), side(AFTER), runs());
    refuseIfFaulty();
    return job;
  }

  private Map<Asked, String> side(String key) {
    Object found = file.get(List.of(key));
    if (found instanceof TomlTable table) {
      refuseUnknown(table, List.of());
      return answers(table);
    }
    if (found != null) {
      fault(file.inputPositionOf(List.of(key)), "expected a table [" + key + "]");
    }
    return Map.of();
  }

  private Map<Asked, String> answers(TomlTable in) {
    Map<Asked, String> answers = new EnumMap<>(Asked.class);
    for (Asked asked : Asked.values()) {
      Object found = in.get(List.of(asked.id()));
      if (found != null && isAnswer(in, asked, found)) {
        answers.put(asked, asked.isNumber() ? plain(found) : String.valueOf(found).strip());
      }
    }
    return answers;
  }

  private static String plain(Object number) {
    return new BigDecimal(String.valueOf(number))
        .setScale(DIGITS, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  private boolean isAnswer(TomlTable in, Asked asked, Object found) {
    if (asked.isNumber()) {
      return number(in, asked.id(), LEAST_NUMBER, MOST_NUMBER).isPresent();
    }
    boolean isWord =
        found instanceof Number
            || found instanceof Boolean
            || (found instanceof String text && !text.isBlank());
    if (!isWord) {
      fault(
          in.inputPositionOf(List.of(asked.id())),
          "expected words in quotes, found " + shown(found));
    }
    return isWord;
  }

  private List<Job.OfRun> runs() {
    Object found = file.get(List.of(RUN));
    List<Job.OfRun> runs = new ArrayList<>();
    if (found instanceof TomlArray array) {
      for (int i = 0; i < array.size(); i++) {
        if (array.get(i) instanceof TomlTable table) {
          runs.add(run(table));
        } else {
          fault(array.inputPositionOf(i), "expected a table [[run]]");
        }
      }
    } else if (found != null) {
      fault(file.inputPositionOf(List.of(RUN)), "expected tables [[run]]");
    }
    return runs;
  }

  private Job.OfRun run(TomlTable table) {
    refuseUnknown(table, List.of(SOURCE, AT, PROBE, LEFT_OUT));
    Optional<String> source = text(table, SOURCE);
    if (source.isEmpty() && !table.contains(List.of(SOURCE))) {
      fault(
          table.keySet().isEmpty()
              ? null
              : table.inputPositionOf(List.of(table.keySet().iterator().next())),
          "expected source = \"...\", the trip's id or the file's name, found none");
    }
    return new Job.OfRun(
        source.orElse("?"),
        number(table, AT, 0, 1e7),
        answers(table),
        number(table, PROBE, -HOTTEST_CELSIUS, HOTTEST_CELSIUS),
        text(table, LEFT_OUT));
  }

  private Optional<String> text(TomlTable in, String key) {
    Object found = in.get(List.of(key));
    if (found instanceof String text && !text.isBlank()) {
      return Optional.of(text.strip());
    }
    if (found != null) {
      fault(in.inputPositionOf(List.of(key)), "expected words in quotes, found " + shown(found));
    }
    return Optional.empty();
  }

  private OptionalDouble number(TomlTable in, String key, double least, double most) {
    Object found = in.get(List.of(key));
    if (found instanceof Number number
        && number.doubleValue() >= least
        && number.doubleValue() <= most) {
      return OptionalDouble.of(number.doubleValue());
    }
    if (found != null) {
      fault(
          in.inputPositionOf(List.of(key)),
          "expected %s = a number from %.0f to %.0f, found %s"
              .formatted(key, least, most, shown(found)));
    }
    return OptionalDouble.empty();
  }

  private static String shown(Object found) {
    return switch (found) {
      case TomlTable _ -> "a table";
      case TomlArray _ -> "a list";
      case String text -> "\"" + text.replaceAll("\\p{Cntrl}", "?") + "\"";
      default -> String.valueOf(found);
    };
  }

  private void refuseUnknown(TomlTable in, List<String> besides) {
    List<String> known = Stream.concat(besides.stream(), ASKED.stream()).toList();
    for (String key : in.keySet()) {
      if (!known.contains(key)) {
        fault(
            in.inputPositionOf(List.of(key)),
            "expected one of %s, found the unknown key \"%s\".%s"
                .formatted(
                    String.join(", ", known),
                    key.replaceAll("\\p{Cntrl}", "?"),
                    NearMatch.question(key, known)));
      }
    }
  }

  private void fault(@Nullable TomlPosition at, String text) {
    faults.add(
        "%s, line %d, column %d: %s"
            .formatted(name, at == null ? 1 : at.line(), at == null ? 1 : at.column(), text));
  }

  private void refuseIfFaulty() throws JobException {
    if (faults.isEmpty()) {
      return;
    }
    StringBuilder told = new StringBuilder("Could not use the job " + name + ":");
    faults.stream().limit(MOST_TOLD).forEach(each -> told.append("\n  ").append(each));
    if (faults.size() > MOST_TOLD) {
      told.append("\n  and %d more".formatted(faults.size() - MOST_TOLD));
    }
    throw new JobException(told.append("\nNothing was compared; correct the file.").toString());
  }
}
