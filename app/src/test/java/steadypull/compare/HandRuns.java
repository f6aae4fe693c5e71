package steadypull.compare;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import steadypull.channel.Channel;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/** Runs made by hand. */
final class HandRuns {
  private HandRuns() {}

  /** A run that tells nothing. */
  static Run run(Side side, int place, LocalDate day) {
    return run(side, place, day, 1, new RunSeries(0, 1, Map.of()));
  }

  static Run run(Side side, int place, LocalDate day, int loadSeconds, RunSeries series) {
    return new Run(
        side + " " + place,
        0,
        side,
        place,
        Optional.of(day),
        Vehicle.unknown("invented", CoolingLayout.WATER_TO_AIR),
        Run.Ground.ROLLERS,
        loadSeconds,
        loadSeconds,
        series,
        start(),
        RunNotes.NONE);
  }

  /** The same run without some channels. */
  static Run without(Run run, Channel... channels) {
    Map<Channel, double[]> columns = new LinkedHashMap<>(run.series().columns());
    for (Channel channel : channels) {
      columns.remove(channel);
    }
    RunSeries series = new RunSeries(run.series().firstSecond(), run.series().seconds(), columns);
    return new Run(
        run.source(),
        run.onsetSeconds(),
        run.side(),
        run.place(),
        run.day(),
        run.vehicle(),
        run.ground(),
        run.loadSeconds(),
        run.heldSeconds(),
        series,
        run.start(),
        run.notes());
  }

  /** The same run on another day. */
  static Run on(Run run, LocalDate day) {
    return new Run(
        run.source(),
        run.onsetSeconds(),
        run.side(),
        run.place(),
        Optional.of(day),
        run.vehicle(),
        run.ground(),
        run.loadSeconds(),
        run.heldSeconds(),
        run.series(),
        run.start(),
        run.notes());
  }

  private static RunStart start() {
    return new RunStart(
        Map.of(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalInt.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        RunStart.Known.UNKNOWN,
        RunStart.Known.UNKNOWN,
        RunStart.Known.UNKNOWN,
        RunStart.Known.UNKNOWN,
        Thermostat.UNKNOWN);
  }
}
