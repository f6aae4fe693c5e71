package steadypull.drive;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import steadypull.adapter.Reading;
import steadypull.adapter.link.LinkClock;
import steadypull.adapter.position.PositionReport;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.store.LibraryException;
import steadypull.store.LinkIdentity;
import steadypull.store.NewTrip;
import steadypull.store.TripDetails;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.tablet.TabletNews;
import steadypull.vehicle.Vehicle;

/**
 * One trip of a drive, or the wait for one: everything that begins anew when a trip does. What is
 * taken during the wait is shown, and kept nowhere. Pipeline thread only.
 */
final class TripUnderWay {
  /** As long as a reader takes for its last questions, and a little more. */
  private static final long LAST_MICROS = 2_500_000;

  private final DriveRoute route;
  private final DriveSetup setup;
  private final DriveLog.Keeping keeping;
  private final PipelineOutput observer;
  private final boolean begun;
  private final List<TabletNews> standing;
  private final long startNanos;
  private TripClock clock;
  private final ReadingIntake intake;
  private final DiagnosisIntake diagnoses = new DiagnosisIntake();
  private final EngineOffWait engineOff = new EngineOffWait();
  private final TripOutput output;
  private final DrivePipeline pipeline;
  private UnitSystem units;
  private LinkEvent link;
  private LinkIdentity whoAnswers = LinkIdentity.UNKNOWN;

  /** Waits for the first trip of a drive whose link is being opened. */
  TripUnderWay(
      DriveRoute route, DriveLog.Keeping keeping, TripClock clock, PipelineOutput observer) {
    this.route = route;
    this.setup = route.setup();
    this.keeping = keeping;
    this.observer = observer;
    this.clock = clock;
    this.startNanos = clock.startNanos();
    this.begun = false;
    this.standing = List.of();
    this.intake = new ReadingIntake(route.roles());
    this.output = new TripOutput(begun, observer, Optional.empty());
    this.pipeline =
        new DrivePipeline(setup, clock.start(), Optional.of(route.roads().get()), output);
    this.units = route.setup().units();
    this.link = new LinkEvent(0, LinkSummary.State.OPENING, "", 0);
  }

  /** A new count of time, with nothing known of what was before but the link. */
  private TripUnderWay(TripUnderWay before, long nanoTime, boolean begun) {
    this.route = before.route;
    this.keeping = before.keeping;
    this.observer = before.observer;
    this.clock = before.clock.wallSetBy(before.pipeline.tablet().clockSetBy()).anchoredAt(nanoTime);
    this.startNanos = nanoTime;
    this.begun = begun;
    this.standing = before.pipeline.tablet().standing();
    this.setup = begun ? knowing(route.setup(), keeping, clock) : route.setup();
    this.intake = new ReadingIntake(route.roles());
    this.output = new TripOutput(begun, observer, before.shown());
    this.pipeline =
        new DrivePipeline(setup, clock.start(), Optional.of(route.roads().get()), output);
    this.units = before.units;
    this.link =
        new LinkEvent(0, before.link.state(), before.link.detail(), before.link.expectedChannels());
    this.whoAnswers = before.whoAnswers;
  }

  /** The trip that a first reading begins; {@link #open} is still to be called. */
  TripUnderWay begunAt(long nanoTime) {
    return new TripUnderWay(this, nanoTime, true);
  }

  /** The wait for the next trip; {@link #open} is still to be called. */
  TripUnderWay overAt(long nanoTime) {
    return new TripUnderWay(this, nanoTime, false);
  }

  /** Opens the record of a trip that has begun, and says where the link stands. */
  void open() {
    pipeline.speakIn(units);
    if (begun) {
      output.open(keeping.library(), newTrip());
      output.describe(whoAnswers);
    }
    pipeline.accept(new TripEntry.OfEvent(link.toTripEvent()));
    standing.forEach(news -> pipeline.accept(new TripEntry.OfEvent(TabletText.event(0, news))));
  }

  /**
   * What trips before have taught, the one that has just ended among them. It is kept with the
   * trip, so that a replay begins as the drive did, whatever the vehicle has learnt since.
   */
  private static DriveSetup knowing(DriveSetup setup, DriveLog.Keeping keeping, TripClock clock) {
    try {
      Vehicle vehicle = keeping.library().heat().settingOut(setup.vehicle(), clock.start());
      return setup
          .with(vehicle)
          .withCoolerFall(CoolerFall.percent(keeping.library(), vehicle, clock.start()));
    } catch (LibraryException unreadable) {
      // The drive begins with what its layout leads one to believe, and learns on the way.
      return setup;
    }
  }

  /** What is fitted goes along with each trip, unless somebody has said it otherwise. */
  private TripDetails details() {
    TripDetails said = keeping.details();
    return said.fitted().isEmpty()
        ? said.withFitted(setup.vehicle().configuration().fitted())
        : said;
  }

