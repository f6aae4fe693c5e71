package steadypull.drive;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.LongFunction;
import steadypull.advice.AdviceEvent;
import steadypull.advice.AdviceJson;
import steadypull.advice.Advisor;
import steadypull.advice.Situation;
import steadypull.advice.Surroundings;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.road.RoadSight;
import steadypull.road.grade.DerivedChannels;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.thermal.Derate;
import steadypull.thermal.DerateDetector;
import steadypull.thermal.Forecast;
import steadypull.thermal.Forecaster;
import steadypull.thermal.ThermalForecaster;

/**
 * The one way from sample to advice, for live drives and for replays alike. Entries go in in their
 * order; at every whole second of the trip, before the first entry at or after it, the models
 * advance, forecast and are judged. The pipeline has no clock: time is what the entries say.
 *
 * <p>Pipeline thread only. The same entries give the same output.
 */
public final class DrivePipeline {
  private static final long SECOND_MICROS = 1_000_000;

  private final DerivedChannels derived;
  private final Forecaster forecaster;
  private final DerateDetector derates;
  private final Advisor advisor;
  private final SnapshotMaker snapshots;
  private final PipelineOutput output;
  private final double coolerFallPercent;

  private final Map<Channel, Sample> latest = new HashMap<>();
  private final TraceHistory traces = new TraceHistory();
  private final RoadBehind road = new RoadBehind();
  private final RoadWatch watch;
  private final LinkMeter link = new LinkMeter();
  private final DiagnosisLog diagnosis;
  private final TabletNotices tablet = new TabletNotices();
  private Derate derate = new Derate.None();
  private Forecast forecast = new Forecast(0, new Forecast.Assumption.LoadHeld(), List.of());
  private long nowMicros;
  private long nextTickMicros = SECOND_MICROS;

  /**
   * A pipeline for one trip.
   *
   * @param setup vehicle, rules and words
   * @param start when the trip began, in the wall's time; only for the clock on the screen
   * @param output takes what comes out
   */
  public DrivePipeline(DriveSetup setup, Instant start, PipelineOutput output) {
    this(setup, start, Optional.empty(), output);
  }

  /**
   * A pipeline for one trip that looks ahead.
   *
   * @param setup vehicle, rules and words
   * @param start when the trip began, in the wall's time; only for the clock on the screen
   * @param sight knows roads, used on the pipeline's thread alone; empty where what the trip itself
   *     has kept of the road ahead counts
   * @param output takes what comes out
   */
  public DrivePipeline(
      DriveSetup setup, Instant start, Optional<RoadSight> sight, PipelineOutput output) {
    this.watch = new RoadWatch(sight);
    this.derived = new DerivedChannels(setup.vehicle());
    this.forecaster = new ThermalForecaster(setup.vehicle());
    this.derates = new DerateDetector(setup.vehicle());
    this.advisor = new Advisor(setup.vehicle(), setup.rules(), setup.locale(), setup.units());
    this.diagnosis = new DiagnosisLog(setup.locale());
    this.snapshots = new SnapshotMaker(setup, start);
    this.output = output;
    this.coolerFallPercent = setup.coolerFallPercent();
  }

  /**
   * Takes the next entry. Derived samples and advice of an earlier run are left aside: they are
   * computed anew.
   *
   * @param entry not earlier than the one before
   */
  public void accept(TripEntry entry) {
    switch (entry) {
      case TripEntry.OfSample(Sample sample) -> {
        if (!Channels.derived().contains(sample.channel())) {
          advanceTo(sample.timeMicros());
          take(sample);
          output.entry(entry);
        }
      }
      case TripEntry.OfEvent(TripEvent event) -> accept(event);
    }
  }

  private void accept(TripEvent event) {
    switch (event.kind()) {
      case LINK -> {
        advanceTo(event.timeMicros());
        link.changed(LinkEvent.of(event));
        output.entry(new TripEntry.OfEvent(event));
      }
      case MARK -> keep(event);
      case CODES, VEHICLE -> {
        keep(event);
        diagnosis.take(event);
        derates.accept(diagnosis.codes());
      }
      case ROAD -> {
        advanceTo(event.timeMicros());
        watch.accept(event);
      }
      case ACKNOWLEDGED -> answer(event, advisor::acknowledge);
      case SNOOZED -> answer(event, advisor::snooze);
      case RESUMED -> answer(event, advisor::show);
      case CLOCK, TABLET -> {
        keep(event);
        tablet.take(event);
      }
      // What an earlier run said or noted about itself is said anew, or belongs to that run.
      case ADVICE, SHOWN, RECORDING -> {}
    }
  }

  private void keep(TripEvent event) {
    advanceTo(event.timeMicros());
    output.entry(new TripEntry.OfEvent(event));
  }

