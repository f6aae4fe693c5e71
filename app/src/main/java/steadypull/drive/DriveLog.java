package steadypull.drive;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import steadypull.adapter.LinkState;
import steadypull.adapter.Reading;
import steadypull.adapter.position.PositionReport;
import steadypull.adapter.position.ReceiverState;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.store.TripDetails;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.tablet.TabletNews;

/**
 * Hands a drive's arrivals to the trip under way. A trip begins with its first reading: what was
 * shown while the link was being opened belongs to no trip. It ends with the drive, or when the
 * engine has been off for a while; a link that fails leaves a gap in it. Pipeline thread only.
 */
final class DriveLog {
  /**
   * Where trips are kept, and what is said of them.
   *
   * @param library the library
   * @param details what is said of every trip at its start
   * @param zone where the tablet is, for the local time of a trip
   * @param softwareVersion kept with the trip
   */
  record Keeping(TripLibrary library, TripDetails details, ZoneId zone, String softwareVersion) {}

  private final DriveRoute route;
  private final Keeping keeping;
  private final SensorRoles roles;
  private final PipelineOutput observer;
  private final SensorKeeper sensors;
  private final DriveSpan span;
  private final FixTimes fixTimes = new FixTimes();
  private boolean isReceiverInPace = true;
  private final List<String> earlierTripIds = new ArrayList<>();
  private TripUnderWay trip;
  private OptionalLong firstStartNanos = OptionalLong.empty();
  private Optional<String> unkept = Optional.empty();
  private Optional<String> linkTrouble = Optional.empty();
  private Optional<String> fatal = Optional.empty();

  DriveLog(DriveRoute route, Keeping keeping, TripClock clock, PipelineOutput observer) {
    this.route = route;
    this.keeping = keeping;
    this.roles = route.roles();
    this.observer = observer;
    this.sensors = new SensorKeeper(keeping.library(), route.setup().vehicle().name());
    this.span = new DriveSpan(clock.startNanos(), route.end(), route.lastsNanos());
    this.trip = new TripUnderWay(route, keeping, clock, observer);
  }

  /** Takes one arrival; false when the drive is over. */
  boolean take(Arrival arrival) {
    return switch (arrival) {
      case Arrival.Heard(Reading reading) -> hear(reading);
      case Arrival.LinkChanged(LinkState state, long nanoTime) -> linkChanged(state, nanoTime);
      case Arrival.Located(PositionReport report) -> locate(report);
      case Arrival.ReceiverChanged(ReceiverState state, long nanoTime) -> {
        observer.receiver(Positions.news(state, trip.micros(nanoTime)));
        yield true;
      }
      case Arrival.Diagnosed told -> diagnosed(told);
      case Arrival.TabletTold(TabletNews news, long nanoTime) -> {
        tabletTold(news, nanoTime);
        yield true;
      }
      case Arrival.Answered(TripEvent.Kind kind) -> {
        trip.answered(kind);
        yield true;
      }
      case Arrival.UnitsChosen(UnitSystem chosen) -> {
        trip.speakIn(chosen);
        yield true;
      }
      case Arrival.Called called -> true;
      case Arrival.PortEnded ended -> true;
      case Arrival.Failed(Throwable fault) ->
          throw new IllegalStateException(FaultText.of(fault), fault);
      case Arrival.End end -> false;
    };
  }

  /**
   * Ends a drive that cannot go on: shows and keeps what can be shown and kept.
   *
   * @return one clear message
   */
  String fail(Throwable fault) {
    String text =
        ("Could not go on with the drive from %s: expected to take what the vehicle answers, found"
             + " %s (%s). What was recorded is kept; begin a new drive, and report this message.")
            .formatted(
                route.source().address(), fault.getClass().getSimpleName(), FaultText.of(fault));
    fatal = Optional.of(text);
    trip.shown()
        .map(last -> last.with(new RecordingState.Failed(text)).withLinkClosed(text))
        .ifPresent(observer::second);
    return text;
  }

  /** Seals the trip. */
  DriveOutcome end() {
    Optional<String> last = seal();
    return new DriveOutcome(earlierTripIds, last, linkTrouble, fatal.or(() -> unkept));
  }

