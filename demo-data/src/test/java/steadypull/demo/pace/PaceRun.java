package steadypull.demo.pace;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import steadypull.adapter.LinkState;
import steadypull.adapter.ReaderListener;
import steadypull.adapter.ReaderSettings;
import steadypull.adapter.Reading;
import steadypull.adapter.VehicleReader;

/**
 * Runs a reader on a timed link: for a while until it has learnt what it learns and the machine has
 * compiled what it compiles, then for a span that is measured. One thread.
 */
final class PaceRun implements ReaderListener {
  private static final double NANOS = 1e9;

  /** The thread's processor time and allocation at one moment of the link's time. */
  private record Mark(
      long nanoTime, long processorNanos, long bytes, long requests, List<Integer> answers) {
    static Mark now(TimedLink link) {
      ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
      return new Mark(
          link.nanoTime(),
          threads.getCurrentThreadCpuTime(),
          threads.getCurrentThreadAllocatedBytes(),
          link.requests,
          link.answers());
    }
  }

  private static final int KEPT = 1024;

  /** Readings go somewhere, as in the program: a compiler may not leave them out. */
  private final Reading[] kept = new Reading[KEPT];

  private final TimedLink link;
  private final VehicleReader reader;
  private final double begin;
  private final double end;
  private Mark first;
  private Mark last;
  private long readings;

  private PaceRun(LinkTiming timing, ReaderSettings.Pace pace, double warmSeconds, double seconds) {
    link = new TimedLink(timing);
    ReaderSettings settings = new ReaderSettings(TimedVehicle.signals(), List.of(), pace);
    reader = new VehicleReader(link, settings, this);
    begin = link.nanoTime() / NANOS + warmSeconds;
    end = begin + seconds;
    first = Mark.now(link);
    last = first;
  }

  /** Runs for spans of the link's time. */
  static PaceFigures measure(
      LinkTiming timing, ReaderSettings.Pace pace, double warmSeconds, double seconds) {
    PaceRun run = new PaceRun(timing, pace, warmSeconds, seconds);
    run.reader.run();
    return run.figures(timing);
  }

  private PaceFigures figures(LinkTiming timing) {
    List<Integer> answers = new ArrayList<>();
    for (int i = 0; i < first.answers().size(); i++) {
      answers.add(last.answers().get(i) - first.answers().get(i));
    }
    return new PaceFigures(
        timing,
        (last.nanoTime() - first.nanoTime()) / NANOS,
        answers,
        readings,
        last.requests() - first.requests(),
        (last.processorNanos() - first.processorNanos()) / NANOS,
        last.bytes() - first.bytes());
  }

  @Override
  public void reading(Reading reading) {
    double seconds = reading.nanoTime() / NANOS;
    if (seconds < begin) {
      return;
    }
    if (readings == 0) {
      first = Mark.now(link);
    }
    kept[(int) (readings % KEPT)] = reading;
    readings++;
    if (seconds >= end) {
      last = Mark.now(link);
      reader.close();
    }
  }

  @Override
  public void linkState(LinkState state, long nanoTime) {}
}