  private void answer(TripEvent event, LongFunction<List<AdviceEvent>> advisorAnswer) {
    advanceTo(event.timeMicros());
    output.entry(new TripEntry.OfEvent(event));
    advisorAnswer.apply(event.timeMicros()).forEach(this::say);
    output.answered(snapshot(nowMicros));
  }

  /** Says advice in these units from now on. */
  public void speakIn(UnitSystem units) {
    advisor.speakIn(units);
    output.answered(snapshot(nowMicros));
  }

  /**
   * Lets time pass up to a moment at which nothing came.
   *
   * @param timeMicros microseconds since trip start; a moment that has passed already is harmless
   */
  public void advanceTo(long timeMicros) {
    while (nextTickMicros <= timeMicros) {
      tick(nextTickMicros);
      nextTickMicros += SECOND_MICROS;
    }
    nowMicros = Math.max(nowMicros, timeMicros);
  }

  /** The latest moment that the pipeline has seen, microseconds since trip start. */
  public long nowMicros() {
    return nowMicros;
  }

  /** What was told of the tablet. */
  TabletNotices tablet() {
    return tablet;
  }

  private void take(Sample sample) {
    hear(sample);
    link.heard(sample);
    derived.accept(sample);
  }

  private void hear(Sample sample) {
    latest.put(sample.channel(), sample);
    traces.add(sample);
    watch.accept(sample);
    derates.accept(sample);
    forecaster.accept(sample);
  }

  private void tick(long timeMicros) {
    nowMicros = timeMicros;
    watch.routeHeight(timeMicros).ifPresent(this::climb);
    List<Sample> computed = derived.tick(timeMicros);
    computed.forEach(this::hear);
    watch
        .second(timeMicros, derived.second())
        .ifPresent(news -> output.entry(new TripEntry.OfEvent(news)));
    computed.forEach(sample -> output.entry(new TripEntry.OfSample(sample)));
    derate = derates.tick(timeMicros);
    output.derate(timeMicros, derate);
    forecaster.accept(watch.ahead());
    forecast = forecaster.tick(timeMicros);
    output.forecast(forecast);
    advisor.step(situation(timeMicros)).forEach(this::say);
    rememberRoad(timeMicros);
    output.second(timeMicros, () -> snapshot(timeMicros));
  }

  private void climb(TripEvent told) {
    RoadNews.routeHeight(told).ifPresent(derived::acceptRouteHeight);
    output.entry(new TripEntry.OfEvent(told));
  }

  private Situation situation(long timeMicros) {
    return new Situation(
        timeMicros,
        forecast,
        forecaster::under,
        believed(timeMicros),
        derate,
        link.secondsSilent(timeMicros),
        forecast.assumption() instanceof Forecast.Assumption.RoadKnown,
        diagnosis.codes(),
        surroundings());
  }

  private Surroundings surroundings() {
    Optional<ClimbAhead> climb = watch.climb();
    return climb.isEmpty()
        ? new Surroundings(OptionalDouble.empty(), OptionalDouble.empty(), coolerFallPercent)
        : new Surroundings(
            OptionalDouble.of(Math.max(0, climb.get().toStartMetres())),
            OptionalDouble.of(100 * climb.get().meanGrade()),
            coolerFallPercent);
  }

  /** What was heard last; an engine that was switched off did not always tell that it stands. */
  private Map<Channel, Sample> believed(long timeMicros) {
    if (!link.isSwitchedOff(timeMicros, latest)) {
      return latest;
    }
    Map<Channel, Sample> believed = new HashMap<>(latest);
    believed.put(Channels.ENGINE_SPEED, new Sample(Channels.ENGINE_SPEED, timeMicros, 0));
    return believed;
  }

  private void rememberRoad(long timeMicros) {
    road.second(
        timeMicros,
        fresh(Channels.VEHICLE_SPEED, timeMicros),
        fresh(Channels.ROAD_GRADE, timeMicros));
  }

  private void say(AdviceEvent event) {
    output.entry(
        new TripEntry.OfEvent(
            new TripEvent(event.timeMicros(), TripEvent.Kind.ADVICE, AdviceJson.event(event))));
    output.advice(event);
  }

  private DriveSnapshot snapshot(long timeMicros) {
    return snapshots.make(
        timeMicros,
        new SnapshotMaker.Parts(forecast, forecaster, derate, advisor, latest, traces, road, watch),
        link.summary(timeMicros, latest),
        diagnosis.diagnosis(),
        tablet);
  }

  private OptionalDouble fresh(Channel channel, long timeMicros) {
    return LinkMeter.fresh(latest.get(channel), timeMicros);
  }
}
