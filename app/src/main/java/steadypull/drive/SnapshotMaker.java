package steadypull.drive;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import steadypull.advice.AdviceLine;
import steadypull.advice.Advisor;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.thermal.ChannelForecast;
import steadypull.thermal.Derate;
import steadypull.thermal.Fan;
import steadypull.thermal.Forecast;
import steadypull.thermal.Forecaster;
import steadypull.vehicle.Limit;

/** Gathers what the screen shows into one immutable snapshot. Pipeline thread only. */
final class SnapshotMaker {
  /** Strips whose times to the limit are "never" are ordered by headroom, after all others. */
  private static final double NEVER_SECONDS = 1e6;

  private static final double STALE_ORDER = 1e9;

  /** What the pipeline holds at this moment. */
  record Parts(
      Forecast forecast,
      Forecaster forecaster,
      Derate derate,
      Advisor advisor,
      Map<Channel, Sample> latest,
      TraceHistory traces,
      RoadBehind road) {}

  private final DriveSetup setup;
  private final Instant start;

  SnapshotMaker(DriveSetup setup, Instant start) {
    this.setup = setup;
    this.start = start;
  }

  DriveSnapshot make(long nowMicros, Parts parts, LinkSummary link) {
    AdviceLine line = parts.advisor().line();
    return new DriveSnapshot(
        nowMicros,
        start.plus(nowMicros, ChronoUnit.MICROS),
        setup.vehicle(),
        setup.demo(),
        new RecordingState.Off(),
        link,
        line,
        strips(nowMicros, parts, line),
        road(nowMicros, parts));
  }

  private List<StripState> strips(long nowMicros, Parts parts, AdviceLine line) {
    return parts.forecast().channels().stream()
        .map(channel -> strip(nowMicros, parts, line, channel))
        .sorted(Comparator.comparingDouble(SnapshotMaker::order))
        .toList();
  }

  private StripState strip(long nowMicros, Parts parts, AdviceLine line, ChannelForecast forecast) {
    Channel channel = forecast.channel();
    Sample latest = parts.latest().get(channel);
    double age =
        latest == null ? Double.POSITIVE_INFINITY : (nowMicros - latest.timeMicros()) / 1e6;
    boolean fresh = latest != null && LinkMeter.isFresh(latest, nowMicros);
    return new StripState(
        channel,
        setup.vehicle().limit(channel),
        latest == null ? OptionalDouble.empty() : OptionalDouble.of(latest.value()),
        fresh ? 0 : age,
        trend(forecast),
        parts.traces().of(channel),
        forecast,
        eased(parts, line, channel),
        level(parts, forecast));
  }

  /** Degrees a minute over the coming half minute of the median. */
  private static OptionalDouble trend(ChannelForecast forecast) {
    return forecast instanceof ChannelForecast.Ready ready
        ? OptionalDouble.of(2 * (ready.fan().at(Fan.MEDIAN, 30) - ready.nowCelsius()))
        : OptionalDouble.empty();
  }

  private static Optional<Fan> eased(Parts parts, AdviceLine line, Channel channel) {
    if (line.easedSpeed().isEmpty() || !line.channel().equals(Optional.of(channel))) {
      return Optional.empty();
    }
    Forecast eased =
        parts
            .forecaster()
            .under(new Forecast.Assumption.SpeedEased(line.easedSpeed().getAsDouble()));
    return eased
        .of(channel)
        .filter(ChannelForecast.Ready.class::isInstance)
        .map(each -> ((ChannelForecast.Ready) each).fan());
  }

  private static StripState.StripLevel level(Parts parts, ChannelForecast forecast) {
    if (parts.derate() instanceof Derate.Active active
        && active.cause().equals(forecast.channel())) {
      return StripState.StripLevel.DERATED;
    }
    return switch (forecast) {
      case ChannelForecast.Learning learning -> StripState.StripLevel.LEARNING;
      case ChannelForecast.NoData none -> StripState.StripLevel.NO_DATA;
      case ChannelForecast.Ready ready -> levelOfAdvice(parts.advisor(), ready);
    };
  }

  private static StripState.StripLevel levelOfAdvice(Advisor advisor, ChannelForecast.Ready ready) {
    return Optional.ofNullable(advisor.levels().get(ready.channel()))
        .map(
            level ->
                switch (level) {
                  case NOTICE -> StripState.StripLevel.MAY_REACH;
                  case CAUTION -> StripState.StripLevel.ADVISE;
                  case WARNING -> StripState.StripLevel.ACT_NOW;
                })
        .orElse(StripState.StripLevel.HOLDS);
  }

  /** First to run out first, then least headroom; what cannot be told comes last. */
  private static double order(StripState strip) {
    if (strip.level() == StripState.StripLevel.DERATED) {
      return -1;
    }
    return switch (strip.forecast()) {
      case ChannelForecast.Ready ready -> secondsOrHeadroom(ready, strip.limit());
      case ChannelForecast.Learning learning ->
          NEVER_SECONDS + headroomNow(strip.latestCelsius(), strip.limit());
      case ChannelForecast.NoData none -> STALE_ORDER;
    };
  }

  private static double secondsOrHeadroom(ChannelForecast.Ready ready, Optional<Limit> limit) {
    OptionalDouble seconds =
        ready.toLimit().map(each -> each.seconds()).orElse(OptionalDouble.empty());
    return seconds.orElseGet(
        () -> NEVER_SECONDS + headroomNow(OptionalDouble.of(ready.nowCelsius()), limit));
  }

  private static double headroomNow(OptionalDouble celsius, Optional<Limit> limit) {
    return limit.isPresent() && celsius.isPresent()
        ? limit.get().celsius() - celsius.getAsDouble()
        : 1000;
  }

  private static RoadState road(long nowMicros, Parts parts) {
    return new RoadState(
        fresh(parts, Channels.VEHICLE_SPEED, nowMicros),
        fresh(parts, Channels.ROAD_GRADE, nowMicros),
        fresh(parts, Channels.WHEEL_POWER, nowMicros),
        fresh(parts, Channels.GEAR, nowMicros),
        fresh(parts, Channels.AMBIENT_AIR_TEMP, nowMicros),
        parts.road().relativeToHere());
  }

  private static OptionalDouble fresh(Parts parts, Channel channel, long nowMicros) {
    return LinkMeter.fresh(parts.latest().get(channel), nowMicros);
  }
}
