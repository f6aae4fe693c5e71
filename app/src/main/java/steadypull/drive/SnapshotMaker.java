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
import steadypull.thermal.LimitForecast;
import steadypull.thermal.OutsidePressure;

/** Gathers what the screen shows into one immutable snapshot. Pipeline thread only. */
final class SnapshotMaker {
  private static final double NEVER = Double.POSITIVE_INFINITY;

  /** What the pipeline holds at this moment. */
  record Parts(
      Forecast forecast,
      Forecaster forecaster,
      Derate derate,
      Advisor advisor,
      Map<Channel, Sample> latest,
      TraceHistory traces,
      RoadBehind road,
      RoadWatch watch) {}

  private final DriveSetup setup;
  private final Instant start;
  private AdviceLine.State state = AdviceLine.State.LEARNING;
  private long sinceMicros;

  SnapshotMaker(DriveSetup setup, Instant start) {
    this.setup = setup;
    this.start = start;
  }

  DriveSnapshot make(
      long nowMicros, Parts parts, LinkSummary link, Diagnosis diagnosis, TabletNotices tablet) {
    AdviceLine line = parts.advisor().line();
    if (line.state() != state) {
      state = line.state();
      sinceMicros = nowMicros;
    }
    return new DriveSnapshot(
        nowMicros,
        start.plus(nowMicros, ChronoUnit.MICROS).plus(tablet.clockSetBy()),
        setup.vehicle(),
        setup.demo(),
        new RecordingState.Off(),
        link,
        line,
        sinceMicros,
        parts.advisor().snoozeSeconds(),
        strips(nowMicros, parts, line),
        road(nowMicros, parts),
        diagnosis,
        tablet.notice(nowMicros));
  }

  private List<StripState> strips(long nowMicros, Parts parts, AdviceLine line) {
    return parts.forecast().channels().stream()
        .map(channel -> strip(nowMicros, parts, line, channel))
        .sorted(ORDER)
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
        setup.vehicle().limit(channel, OutsidePressure.kilopascals(parts.latest(), nowMicros)),
        latest == null ? OptionalDouble.empty() : OptionalDouble.of(latest.value()),
        fresh ? 0 : age,
        trend(forecast),
        parts.traces().of(channel),
        forecast,
        eased(parts, line, channel),
        level(parts, forecast),
        powerCut(parts.derate(), channel));
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

  private static OptionalDouble powerCut(Derate derate, Channel channel) {
    return derate instanceof Derate.Active active && active.cause().equals(channel)
        ? OptionalDouble.of(active.cutPercent())
        : OptionalDouble.empty();
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

  /** Most urgent level first, then first to run out, then least headroom. */
  private static final Comparator<StripState> ORDER =
      Comparator.comparingInt(SnapshotMaker::rank)
          .thenComparingDouble(SnapshotMaker::secondsToLimit)
          .thenComparingDouble(SnapshotMaker::headroom);

  private static int rank(StripState strip) {
    return switch (strip.level()) {
      case DERATED -> 0;
      case ACT_NOW -> 1;
      case ADVISE -> 2;
      case MAY_REACH -> 3;
      case HOLDS -> 4;
      case LEARNING -> 5;
      case NO_DATA -> 6;
    };
  }

  /** Median time to the limit; endless if it never comes or cannot be told. */
  private static double secondsToLimit(StripState strip) {
    return strip.forecast() instanceof ChannelForecast.Ready ready
        ? ready.toLimit().map(LimitForecast::seconds).orElse(OptionalDouble.empty()).orElse(NEVER)
        : NEVER;
  }

  /** Degrees under the limit now; endless without a limit or a value. */
  private static double headroom(StripState strip) {
    return strip.limit().isPresent() && strip.latestCelsius().isPresent()
        ? strip.limit().get().celsius() - strip.latestCelsius().getAsDouble()
        : NEVER;
  }

  private static RoadState road(long nowMicros, Parts parts) {
    return new RoadState(
        fresh(parts, Channels.VEHICLE_SPEED, nowMicros),
        fresh(parts, Channels.ROAD_GRADE, nowMicros),
        fresh(parts, Channels.WHEEL_POWER, nowMicros),
        fresh(parts, Channels.GEAR, nowMicros),
        fresh(parts, Channels.AMBIENT_AIR_TEMP, nowMicros),
        parts.road().relativeToHere(),
        parts.watch().ahead(),
        parts.watch().climb());
  }

  private static OptionalDouble fresh(Parts parts, Channel channel, long nowMicros) {
    return LinkMeter.fresh(parts.latest().get(channel), nowMicros);
  }
}
