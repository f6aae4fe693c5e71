package steadypull.ui;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;
import steadypull.advice.AdviceLine;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.drive.ClimbAhead;
import steadypull.drive.Diagnosis;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.LinkSummary;
import steadypull.drive.RecordingState;
import steadypull.drive.RoadState;
import steadypull.drive.StripState;
import steadypull.drive.StripState.StripLevel;
import steadypull.drive.Trace;
import steadypull.road.GradeProfile;
import steadypull.road.RoadAhead;
import steadypull.tablet.TabletNews;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Driveline;
import steadypull.vehicle.Rig;
import steadypull.vehicle.SpeedRange;
import steadypull.vehicle.TroubleCodes;
import steadypull.vehicle.Vehicle;

/** Moments of an invented drive, one for every state of the screen. */
final class Moments {
  static final long NOW = 3_424_000_000L;
  static final Instant CLOCK = Instant.parse("2026-01-17T14:47:12Z");

  private static final AdviceLine.Response NONE = new AdviceLine.Response.None();
  private static final LinkSummary CONNECTED =
      new LinkSummary(LinkSummary.State.CONNECTED, 18, 9, 9, "adapter");

  private Moments() {}

  /** Every state by the name of its picture. */
  static Map<String, DriveSnapshot> all() {
    return Map.ofEntries(
        Map.entry("calm", calm()),
        Map.entry("may-reach", mayReach()),
        Map.entry("advise", advise(NONE)),
        Map.entry("acknowledged", advise(new AdviceLine.Response.Acknowledged(NOW - 12_000_000))),
        Map.entry("snoozed", advise(new AdviceLine.Response.Snoozed(NOW + 160_000_000))),
        Map.entry("act-now", actNow(NONE)),
        Map.entry(
            "act-now-acknowledged", actNow(new AdviceLine.Response.Acknowledged(NOW - 70_000_000))),
        Map.entry("derated", derated()),
        Map.entry("limited-power", limitedPower()),
        Map.entry("code-stored", codeStored()),
        Map.entry("holds-again", holdsAgain()),
        Map.entry("link-lost", linkLost()),
        Map.entry("learning", learning()),
        Map.entry("stale", stale()),
        Map.entry("first-second", firstSecond()),
        Map.entry("on-a-climb", onAClimb()),
        Map.entry("before-a-climb", beforeAClimb()),
        Map.entry("before-a-fork", beforeAFork()),
        Map.entry("top-unknown", topUnknown()),
        Map.entry("down-a-steep-hill", downASteepHill()),
        Map.entry("route-without-elevations", routeWithoutElevations()),
        Map.entry("battery-low", calm(new TabletNews.BatteryUnder(20, 19))),
        Map.entry("battery-nearly-empty", calm(new TabletNews.BatteryNearlyEmpty(5))));
  }

  /** What else the header may say of the tablet. */
  static Map<String, DriveSnapshot> notices() {
    return Map.ofEntries(
        Map.entry("charger-unplugged", calm(new TabletNews.OnBattery(63))),
        Map.entry("charger-plugged-in", calm(new TabletNews.Charging(64))),
        Map.entry("may-fall-asleep", calm(new TabletNews.MayFallAsleep("no bus"))),
        Map.entry(
            "clock-back", calm(new TabletNews.ClockSet(CLOCK, CLOCK.minusSeconds(3600), true))),
        Map.entry(
            "clock-forward", calm(new TabletNews.ClockSet(CLOCK, CLOCK.plusSeconds(90), true))),
        Map.entry("slept", calm(new TabletNews.Slept(Duration.ofMinutes(12), true))));
  }

  static DriveSnapshot calm() {
    return snapshot(
        line(
            AdviceLine.State.HOLDS,
            NONE,
            "Holds",
            "Least headroom in the next 3 min: coolant, 24° under its limit.",
            Optional.empty()),
        calmStrips(),
        road(2.4, 86));
  }

  /** The calm moment of a tablet that has news of itself. */
  static DriveSnapshot calm(TabletNews news) {
    DriveSnapshot calm = calm();
    return new DriveSnapshot(
        calm.timeMicros(),
        calm.clock(),
        calm.vehicle(),
        calm.demo(),
        calm.recording(),
        calm.link(),
        calm.advice(),
        calm.adviceSinceMicros(),
        calm.snoozeSeconds(),
        calm.strips(),
        calm.road(),
        calm.diagnosis(),
        Optional.of(news));
  }

