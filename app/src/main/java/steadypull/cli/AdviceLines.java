package steadypull.cli;

import java.io.PrintWriter;
import java.util.Optional;
import java.util.function.Supplier;
import steadypull.advice.AdviceEvent;
import steadypull.advice.AdviceJson;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.PipelineOutput;
import steadypull.thermal.Forecast;

/** Prints advice, and forecasts at an interval, as JSON lines. */
final class AdviceLines implements PipelineOutput {
  private static final long SECOND_MICROS = 1_000_000;

  private final PrintWriter out;
  private final Optional<Integer> forecastSeconds;

  AdviceLines(PrintWriter out, Optional<Integer> forecastSeconds) {
    this.out = out;
    this.forecastSeconds = forecastSeconds;
  }

  @Override
  public void advice(AdviceEvent event) {
    if (!event.kind().isResponse()) {
      out.println(AdviceJson.event(event));
    }
  }

  /** Nobody looks. */
  @Override
  public void second(long timeMicros, Supplier<DriveSnapshot> picture) {}

  @Override
  public void forecast(Forecast forecast) {
    if (forecastSeconds.isPresent()
        && forecast.timeMicros() / SECOND_MICROS % forecastSeconds.get() == 0) {
      AdviceJson.forecast(forecast).forEach(out::println);
    }
  }
}