  private NewTrip newTrip() {
    return new NewTrip(
        setup.vehicle(),
        clock.start(),
        Optional.of(keeping.zone().getRules().getOffset(clock.start())),
        details(),
        route.source().address(),
        keeping.softwareVersion());
  }

  /** Whether there was a reading; else this is the wait for one. */
  boolean isBegun() {
    return begun;
  }

  /** When it began, on the link's clock. */
  long startNanos() {
    return startNanos;
  }

  /** Microseconds from the beginning to a moment on the link's clock; never negative. */
  long micros(long nanoTime) {
    return clock.micros(nanoTime);
  }

  /** Lets time pass up to a moment on the link's clock. */
  void advanceTo(long nanoTime) {
    pipeline.advanceTo(clock.micros(nanoTime));
  }

  /** The samples that a reading makes. */
  List<Sample> samples(Reading reading) {
    return intake.samples(reading, clock);
  }

  /** Takes what the vehicle told. */
  void hear(List<Sample> samples) {
    for (Sample sample : samples) {
      engineOff.heard(sample);
      take(sample);
    }
  }

  /** Takes where the vehicle is. */
  void locate(PositionReport report) {
    Positions.samples(report, clock.micros(report.nanoTime())).forEach(this::take);
  }

  /**
   * A sign of life may come between the last byte of an answer and the prompt that ends it. Such an
   * answer counts from the later moment, so that a replay, which knows no signs of life, sees the
   * same order.
   */
  private void take(Sample sample) {
    long now = pipeline.nowMicros();
    Sample inOrder =
        sample.timeMicros() >= now ? sample : new Sample(sample.channel(), now, sample.value());
    pipeline.accept(new TripEntry.OfSample(inOrder));
  }

  /** Takes where the link stands now; the same told again only lets time pass. */
  void linkChanged(LinkEvent event) {
    if (event.sameStateAs(link)) {
      pipeline.advanceTo(event.timeMicros());
    } else {
      link = event;
      pipeline.accept(new TripEntry.OfEvent(event.toTripEvent()));
    }
  }

  /** Keeps who answers, with this trip and those to come. */
  void answeredBy(LinkIdentity answering) {
    whoAnswers = answering;
    output.describe(answering);
  }

  /** Whether the engine has been off for long enough to end this trip. */
  boolean isEndedByEngine(long nowMicros) {
    return begun && engineOff.endsTrip(link.state(), nowMicros);
  }

  /** Whether the trip goes on with a vehicle that answers. */
  boolean hearsVehicle() {
    return begun && link.state() == LinkSummary.State.CONNECTED;
  }

  /** Takes what a control unit told of itself; the same told again is no news. */
  void diagnosed(Arrival.Diagnosed told) {
    keep(told, Math.max(pipeline.nowMicros(), clock.micros(told.nanoTime())));
  }

  /**
   * Keeps what is told while the reader comes to its end, as of the end of the trip. A simulated
   * vehicle may have driven on for long by then: that belongs to no trip.
   */
  void takeLast(Arrival.Diagnosed told) {
    if (clock.micros(told.nanoTime()) - pipeline.nowMicros() <= LAST_MICROS) {
      keep(told, pipeline.nowMicros());
    }
  }

  private void keep(Arrival.Diagnosed told, long timeMicros) {
    if (begun && diagnoses.isNews(told)) {
      pipeline.accept(new TripEntry.OfEvent(new TripEvent(timeMicros, told.kind(), told.detail())));
    }
  }

  /** Takes what the tablet tells of itself. A sleep that the link's clock missed is caught up. */
  void tabletTold(TabletNews news, long nanoTime) {
    // What ends a trip by a long sleep is told as of before it: the sleep is no part of the trip.
    boolean isEnd = TripSafety.endedBy(news).filter(EndedTrip.Cause.LONG_SLEEP::equals).isPresent();
    long told = isEnd ? 0 : clock.micros(nanoTime);
    TabletReport report = new TabletReport(Math.max(pipeline.nowMicros(), told), news);
    pipeline.accept(new TripEntry.OfEvent(TabletText.event(report.timeMicros(), news)));
    if (news instanceof TabletNews.Slept(Duration length, boolean monotonicStood)
        && monotonicStood
        && LinkClock.machine().equals(route.source().clock())) {
      clock = clock.stoodFor(length);
    }
    observer.tablet(report);
  }

  /** Takes a person's answer, as of the present. */
  void answered(TripEvent.Kind kind) {
    pipeline.accept(new TripEntry.OfEvent(new TripEvent(pipeline.nowMicros(), kind, "")));
  }

  void speakIn(UnitSystem chosen) {
    units = chosen;
    pipeline.speakIn(chosen);
  }

  /**
   * Seals the record at the present moment.
   *
   * @return the trip's id; empty if nothing was recorded
   */
  Optional<String> seal() {
    return output.seal(pipeline.nowMicros());
  }

  /** Where recording stands. */
  RecordingState recording() {
    return output.recording();
  }

  /** What the driver saw last, also before this trip. */
  Optional<DriveSnapshot> shown() {
    return output.shown();
  }
}