  /** Seals the present trip, if there is one, and gives its id. */
  private Optional<String> seal() {
    Optional<String> sealed = trip.seal();
    if (sealed.isPresent()) {
      sensors.keep();
      keeping.library().roads().learnBeside();
      keeping.library().heat().learnBeside(new TripTeacher());
    }
    unkept = unkept.or(() -> failure(trip.recording()));
    return sealed;
  }

  private static Optional<String> failure(RecordingState state) {
    return state instanceof RecordingState.Failed failed
        ? Optional.of(failed.reason())
        : Optional.empty();
  }

  private boolean hear(Reading reading) {
    if (!trip.isBegun()) {
      begin(reading.nanoTime());
    }
    if (isOver(reading.nanoTime())) {
      return false;
    }
    List<Sample> samples = trip.samples(reading);
    sensors.hear(reading, samples);
    trip.hear(samples);
    return true;
  }

  private void begin(long nanoTime) {
    trip = trip.begunAt(nanoTime);
    firstStartNanos = OptionalLong.of(firstStartNanos.orElse(trip.startNanos()));
    trip.open();
  }

  /**
   * Where the vehicle stood before its first reading belongs to no trip, and what was held up on
   * the way to no moment of one: it would put the vehicle where it was seconds ago.
   */
  private boolean locate(PositionReport report) {
    boolean isTimely = isTimely(report);
    if (!trip.isBegun()) {
      return true;
    }
    if (isOver(report.nanoTime())) {
      return false;
    }
    if (isTimely) {
      trip.locate(report);
    }
    return true;
  }

  private boolean isTimely(PositionReport report) {
    return switch (report) {
      case PositionReport.Unfixed _ -> true;
      case PositionReport.Fixed fix -> {
        FixTimes.Verdict verdict = fixTimes.judge(fix);
        boolean isInPace = verdict != FixTimes.Verdict.OUT_OF_PACE;
        if (isInPace != isReceiverInPace) {
          isReceiverInPace = isInPace;
          observer.receiver(Positions.paceNews(isInPace, trip.micros(fix.nanoTime())));
        }
        yield verdict == FixTimes.Verdict.TIMELY;
      }
    };
  }

  private boolean linkChanged(LinkState state, long nanoTime) {
    if (isOver(nanoTime)) {
      return false;
    }
    LinkEvent event = LinkStates.event(state, trip.micros(nanoTime), roles);
    linkTrouble = LinkTrouble.of(event).or(() -> linkTrouble);
    trip.linkChanged(event);
    if (state instanceof LinkState.Connected connected) {
      trip.answeredBy(LinkStates.whoAnswers(connected));
    }
    if (trip.isEndedByEngine(event.timeMicros())) {
      endTrip(nanoTime, EndedTrip.Cause.ENGINE_OFF);
    }
    return true;
  }

  /** A tablet that may go off any minute, or was away for long, has its trip brought to safety. */
  private void tabletTold(TabletNews news, long nanoTime) {
    boolean isNeedless = news instanceof TabletNews.MayFallAsleep && route.setup().demo();
    if (isNeedless || isOver(nanoTime)) {
      return;
    }
    trip.tabletTold(news, nanoTime);
    Optional<EndedTrip.Cause> cause = TripSafety.endedBy(news);
    if (trip.isBegun() && cause.isPresent()) {
      endTrip(nanoTime, cause.get());
    }
  }

  /** Ends the trip and waits for the next one. */
  private void endTrip(long nanoTime, EndedTrip.Cause cause) {
    Optional<String> ended = seal();
    ended.ifPresent(earlierTripIds::add);
    trip = trip.overAt(nanoTime);
    trip.open();
    ended.ifPresent(id -> observer.tripEnded(new EndedTrip(id, cause)));
  }

  /** What is told before the first reading belongs to no trip. */
  private boolean diagnosed(Arrival.Diagnosed told) {
    if (isOver(told.nanoTime())) {
      return false;
    }
    trip.diagnosed(told);
    return true;
  }

  /** Whether the trip goes on with a vehicle that answers. */
  boolean hearsVehicle() {
    return trip.hearsVehicle();
  }

  /** Keeps what is told while the reader comes to its end. */
  void takeLast(Arrival.Diagnosed told) {
    trip.takeLast(told);
  }

  private boolean isOver(long nanoTime) {
    long startNanos = firstStartNanos.orElse(trip.startNanos());
    boolean isOver = span.isOver(startNanos, nanoTime);
    if (isOver) {
      trip.advanceTo(span.endNanos(startNanos));
    }
    return isOver;
  }
}
