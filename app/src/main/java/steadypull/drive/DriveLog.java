package steadypull.drive;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;
import steadypull.adapter.LinkState;
import steadypull.adapter.Reading;
import steadypull.adapter.position.PositionReport;
import steadypull.adapter.position.ReceiverState;
import steadypull.advice.AdviceEvent;
import steadypull.channel.Sample;
import steadypull.channel.UnitSystem;
import steadypull.store.LibraryException;
import steadypull.store.NewTrip;
import steadypull.store.TripEntry;
import steadypull.store.TripEvent;
import steadypull.store.TripLibrary;
import steadypull.thermal.Forecast;

/**
 * Runs arrivals through the pipeline and keeps the trips. A trip begins with its first reading:
 * what was shown while the link was being opened belongs to no trip. It ends with the drive, or
 * when the engine has been off for a while; a link that fails leaves a gap in it. Pipeline thread
 * only.
 */
final class DriveLog {
  /**
   * Where and under which name trips are kept.
   *
   * @param library the library
   * @param label run label, may be empty
   * @param softwareVersion kept with the trip
   */
  record Keeping(TripLibrary library, String label, String softwareVersion) {}

  /** As long as a reader takes for its last questions, and a little more. */
  private static final long LAST_MICROS = 2_500_000;

  private final DriveRoute route;
  private final SensorRoles roles;
  private final Keeping keeping;
  private final PipelineOutput observer;
  private final SensorKeeper sensors;

  private final DriveSpan span;
  private TripClock clock;
  private ReadingIntake intake;
  private DiagnosisIntake diagnoses = new DiagnosisIntake();
  private DrivePipeline pipeline;
  private @Nullable TripKeeper keeper;
  private UnitSystem units;
  private boolean begun;
  private OptionalLong firstStartNanos = OptionalLong.empty();
  private EngineOffWait engineOff = new EngineOffWait();
  private final List<String> earlierTripIds = new ArrayList<>();
  private Optional<String> unkept = Optional.empty();
  private LinkEvent link = new LinkEvent(0, LinkSummary.State.OPENING, "", 0);
  private RecordingState refused = new RecordingState.Waiting();
  private Optional<String> linkTrouble = Optional.empty();
  private Optional<String> fatal = Optional.empty();
  private Optional<DriveSnapshot> shown = Optional.empty();

  DriveLog(DriveRoute route, Keeping keeping, TripClock clock, PipelineOutput observer) {
    this.route = route;
    this.roles = route.roles();
    this.units = route.setup().units();
    this.keeping = keeping;
    this.observer = observer;
    this.sensors = new SensorKeeper(keeping.library(), route.setup().vehicle().name());
    this.clock = clock;
    this.span = new DriveSpan(clock.startNanos(), route.end(), route.lastsNanos());
    this.intake = new ReadingIntake(roles, clock);
    this.pipeline = new DrivePipeline(route.setup(), clock.start(), new Output());
  }

