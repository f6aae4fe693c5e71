package steadypull.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.compare.Conditions;
import steadypull.compare.Side;

/** What is to be compared, for the commands that compare. */
final class CompareOptions {
  @Mixin private SidesOption sides = new SidesOption();

  @Option(
      names = "--channel",
      required = true,
      paramLabel = "ID",
      converter = TemperatureOption.class,
      description = "The temperature, such as charge_coolant_temp.")
  private Channel channel = Channels.ENGINE_COOLANT_TEMP;

  @Option(
      names = "--day",
      paramLabel = "FILE=YYYY-MM-DD",
      converter = DayOption.class,
      description = "On which day a table was written; those without a day count as one day.")
  private List<DayOption.Told> days = new ArrayList<>();

  @Option(
      names = "--limit",
      paramLabel = "VALUE",
      converter = BoundedNumber.Limit.class,
      description = "Limit in degC, in place of the vehicle's.")
  private @Nullable Double limit;

  @Option(
      names = "--ambient",
      paramLabel = "DEGC",
      converter = BoundedNumber.Ambient.class,
      description = "Outside temperature to which both sides are brought.")
  private @Nullable Double ambient;

  @Option(
      names = "--vehicle",
      paramLabel = "NAME",
      converter = PlainText.Name.class,
      description = "The vehicle of the tables, from the library.")
  private @Nullable String vehicle;

  @Option(
      names = "--map",
      paramLabel = "MAP.toml",
      converter = PlainText.Place.class,
      description = "How to read tables of another program.")
  private @Nullable Path map;

  @Option(
      names = "--zone",
      paramLabel = "ZONE",
      converter = ZoneOption.class,
      description = ZoneOption.DESCRIPTION)
  private @Nullable ZoneId zone;

  @Option(
      names = "--job",
      paramLabel = "JOB.toml",
      converter = PlainText.Place.class,
      description = "What was noted of the job: coolant mix, fan, probe values, runs to leave out.")
  private @Nullable Path job;

  /** What was named, in its order; refused if one side has none, or a day belongs to no table. */
  List<SidesOption.Named> named(CommandLine command) {
    List<SidesOption.Named> named = sides.named();
    for (Side side : Side.values()) {
      if (named.stream().noneMatch(each -> each.side() == side)) {
        String option = side == Side.BEFORE ? "--before TRIP" : "--after TRIP";
        throw new Misuse(
            command, "trips of both sides", "no " + option, "Add at least one trip to each side");
      }
    }
    for (DayOption.Told day : days) {
      if (named.stream().noneMatch(each -> TripOrTable.of(each.what()).what().equals(day.file()))) {
        throw new Misuse(
            command,
            "the day of a table that is compared",
            "one of " + Printable.line(day.file()),
            "Write the name as it stands behind --before or --after");
      }
    }
    return named;
  }

  Channel channel() {
    return channel;
  }

  Conditions conditions() {
    return new Conditions(optional(ambient), optional(limit));
  }

  Optional<LocalDate> day(String file) {
    Map<String, LocalDate> told = new LinkedHashMap<>();
    days.forEach(each -> told.put(each.file(), each.day()));
    return Optional.ofNullable(told.get(file));
  }

  Optional<String> vehicle() {
    return Optional.ofNullable(vehicle);
  }

  Optional<Path> map() {
    return Optional.ofNullable(map);
  }

  Optional<ZoneId> zone() {
    return Optional.ofNullable(zone);
  }

  Optional<Path> job() {
    return Optional.ofNullable(job);
  }

  private static OptionalDouble optional(@Nullable Double value) {
    return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
  }
}