  static List<StripState> calmStrips() {
    return List.of(
        Strips.of(Channels.ENGINE_COOLANT_TEMP, 112).from(88).to(88).now(88).build(),
        Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105).from(68).now(77).to(80).build(),
        Strips.of(Channels.ENGINE_OIL_TEMP, 130).from(97).now(97).to(97).build(),
        Strips.of(Channels.TRANSMISSION_FLUID_TEMP, 125).from(88).now(88).to(88).build(),
        Strips.of(Channels.EXHAUST_TEMP_BEFORE_TURBINE, 720).from(480).now(512).to(520).build());
  }

  static DriveSnapshot mayReach() {
    return snapshot(
        line(
            AdviceLine.State.MAY_REACH,
            NONE,
            "Charge air may reach 105°",
            "Rising to 101° in 3 min on this grade, most likely 98° to 104°.",
            Optional.of(Channels.CHARGE_AIR_TEMP_OUT)),
        with(
            Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105)
                .from(82)
                .now(92)
                .to(101)
                .spread(1.6)
                .level(StripLevel.MAY_REACH)
                .build()),
        road(4.1, 90));
  }

  static DriveSnapshot advise(AdviceLine.Response response) {
    return snapshot(
        line(
            AdviceLine.State.ADVISE,
            response,
            "Let speed fall to 80",
            response instanceof AdviceLine.Response.Snoozed
                ? "Comes back by itself, or at once if the forecast gets worse."
                : "Charge air then settles at 97°. At 92 km/h it reaches 105° in 1:08.",
            Optional.of(Channels.CHARGE_AIR_TEMP_OUT)),
        with(hot(StripLevel.ADVISE).build()),
        road(5.0, 92));
  }

  private static Strips hot(StripLevel level) {
    return Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105)
        .from(79)
        .now(96)
        .to(112)
        .reaches(68)
        .eased(97)
        .level(level);
  }

  static DriveSnapshot actNow(AdviceLine.Response response) {
    return snapshot(
        line(
            AdviceLine.State.ACT_NOW,
            response,
            "Let speed fall to 60 now",
            "Coolant is over its limit. It is back under 112° in 0:40 once eased.",
            Optional.of(Channels.ENGINE_COOLANT_TEMP)),
        List.of(
            Strips.of(Channels.ENGINE_COOLANT_TEMP, 112)
                .from(78)
                .now(114)
                .to(113)
                .eased(101)
                .level(StripLevel.ACT_NOW)
                .build(),
            Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105).from(80).now(84).to(86).build(),
            Strips.of(Channels.TRANSMISSION_FLUID_TEMP, 125).from(90).now(92).to(92).build(),
            Strips.of(Channels.ENGINE_OIL_TEMP, 130).from(99).now(101).stale(38).build()),
        road(6.8, 82));
  }

  static DriveSnapshot derated() {
    return snapshot(
        line(
            AdviceLine.State.ADVISE,
            NONE,
            "Let speed fall to 75",
            "The engine is cutting power, 11 % so far. Back under 105° in 0:21 once eased.",
            Optional.of(Channels.CHARGE_AIR_TEMP_OUT)),
        with(
            Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105)
                .from(72)
                .now(108)
                .to(104)
                .eased(90)
                .level(StripLevel.DERATED)
                .build()),
        road(6.8, 82));
  }

  static DriveSnapshot limitedPower() {
    return limitedPower(underboost());
  }

  static DriveSnapshot limitedPower(Diagnosis told) {
    AdviceLine line =
        line(
            AdviceLine.State.LIMITED_POWER,
            NONE,
            "Power limited, P0299",
            "Turbocharger A underboost. Easing will not help: see a workshop.",
            Optional.empty());
    return moment(line, calmStrips(), road(1.0, 70), CONNECTED, told);
  }

  static DriveSnapshot codeStored() {
    AdviceLine line =
        line(
            AdviceLine.State.CODE_STORED,
            NONE,
            "P0299 stored",
            "Turbocharger A underboost. Have a workshop look at it.",
            Optional.empty());
    return moment(line, calmStrips(), road(1.0, 82), CONNECTED, underboost());
  }

  static DriveSnapshot holdsAgain() {
    return snapshot(
        line(
            AdviceLine.State.HOLDS_AGAIN,
            NONE,
            "Holds again",
            "Charge air is back under its limit and settles at 90°. Derated 38 s.",
            Optional.of(Channels.CHARGE_AIR_TEMP_OUT)),
        calmStrips(),
        road(2.0, 74));
  }

  static DriveSnapshot linkLost() {
    return moment(
        line(
            AdviceLine.State.LINK_LOST,
            NONE,
            "No data from vehicle",
            "Last heard 12 s ago. Advice is paused. Trying the port again.",
            Optional.empty()),
        calmStrips().stream().map(strip -> Strips.silent(strip, 12)).toList(),
        unknownRoad(),
        new LinkSummary(LinkSummary.State.LOST, 0, 0, 9, "port closed"));
  }

  static DriveSnapshot learning() {
    return snapshot(
        line(
            AdviceLine.State.LEARNING,
            NONE,
            "Forecast in 2 min",
            "Temperatures and limits are live. A forecast needs 3 minutes of driving.",
            Optional.empty()),
        List.of(
            Strips.of(Channels.ENGINE_COOLANT_TEMP, 112).from(60).now(74).learning().build(),
            Strips.of(Channels.CHARGE_COOLANT_TEMP, 100).from(40).now(44).learning().build(),
            Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105).from(42).now(51).learning().build(),
            Strips.of(Channels.TRANSMISSION_FLUID_TEMP, 125).from(50).now(58).learning().build()),
        road(0.4, 64));
  }

  static DriveSnapshot stale() {
    List<StripState> strips = new ArrayList<>(calmStrips().subList(0, 3));
    strips.add(Strips.of(Channels.TRANSMISSION_FLUID_TEMP, 125).from(88).now(88).stale(38).build());
    return moment(
        calm().advice(),
        strips,
        road(2.4, 86),
        new LinkSummary(LinkSummary.State.CONNECTED, 15, 8, 9, ""));
  }

  static DriveSnapshot firstSecond() {
    return moment(
        line(
            AdviceLine.State.LEARNING,
            NONE,
            "Forecast in 3 min",
            "Waiting for the vehicle.",
            Optional.empty()),
        List.of(),
        unknownRoad(),
        new LinkSummary(LinkSummary.State.SEARCHING, 0, 0, 0, ""));
  }

  private static List<StripState> with(StripState first) {
    return List.of(
        first,
        Strips.of(Channels.ENGINE_COOLANT_TEMP, 112).from(87).now(93).to(103).build(),
        Strips.of(Channels.ENGINE_OIL_TEMP, 130).from(97).now(102).to(113).build(),
        Strips.of(Channels.CHARGE_COOLANT_TEMP, 100).from(58).now(66).to(70).build(),
        Strips.of(Channels.TRANSMISSION_FLUID_TEMP, 125).from(88).now(94).to(105).build());
  }

  static AdviceLine line(
      AdviceLine.State state,
      AdviceLine.Response response,
      String action,
      String reason,
      Optional<Channel> channel) {
    OptionalDouble speed =
        switch (state) {
          case ADVISE -> OptionalDouble.of(80);
          case ACT_NOW -> OptionalDouble.of(60);
          default -> OptionalDouble.empty();
        };
    return new AdviceLine(state, response, action, reason, channel, speed);
  }

  static DriveSnapshot snapshot(AdviceLine line, List<StripState> strips, RoadState road) {
    return moment(line, strips, road, CONNECTED);
  }

  private static DriveSnapshot moment(
      AdviceLine line, List<StripState> strips, RoadState road, LinkSummary link) {
    return moment(line, strips, road, link, Diagnosis.none());
  }

  private static DriveSnapshot moment(
      AdviceLine line,
      List<StripState> strips,
      RoadState road,
      LinkSummary link,
      Diagnosis diagnosis) {
    return new DriveSnapshot(
        NOW,
        CLOCK,
        vehicle(),
        true,
        new RecordingState.Recording("a1"),
        link,
        line,
        NOW - 64_000_000,
        line.state() == AdviceLine.State.ADVISE
                && !(line.response() instanceof AdviceLine.Response.Snoozed)
            ? OptionalDouble.of(180)
            : OptionalDouble.empty(),
        strips,
        road,
        diagnosis,
        Optional.empty());
  }

  /** A stored code with its freeze frame, and one that is only suspected. */
  static Diagnosis underboost() {
    return new Diagnosis(
        new TroubleCodes(
            Set.of(TroubleCodes.Status.STORED, TroubleCodes.Status.PENDING),
            List.of(
                new TroubleCodes.Code(
                    "P0299",
                    Optional.of("turbocharger A underboost"),
                    TroubleCodes.Status.STORED,
                    "7E8",
                    OptionalLong.of(NOW - 60_000_000)),
                new TroubleCodes.Code(
                    "P1234",
                    Optional.empty(),
                    TroubleCodes.Status.PENDING,
                    "7E9",
                    OptionalLong.empty()))),
        List.of(
            new Diagnosis.Frame(
                "7E8",
                "P0299",
                List.of(
                    new Diagnosis.Value("engine coolant temperature", 92, "degC", Optional.empty()),
                    new Diagnosis.Value("engine speed", 2150, "r/min", Optional.empty()),
                    new Diagnosis.Value("fuel type in use", 4, "1", Optional.of("diesel"))))),
        List.of(new Diagnosis.ControlUnit("7E8", "ECM -EngineControl", List.of("CA1-0007"))));
  }

  static Vehicle vehicle() {
    return new Vehicle(
        "Wattle 2",
        CoolingLayout.WATER_TO_AIR,
        Map.of(),
        new Rig(
            OptionalDouble.of(6200),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty()),
        Driveline.unknown(),
        SpeedRange.DEFAULT,
        List.of(),
        List.of());
  }

  private static RoadState road(double grade, double speed) {
    int points = 181;
    long[] times = new long[points];
    double[] heights = new double[points];
    for (int point = points - 2; point >= 0; point--) {
      double share = point / 180.0;
      heights[point] = heights[point + 1] - grade * share / 100 * speed / 3.6;
    }
    for (int point = 0; point < points; point++) {
      times[point] = NOW - (180 - point) * 1_000_000L;
    }
    return new RoadState(
        OptionalDouble.of(speed),
        OptionalDouble.of(grade),
        OptionalDouble.of(129),
        OptionalDouble.of(4),
        OptionalDouble.of(38),
        new Trace(times, heights),
        new RoadAhead.Unknown(),
        Optional.empty());
  }

  /** The same road, and what lies ahead. */
  private static RoadState road(
      double grade, double speed, RoadAhead ahead, Optional<ClimbAhead> climb) {
    RoadState road = road(grade, speed);
    return new RoadState(
        road.speedKilometresPerHour(),
        road.gradePercent(),
        road.wheelPowerKilowatts(),
        road.gear(),
        road.ambientCelsius(),
        road.behind(),
        ahead,
        climb);
  }

  /** Grades in per cent of pieces of 50 m, each for so many pieces. */
  static GradeProfile profile(double... gradesAndPieces) {
    List<Double> grades = new ArrayList<>();
    for (int i = 0; i < gradesAndPieces.length; i += 2) {
      for (int piece = 0; piece < gradesAndPieces[i + 1]; piece++) {
        grades.add(gradesAndPieces[i] / 100);
      }
    }
    double[] errors = new double[grades.size()];
    Arrays.fill(errors, 0.003);
    return new GradeProfile(50, grades.stream().mapToDouble(each -> each).toArray(), errors);
  }

  /** On a known climb that steepens, 5.4 km from its top. */
  static DriveSnapshot onAClimb() {
    return snapshot(
        advise(NONE).advice(),
        with(hot(StripLevel.ADVISE).build()),
        road(
            5.0,
            92,
            new RoadAhead.Known(profile(5, 20, 6.2, 20, 7, 68, -3, 40), List.of()),
            Optional.of(
                new ClimbAhead(profile(2.5, 30, 5, 40, 6.2, 20, 7, 68, 1, 4), -2500, true))));
  }

  /** Before a known climb, on level road. */
  static DriveSnapshot beforeAClimb() {
    return snapshot(
        calm().advice(),
        calmStrips(),
        road(
            0.4,
            86,
            new RoadAhead.Known(
                profile(0.4, 26, 5.8, 90, 0, 10, -4, 40), List.of(), RoadAhead.Origin.ROUTE),
            Optional.of(new ClimbAhead(profile(5.8, 90), 1300, true))));
  }

  /** Down a known road that leads to a fork soon. */
  static DriveSnapshot beforeAFork() {
    return snapshot(
        calm().advice(),
        calmStrips(),
        road(
            -4.2,
            74,
            new RoadAhead.Known(
                profile(-4.2, 10, -2, 26),
                List.of(
                    new RoadAhead.Branch(0.7, profile(5, 60)),
                    new RoadAhead.Branch(0.2, profile(-6, 60)))),
            Optional.empty()));
  }

  /** On a known climb of which nobody knows the top. */
  static DriveSnapshot topUnknown() {
    return snapshot(
        calm().advice(),
        calmStrips(),
        road(
            6.1,
            64,
            new RoadAhead.Known(profile(6, 44), List.of(), RoadAhead.Origin.ROUTE_AND_DRIVEN),
            Optional.of(new ClimbAhead(profile(4, 20, 6, 44), -1000, false))));
  }

  /** On a level road before a known climb that is longer than anybody looks ahead. */
  static DriveSnapshot beforeALongClimb() {
    return snapshot(
        calm().advice(),
        calmStrips(),
        road(
            0.4,
            86,
            new RoadAhead.Known(profile(0.4, 80, 6, 220), List.of()),
            Optional.of(new ClimbAhead(profile(6, 220), 4000, false))));
  }

  /** On a known road that falls at once and is level then. */
  static DriveSnapshot downASteepHill() {
    return snapshot(
        calm().advice(),
        calmStrips(),
        road(-7.5, 60, new RoadAhead.Known(profile(-8, 14, 0, 60), List.of()), Optional.empty()));
  }

  /** Along a route of which nobody knows how steep it is. */
  static DriveSnapshot routeWithoutElevations() {
    return snapshot(
        calm().advice(), calmStrips(), road(2.4, 86, new RoadAhead.Ungraded(), Optional.empty()));
  }

  private static RoadState unknownRoad() {
    return new RoadState(
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        new Trace(new long[0], new double[0]),
        new RoadAhead.Unknown(),
        Optional.empty());
  }
}