  /** Takes one arrival; false when the drive is over. */
  boolean take(Arrival arrival) {
    return switch (arrival) {
      case Arrival.Heard(Reading reading) -> hear(reading);
      case Arrival.LinkChanged(LinkState state, long nanoTime) -> linkChanged(state, nanoTime);
      case Arrival.Located(PositionReport report) -> locate(report);
      case Arrival.ReceiverChanged(ReceiverState state, long nanoTime) -> {
        observer.receiver(Positions.news(state, clock.micros(nanoTime)));
        yield true;
      }
      case Arrival.Diagnosed told -> diagnosed(told);
      case Arrival.Answered(TripEvent.Kind kind) -> {
        pipeline.accept(new TripEntry.OfEvent(new TripEvent(pipeline.nowMicros(), kind, "")));
        yield true;
      }
      case Arrival.UnitsChosen(UnitSystem chosen) -> {
        units = chosen;
        pipeline.speakIn(chosen);
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
    shown
        .map(last -> last.with(new RecordingState.Failed(text)).withLinkClosed(text))
        .ifPresent(observer::second);
    return text;
  }

  /** Seals the trip. */
  DriveOutcome end() {
    Optional<String> trip = seal();
    return new DriveOutcome(earlierTripIds, trip, linkTrouble, fatal.or(() -> unkept));
  }

  /** Seals the present trip, if there is one, and gives its id. */
  private Optional<String> seal() {
    TripKeeper kept = keeper;
    if (kept != null) {
      kept.seal(pipeline.nowMicros());
      sensors.keep();
    }
    unkept = unkept.or(() -> failure(recording()));
    return Optional.ofNullable(kept).map(TripKeeper::tripId);
  }

  /** The engine is off: ends the trip and waits for the next one. */
  private void endTrip(long nanoTime) {
    Optional<String> ended = seal();
    ended.ifPresent(earlierTripIds::add);
    keeper = null;
    begun = false;
    refused = new RecordingState.Waiting();
    anchor(nanoTime);
    pipeline.accept(new TripEntry.OfEvent(link.toTripEvent()));
    ended.ifPresent(observer::tripEnded);
  }

  private static Optional<String> failure(RecordingState state) {
    return state instanceof RecordingState.Failed failed
        ? Optional.of(failed.reason())
        : Optional.empty();
  }

  private boolean hear(Reading reading) {
    if (!begun) {
      begin(reading.nanoTime());
    }
    if (isOver(reading.nanoTime())) {
      return false;
    }
    List<Sample> samples = intake.samples(reading);
    sensors.hear(reading, samples);
    for (Sample sample : samples) {
      engineOff.heard(sample);
      pipeline.accept(new TripEntry.OfSample(inOrder(sample)));
    }
    return true;
  }

  /** Where the vehicle stood before its first reading belongs to no trip. */
  private boolean locate(PositionReport report) {
    if (!begun) {
      return true;
    }
    if (isOver(report.nanoTime())) {
      return false;
    }
    for (Sample sample : Positions.samples(report, clock.micros(report.nanoTime()))) {
      pipeline.accept(new TripEntry.OfSample(inOrder(sample)));
    }
    return true;
  }

  /**
   * A sign of life may come between the last byte of an answer and the prompt that ends it. Such an
   * answer counts from the later moment, so that a replay, which knows no signs of life, sees the
   * same order.
   */
  private Sample inOrder(Sample sample) {
    long now = pipeline.nowMicros();
    return sample.timeMicros() >= now ? sample : new Sample(sample.channel(), now, sample.value());
  }

  private void begin(long nanoTime) {
    begun = true;
    anchor(nanoTime);
    firstStartNanos = OptionalLong.of(firstStartNanos.orElse(clock.startNanos()));
    openTrip();
    pipeline.accept(new TripEntry.OfEvent(link.toTripEvent()));
  }

  /** Begins a new count of time, with nothing known of what was before but the link. */
  private void anchor(long nanoTime) {
    clock = clock.anchoredAt(nanoTime);
    intake = new ReadingIntake(roles, clock);
    engineOff = new EngineOffWait();
    diagnoses = new DiagnosisIntake();
    pipeline = new DrivePipeline(route.setup(), clock.start(), new Output());
    pipeline.speakIn(units);
    link = new LinkEvent(0, link.state(), link.detail(), link.expectedChannels());
  }

  private void openTrip() {
    try {
      keeper =
          new TripKeeper(
              keeping.library(),
              new NewTrip(
                  route.setup().vehicle(),
                  clock.start(),
                  keeping.label(),
                  route.source().address(),
                  keeping.softwareVersion()));
    } catch (LibraryException refusal) {
      refused = new RecordingState.Failed(FaultText.of(refusal));
    }
  }

  private boolean linkChanged(LinkState state, long nanoTime) {
    if (isOver(nanoTime)) {
      return false;
    }
    LinkEvent event = LinkStates.event(state, clock.micros(nanoTime), roles);
    if (event.sameStateAs(link)) {
      pipeline.advanceTo(event.timeMicros());
    } else {
      link = event;
      noteTrouble(event);
      pipeline.accept(new TripEntry.OfEvent(event.toTripEvent()));
    }
    if (begun && engineOff.endsTrip(link.state(), event.timeMicros())) {
      endTrip(nanoTime);
    }
    return true;
  }

  /** The same told again is no news; what is told before the first reading belongs to no trip. */
  private boolean diagnosed(Arrival.Diagnosed told) {
    if (isOver(told.nanoTime())) {
      return false;
    }
    keep(told, Math.max(pipeline.nowMicros(), clock.micros(told.nanoTime())));
    return true;
  }

  private void keep(Arrival.Diagnosed told, long timeMicros) {
    if (begun && diagnoses.isNews(told)) {
      pipeline.accept(new TripEntry.OfEvent(new TripEvent(timeMicros, told.kind(), told.detail())));
    }
  }

  /** Whether the trip goes on with a vehicle that answers. */
  boolean hearsVehicle() {
    return begun && link.state() == LinkSummary.State.CONNECTED;
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

  private void noteTrouble(LinkEvent event) {
    linkTrouble = LinkTrouble.of(event).or(() -> linkTrouble);
  }

  private boolean isOver(long nanoTime) {
    long startNanos = firstStartNanos.orElse(clock.startNanos());
    boolean isOver = span.isOver(startNanos, nanoTime);
    if (isOver) {
      pipeline.advanceTo(clock.micros(span.endNanos(startNanos)));
    }
    return isOver;
  }

  private RecordingState recording() {
    TripKeeper kept = keeper;
    return kept == null ? refused : kept.state();
  }

  /** Keeps every entry, makes each second durable, then lets the observer see it. */
  private final class Output implements PipelineOutput {
    @Override
    public void entry(TripEntry entry) {
      TripKeeper kept = keeper;
      if (kept != null) {
        kept.keep(entry);
      }
      if (begun) {
        observer.entry(entry);
      }
    }

    @Override
    public void advice(AdviceEvent event) {
      if (begun) {
        observer.advice(event);
      }
    }

    @Override
    public void forecast(Forecast forecast) {
      observer.forecast(forecast);
    }

    @Override
    public void second(DriveSnapshot snapshot) {
      TripKeeper kept = keeper;
      if (kept != null) {
        kept.commit(snapshot.timeMicros());
      }
      show(snapshot);
    }

    private void show(DriveSnapshot snapshot) {
      DriveSnapshot next = snapshot.with(recording());
      shown = Optional.of(next);
      observer.second(next);
    }

    @Override
    public void answered(DriveSnapshot snapshot) {
      observer.answered(snapshot.with(recording()));
    }
  }
}
