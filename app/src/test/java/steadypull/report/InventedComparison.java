package steadypull.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.IntToDoubleFunction;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.compare.Asked;
import steadypull.compare.Comparison;
import steadypull.compare.Course;
import steadypull.compare.GainAt;
import steadypull.compare.Job;
import steadypull.compare.LoadMatch;
import steadypull.compare.RejectedRun;
import steadypull.compare.Run;
import steadypull.compare.RunNotes;
import steadypull.compare.RunSeries;
import steadypull.compare.RunSet;
import steadypull.compare.RunStart;
import steadypull.compare.Side;
import steadypull.compare.SideFigures;
import steadypull.compare.Thermostat;
import steadypull.compare.Verdict;
import steadypull.thermal.Belief;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * A comparison of a world of one heat store, for what is shown of it: before, it rises by 42 K in
 * 65 s; after, by 30 K in 90 s.
 */
public final class InventedComparison {
  private static final int SECONDS = 181;
  private static final double START = 20;

  private Channel channel = Channels.CHARGE_COOLANT_TEMP;
  private boolean isAboveOutside = true;
  private Verdict verdict = Verdict.PROVEN;
  private Verdict delayVerdict = Verdict.PROVEN;
  private Optional<Belief> settledGain = Optional.of(new Belief(9.8, 12, 14.1));
  private Optional<Belief> gainAtSixty = Optional.of(new Belief(8.1, 9.4, 10.6));
  private OptionalDouble equivalentWithin = OptionalDouble.empty();
  private OptionalDouble smallestDetectable = OptionalDouble.of(3.2);
  private OptionalDouble limit = OptionalDouble.of(92);
  private OptionalDouble toLimitBefore = OptionalDouble.of(147);
  private int runsPerSide = 3;
  private boolean isOnOneDay;
  private String vehicle = "Van 2";
  private String job = "Expansion tank and second radiator";
  private List<String> caveats =
      List.of("The air conditioning was not told: its condenser heats the air before the cores.");

  /** What was proven of a channel above outside. */
  public static InventedComparison proven() {
    return new InventedComparison();
  }

  /** The same channel, nothing claimed. */
  public static InventedComparison open() {
    InventedComparison open = new InventedComparison();
    open.verdict = Verdict.NOT_PROVEN;
    open.delayVerdict = Verdict.NOT_PROVEN;
    open.settledGain = Optional.of(new Belief(-1, 1.2, 3.4));
    open.gainAtSixty = Optional.of(new Belief(-0.8, 0.6, 2));
    open.runsPerSide = 1;
    open.isOnOneDay = true;
    return open;
  }

  public InventedComparison verdict(Verdict changed) {
    verdict = changed;
    return this;
  }

  public InventedComparison delayVerdict(Verdict changed) {
    delayVerdict = changed;
    return this;
  }

  public InventedComparison gain(double low, double middle, double high) {
    settledGain = Optional.of(new Belief(low, middle, high));
    return this;
  }

  public InventedComparison withoutSettledGain() {
    settledGain = Optional.empty();
    return this;
  }

  public InventedComparison equivalentWithin(double kelvin) {
    equivalentWithin = OptionalDouble.of(kelvin);
    return this;
  }

  public InventedComparison runs(int perSide, boolean onOneDay) {
    runsPerSide = perSide;
    isOnOneDay = onOneDay;
    return this;
  }

  public InventedComparison coolant() {
    channel = Channels.ENGINE_COOLANT_TEMP;
    isAboveOutside = false;
    limit = OptionalDouble.of(112);
    return this;
  }

  public InventedComparison withoutLimit() {
    limit = OptionalDouble.empty();
    toLimitBefore = OptionalDouble.empty();
    return this;
  }

  public InventedComparison neverReaches() {
    toLimitBefore = OptionalDouble.empty();
    return this;
  }

  public InventedComparison told(String vehicleName, String jobName, String caveat) {
    vehicle = vehicleName;
    job = jobName;
    caveats = List.of(caveat);
    return this;
  }

  /** The comparison. */
  public Comparison build() {
    double lift = isAboveOutside ? 0 : 40;
    return new Comparison(
        channel,
        isAboveOutside,
        runs(),
        OptionalDouble.of(35),
        OptionalDouble.of(118),
        limit,
        verdict,
        delayVerdict,
        settledGain,
        smallestDetectable,
        equivalentWithin,
        at(lift),
        Optional.of(new Belief(7.1, 8.3, 9.4)),
        Optional.of(new Belief(1.6, 2.9, 4.2)),
        figures(62 + lift, toLimitBefore, 66_000, 1050, OptionalDouble.of(160)),
        figures(50 + lift, OptionalDouble.empty(), 92_000, 1420, OptionalDouble.empty()),
        course(s -> before(s) + lift, 1.2),
        course(s -> after(s) + lift, 0.9),
        course(s -> Math.min(117.4, 40 * (s + 1)), 1),
        course(s -> Math.min(118.6, 40 * (s + 1)), 1),
        160,
        course(s -> 0.75 * (before(s) - after(s)), 0.6),
        course(s -> 0.25 * (before(s) - after(s)), 0.6),
        caveats);
  }

