package steadypull.demo.pace;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;

/**
 * The plain loop that the reader is compared with: one parameter per request, with the number of
 * answer lines, the reply cut up as text. It asks for the same answers as a run brought.
 */
final class SinglesLoop {
  private static final int MOST_REQUESTS = 40_000;
  private static final Duration PATIENCE = Duration.ofSeconds(1);

  private static final TimedVehicle VEHICLE = new TimedVehicle();

  private final TimedLink link;
  private long readings;
  private double sum;

  private SinglesLoop(LinkTiming timing) {
    link = new TimedLink(timing);
  }

  /** Asks one by one for what a run brought; so many of each as keep the loop short. */
  static PaceFigures repeat(PaceFigures run) {
    SinglesLoop loop = new SinglesLoop(run.timing());
    long total = 0;
    for (int answered : run.answers()) {
      total += answered;
    }
    double part = Math.min(1, (double) MOST_REQUESTS / total);
    loop.askAll(run.answers(), part / 4);
    return loop.measured(run, part);
  }

  private PaceFigures measured(PaceFigures run, double part) {
    ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
    readings = 0;
    long requests = link.requests;
    long begin = link.nanoTime();
    long processor = threads.getCurrentThreadCpuTime();
    long bytes = threads.getCurrentThreadAllocatedBytes();
    askAll(run.answers(), part);
    return new PaceFigures(
        run.timing(),
        (link.nanoTime() - begin) / 1e9,
        link.answers(),
        readings,
        link.requests - requests,
        (threads.getCurrentThreadCpuTime() - processor) / 1e9,
        threads.getCurrentThreadAllocatedBytes() - bytes);
  }

  private void askAll(List<Integer> answers, double part) {
    for (int number = 1; number < answers.size(); number++) {
      for (long left = Math.round(part * answers.get(number)); left > 0; left--) {
        ask(number);
      }
    }
  }

  private void ask(int number) {
    int lines = LinkTiming.lines(2 + VEHICLE.data(number).length);
    link.write("01%02X%d\r".formatted(number, lines).getBytes(StandardCharsets.US_ASCII));
    String heard = "";
    while (!heard.endsWith(">")) {
      heard += new String(link.read(PATIENCE), StandardCharsets.US_ASCII);
    }
    StringBuilder payload = new StringBuilder();
    for (String line : heard.split("\r", -1)) {
      if (line.startsWith("7E8")) {
        payload.append(line.substring(line.startsWith("7E81") ? 7 : 5));
      }
    }
    take(number, payload.toString());
  }

  private void take(int number, String payload) {
    String data = payload.substring(4);
    boolean hasSensors = number >= 0x67 && number <= 0x78;
    int values = hasSensors ? Integer.bitCount(Integer.parseInt(data.substring(0, 2), 16)) : 1;
    for (int i = 0; i < values; i++) {
      int at = hasSensors ? 2 + 2 * i : 0;
      sum += Integer.parseInt(data.substring(at, at + 2), 16) * 0.5;
      readings++;
    }
  }

  /** What all values add up to, so that no compiler leaves the work out. */
  double sum() {
    return sum;
  }
}
