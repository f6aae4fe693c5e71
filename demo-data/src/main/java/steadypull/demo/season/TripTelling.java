package steadypull.demo.season;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import steadypull.demo.plant.Sensor;

/** Drives one trip and tells it in the order of time. Used once, by one thread. */
final class TripTelling {
  private static final double MICROS = 1e6;

  /** Silence, before a link counts as lost. */
  private static final long NOTICED_AFTER_MICROS = 1_200_000;

  private static final long CODES_EVERY_MICROS = 60_000_000;
  private static final long STANDS_STILL_MICROS = 9_000_000;

  private final SeasonDrive drive;
  private final PolledLink link;
  private final Optional<Receiver> receiver;
  private final Deque<Incident> incidents;
  private final SeasonSink sink;
  private final List<String> stored = new ArrayList<>();
  private final List<String> pending = new ArrayList<>();
  private boolean hasNewsOfCodes = true;
  private long asksForCodesAt;
  private long told;

  TripTelling(CalendarRow row, SeasonDrive drive, Random random, SeasonSink sink) {
    this.drive = drive;
    this.sink = sink;
    VehicleBus bus = row.vehicle().bus();
    link = new PolledLink(bus, bus.answers(row.rig().cooling()), new Random(random.nextLong()));
    int firstFix = row.parkedHours() > 6 ? 24 + random.nextInt(15) : 2 + random.nextInt(5);
    receiver =
        row.vehicle().hasReceiver()
            ? Optional.of(new Receiver(new Random(random.nextLong()), firstFix))
            : Optional.empty();
    incidents = new ArrayDeque<>(row.incidents().stream().sorted(Incident.BY_TIME).toList());
  }

  /** Tells everything; gives the end in microseconds. */
  long tell() {
    long engineStops = Long.MAX_VALUE;
    while (link.arrival() < engineStops + STANDS_STILL_MICROS || engineStops == Long.MAX_VALUE) {
      meetIncidents();
      if (receiver.isPresent() && receiver.get().arrival() < link.arrival()) {
        report(receiver.get());
      } else {
        answer();
      }
      if (drive.isOver() && engineStops == Long.MAX_VALUE) {
        engineStops = told;
        drive.stopEngine();
        sink.happened(new SeasonEvent.EngineStopped(told));
      }
    }
    return told;
  }

  private void report(Receiver at) {
    moveTo(at.arrival());
    at.report(drive.place(), sink);
    at.proceed();
  }

  private void answer() {
    moveTo(link.arrival());
    if (link.arrival() >= asksForCodesAt) {
      asksForCodesAt = link.arrival() + CODES_EVERY_MICROS;
      tellCodes();
    }
    for (BusValue value : link.answer().values()) {
      Sensor sensor = value.sensor();
      sink.sample(value.channelHeader(), link.arrival(), value.arriving(drive.read(sensor)));
    }
    link.proceed();
  }

  private void moveTo(long micros) {
    drive.advanceTo(micros / MICROS);
    told = micros;
    drive.takeMark().ifPresent(text -> sink.happened(new SeasonEvent.Mark(micros, text)));
  }

  private void tellCodes() {
    if (hasNewsOfCodes) {
      sink.happened(new SeasonEvent.CodesTold(link.arrival(), stored, pending));
      hasNewsOfCodes = false;
    }
  }

  private void meetIncidents() {
    long next = link.arrival();
    while (!incidents.isEmpty() && incidents.getFirst().seconds() * MICROS <= next) {
      switch (incidents.removeFirst()) {
        case Incident.Note note ->
            sink.happened(
                new SeasonEvent.Mark(Math.max(told, micros(note.seconds())), note.text()));
        case Incident.Fault fault -> {
          (fault.isStored() ? stored : pending).add(fault.code());
          hasNewsOfCodes = true;
        }
        case Incident.LinkLoss loss -> loseLink(loss);
      }
    }
  }

  /** The receiver is not on that link and goes on reporting. */
  private void loseLink(Incident.LinkLoss loss) {
    tellReceiverUntil(told + NOTICED_AFTER_MICROS);
    sink.happened(new SeasonEvent.LinkLost(told));
    long back = micros(loss.until());
    tellReceiverUntil(back);
    sink.happened(new SeasonEvent.LinkBack(back));
    told = back;
    link.pauseUntil(back);
  }

  private void tellReceiverUntil(long micros) {
    while (receiver.isPresent() && receiver.get().arrival() < micros) {
      report(receiver.get());
    }
    moveTo(micros);
  }

  private static long micros(double seconds) {
    return Math.round(seconds * MICROS);
  }
}