  /** Two trips of which nothing can be compared. */
  public static Comparison untold() {
    Course none = new Course(new double[0], new double[0], new double[0]);
    SideFigures unknown =
        new SideFigures(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    RunSet runs =
        new RunSet(
            List.of(),
            List.of(
                new RejectedRun("20260310T163000Z-cftt", 0, Side.BEFORE, "nothing was pulled."),
                new RejectedRun("20260513T154000Z-vhwy", 508, Side.AFTER, "began 9 degC hotter.")),
            List.of());
    return new Comparison(
        Channels.CHARGE_COOLANT_TEMP,
        true,
        runs,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        Verdict.NOT_PROVEN,
        Verdict.NOT_PROVEN,
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of(),
        Optional.empty(),
        Optional.empty(),
        unknown,
        unknown,
        none,
        none,
        none,
        none,
        0,
        none,
        none,
        List.of("The after runs never held 380 N.m for 60 s. Drive one, or choose another load."));
  }

  private static double before(int second) {
    return START + 42 * (1 - Math.exp(-second / 65.0));
  }

  private static double after(int second) {
    return START + 30 * (1 - Math.exp(-second / 90.0));
  }

  private static Course course(IntToDoubleFunction middle, double half) {
    return new Course(
        line(s -> middle.applyAsDouble(s) - half),
        line(middle),
        line(s -> middle.applyAsDouble(s) + half));
  }

  private static double[] line(IntToDoubleFunction values) {
    double[] line = new double[SECONDS];
    Arrays.setAll(line, values);
    return line;
  }

  private List<GainAt> at(double lift) {
    List<GainAt> at = new ArrayList<>();
    for (int second : new int[] {15, 30, 60, 90, 120}) {
      double gain = before(second) - after(second);
      at.add(
          new GainAt(
              second,
              OptionalDouble.of(before(second) + lift),
              OptionalDouble.of(after(second) + lift),
              second == 60 ? gainAtSixty : Optional.of(new Belief(gain - 1.2, gain, gain + 1.1)),
              second < 120));
    }
    return at;
  }

  private static SideFigures figures(
      double settles,
      OptionalDouble secondsToLimit,
      double joules,
      double watts,
      OptionalDouble secondsToDerate) {
    return new SideFigures(
        Optional.of(around(joules)),
        Optional.of(around(watts)),
        Optional.of(new Belief(0.61, 0.66, 0.71)),
        Optional.of(around(watts * 30)),
        Optional.of(new Belief(settles - 1.6, settles, settles + 1.5)),
        Optional.of(new Belief(0.31, 0.4, 0.48)),
        secondsToLimit,
        secondsToDerate,
        secondsToDerate.isPresent() ? OptionalDouble.of(0.14) : OptionalDouble.empty(),
        Optional.of(new Belief(5, 6, 7)),
        Optional.of(around(109)),
        Optional.of(new Belief(33, 36, 39)));
  }

  private static Belief around(double middle) {
    return new Belief(middle * 0.9, middle, middle * 1.1);
  }

  private RunSet runs() {
    List<Run> runs = new ArrayList<>();
    for (int i = 0; i < runsPerSide; i++) {
      runs.add(run(Side.BEFORE, 0, i, 117.4));
    }
    for (int i = 0; i < runsPerSide; i++) {
      runs.add(run(Side.AFTER, 1, i, 118.6));
    }
    return new RunSet(
        runs,
        List.of(
            new RejectedRun(
                "20260512T083000Z-77aa",
                412,
                Side.AFTER,
                "began 7.4 degC hotter than the others (charge coolant 31.2 degC).")),
        Optional.of(new LoadMatch(160, 117.4, 118.6)),
        new Job(
            job,
            Map.of(Asked.FUEL, "diesel, same pump"),
            Map.of(Asked.COOLANT_MIX, "50/50"),
            Map.of(Asked.COOLANT_MIX, "50/50, fresh"),
            List.of()),
        List.of());
  }

  private Run run(Side side, int place, int number, double kilowatts) {
    LocalDate first = side == Side.BEFORE ? LocalDate.of(2026, 3, 10) : LocalDate.of(2026, 5, 13);
    return new Run(
        "2026%s%dT133000Z-c%d4e".formatted(side == Side.BEFORE ? "031" : "051", number, number),
        120 + number,
        side,
        place,
        Optional.of(isOnOneDay ? first : first.plusDays(number)),
        Vehicle.unknown(vehicle, CoolingLayout.WATER_TO_AIR),
        Run.Ground.ROLLERS,
        170,
        160,
        series(kilowatts),
        start(kilowatts),
        RunNotes.NONE);
  }

  private static RunSeries series(double kilowatts) {
    double[] power = new double[300];
    Arrays.setAll(power, i -> i < 120 ? 4 : Math.min(kilowatts, (i - 119) * 40));
    return new RunSeries(-120, 300, Map.of(Channels.WHEEL_POWER, power));
  }

  private RunStart start(double kilowatts) {
    return new RunStart(
        Map.of(channel, 24.2),
        OptionalDouble.of(21),
        OptionalDouble.of(98.4),
        OptionalDouble.of(900),
        OptionalInt.of(4),
        OptionalDouble.of(88),
        OptionalDouble.of(kilowatts),
        RunStart.Known.YES,
        RunStart.Known.UNKNOWN,
        RunStart.Known.NO,
        RunStart.Known.UNKNOWN,
        Thermostat.OPEN);
  }
}
