package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.advice.AdviceLine;
import steadypull.advice.AdviceLine.Response;
import steadypull.advice.AdviceLine.State;
import steadypull.channel.Channels;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.Diagnosis;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.StripState;
import steadypull.drive.StripState.StripLevel;
import steadypull.tablet.TabletNews;
import steadypull.ui.AdviceFace.Answer;
import steadypull.vehicle.TroubleCodes;

/** What the screen says about a moment. */
class DriveWordsTest {
  private final Words words = new Words(Locale.ENGLISH);
  private final QuantityFormat metric = new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC);

  private StripFace strip(Strips strip, DriveSnapshot moment) {
    return new StripWords(words, metric).face(strip.build(), moment);
  }

  private StripFace calm(double now, double to) {
    return strip(
        Strips.of(Channels.ENGINE_COOLANT_TEMP, 112).from(now).now(now).to(to), Moments.calm());
  }

  private AdviceFace advice(State state, Response response) {
    AdviceLine line = Moments.line(state, response, "action", "reason", Optional.empty());
    DriveSnapshot calm = Moments.calm();
    return new AdviceWords(words, metric, ZoneOffset.UTC)
        .face(Moments.snapshot(line, calm.strips(), calm.road()));
  }

  @Test
  void headroomIsSaidWithoutAMinus() {
    assertThat(calm(88, 88).more()).isEqualTo("24° under");
    assertThat(calm(115, 115).more()).isEqualTo("3° over");
  }

  @Test
  void courseSaysWhereItSettles() {
    assertThat(calm(88, 90).detail()).isEqualTo("settles at 90°");
  }

  @Test
  void leadingStripCountsDownWithItsLikelyRange() {
    StripFace face =
        strip(
            Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105)
                .from(80)
                .now(96)
                .to(112)
                .reaches(68)
                .eased(97)
                .level(StripLevel.ADVISE),
            Moments.advise(new Response.None()));
    assertThat(face.title()).isEqualTo("Reaches 105° in");
    assertThat(face.hero()).isEqualTo("1:08");
    assertThat(face.detail()).isEqualTo("most likely 0:58 to 1:23");
    assertThat(face.eased()).isEqualTo("at 80 km/h: 97°");
    assertThat(face.tone()).isEqualTo(Tone.CAUTION);
  }

  @Test
  void lessThanFiveSecondsIsNow() {
    StripFace face =
        strip(
            Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105)
                .from(80)
                .now(104)
                .to(112)
                .reaches(4)
                .level(StripLevel.ADVISE),
            Moments.calm());
    assertThat(face.hero()).isEqualTo("now");
  }

  @Test
  void overTheLimitSaysHowFarAndWhenEasingBringsItBack() {
    StripFace face =
        strip(
            Strips.of(Channels.ENGINE_COOLANT_TEMP, 112)
                .from(90)
                .now(114)
                .to(113)
                .eased(101)
                .level(StripLevel.ACT_NOW),
            Moments.actNow(new Response.None()));
    assertThat(face.title()).isEqualTo("Over 112° by");
    assertThat(face.hero()).isEqualTo("2°");
    assertThat(face.detail()).startsWith("eased: under 112° in ");
    assertThat(face.tone()).isEqualTo(Tone.DANGER);
  }

  // A derate on a channel that only costs power is amber; red is for what breaks.
  @Test
  void derateIsRedOnlyWhereTheAdviceIsUrgentAboutThatChannel() {
    Strips strip =
        Strips.of(Channels.CHARGE_AIR_TEMP_OUT, 105)
            .from(80)
            .now(107)
            .to(107)
            .level(StripLevel.DERATED);
    assertThat(strip(strip, Moments.derated()).tone()).isEqualTo(Tone.CAUTION);
    assertThat(strip(strip, Moments.actNow(new Response.None())).tone()).isEqualTo(Tone.CAUTION);
    Strips coolant =
        Strips.of(Channels.ENGINE_COOLANT_TEMP, 112)
            .from(80)
            .now(113)
            .to(113)
            .level(StripLevel.DERATED);
    assertThat(strip(coolant, Moments.actNow(new Response.None())).tone()).isEqualTo(Tone.DANGER);
  }

  @Test
  void staleStripSaysWhenItWasHeardAndShowsNoForecast() {
    StripFace face =
        strip(Strips.of(Channels.ENGINE_OIL_TEMP, 130).from(99).now(101).stale(38), Moments.calm());
    assertThat(face.stale()).isTrue();
    assertThat(face.word()).isEqualTo("No data");
    assertThat(face.detail()).isEqualTo("last heard 38 s ago");
    assertThat(face.note()).isEqualTo("no forecast without data");
    assertThat(face.trend()).isEmpty();
  }

  @Test
  void theRoadStripSaysFromWhereItKnows() {
    assertThat(road(Moments.beforeAClimb()).origin()).isEqualTo("route");
    assertThat(road(Moments.topUnknown()).origin()).isEqualTo("route, driven");
    assertThat(road(Moments.onAClimb()).origin()).isEqualTo("driven before");
    assertThat(road(Moments.beforeAClimb()).spoken()).endsWith("top in 5.8 km, 4:03, route");
    assertThat(road(Moments.calm()).origin()).isEmpty();
  }

  @Test
  void ofAClimbWhoseTopIsNotKnownItsOwnLengthIsTold() {
    DriveSnapshot moment = Moments.beforeALongClimb();
    assertThat(road(moment).place()).isEqualTo("Climb of 6 % in 4.0 km");
    assertThat(road(moment).ahead()).isEqualTo("for 11.0 km and more");
    assertThat(road(Moments.topUnknown()).ahead()).isEqualTo("for 2.2 km and more");
  }

  @Test
  void aRouteOfWhichNobodyKnowsTheGradesIsNoUnknownRoad() {
    RoadFace face = road(Moments.routeWithoutElevations());
    assertThat(face.place()).isEqualTo("Route without elevations");
    assertThat(face.ahead()).isEqualTo("holding this grade");
    assertThat(face.origin()).isEmpty();
    assertThat(road(Moments.calm()).place()).isEqualTo("Road ahead not known");
  }

  private RoadFace road(DriveSnapshot moment) {
    return new RoadWords(words, metric).face(moment);
  }

  @Test
  void channelNeverHeardSaysSo() {
    StripState heard = Strips.of(Channels.ENGINE_OIL_TEMP, 130).from(99).now(101).stale(38).build();
    StripState never =
        new StripState(
            heard.channel(),
            heard.limit(),
            OptionalDouble.empty(),
            Double.POSITIVE_INFINITY,
            OptionalDouble.empty(),
            heard.trace(),
            heard.forecast(),
            Optional.empty(),
            StripLevel.NO_DATA,
            OptionalDouble.empty());
    StripFace face = new StripWords(words, metric).face(never, Moments.calm());
    assertThat(face.value()).isEqualTo(RoadFace.UNKNOWN);
    assertThat(face.detail()).isEqualTo("not heard yet");
    assertThat(face.spoken()).isEqualTo("Engine oil unknown, No data. not heard yet");
  }

  @ParameterizedTest
  @CsvSource({
    "HOLDS, QUIET, HOLDS",
    "MAY_REACH, QUIET, MAY_REACH",
    "ADVISE, AMBER_FILL, CAUTION",
    "ACT_NOW, RED_FILL, DANGER",
    "LIMITED_POWER, RED_FRAME, DANGER",
    "CODE_STORED, QUIET, CAUTION_BLOCK",
    "HOLDS_AGAIN, QUIET, HOLDS",
    "LINK_LOST, AMBER_FRAME, NO_DATA",
    "LEARNING, QUIET, UNKNOWN"
  })
  void everyStateHasItsLookAndGlyph(State state, AdviceFace.Look look, Glyph glyph) {
    AdviceFace face = advice(state, new Response.None());
    assertThat(face.look()).isEqualTo(look);
    assertThat(face.glyph()).isEqualTo(glyph);
  }

  @Test
  void answersChangeLookNoteAndButtons() {
    AdviceFace acknowledged =
        advice(State.ADVISE, new Response.Acknowledged(Moments.NOW - 72_000_000));
    assertThat(acknowledged.look()).isEqualTo(AdviceFace.Look.AMBER_FRAME);
    assertThat(acknowledged.note()).isEqualTo("Got it at 14:46");
    assertThat(acknowledged.buttons()).containsExactly(AdviceFace.Answer.SNOOZE);

    AdviceFace snoozed = advice(State.ADVISE, new Response.Snoozed(Moments.NOW + 160_000_000));
    assertThat(snoozed.look()).isEqualTo(AdviceFace.Look.DASHED);
    assertThat(snoozed.note()).isEqualTo("Snoozed, 2:40 left");
    assertThat(snoozed.buttons()).containsExactly(AdviceFace.Answer.SHOW);

    AdviceFace urgent = advice(State.ACT_NOW, new Response.Acknowledged(Moments.NOW));
    assertThat(urgent.look()).isEqualTo(AdviceFace.Look.RED_FRAME);
    assertThat(urgent.buttons()).isEmpty();
  }

  // Act now cannot be put aside, whatever a caller says.
  // A button that would do nothing must not be pressed in vain.
  @Test
  void snoozeIsOfferedOnlyWhereItCanBeAndSaysForHowLong() {
    AdviceWords advices = new AdviceWords(words, metric, ZoneOffset.UTC);
    DriveSnapshot advised = Moments.advise(new Response.None());
    assertThat(advices.face(advised).snooze()).isEqualTo("3 min");
    AdviceFace half = advices.face(withSnooze(advised, OptionalDouble.of(52)));
    assertThat(half.snooze()).isEqualTo("0:52");
    assertThat(half.buttons()).containsExactlyInAnyOrder(Answer.GOT_IT, Answer.SNOOZE);
    AdviceFace none = advices.face(withSnooze(advised, OptionalDouble.empty()));
    assertThat(none.buttons()).containsExactly(Answer.GOT_IT);
  }

  @Test
  void holdingAgainSaysSinceWhen() {
    assertThat(new AdviceWords(words, metric, ZoneOffset.UTC).face(Moments.holdsAgain()).note())
        .isEqualTo("since 14:46");
  }

  /** Power can be limited without anybody knowing a code. */
  @Test
  void aFaultIsSaidToBeStoredOnlyWhereACodeIsKnown() {
    AdviceWords advice = new AdviceWords(words, metric, ZoneOffset.UTC);
    assertThat(advice.face(Moments.limitedPower()).note()).isEqualTo("Fault stored");
    assertThat(advice.face(Moments.limitedPower(Diagnosis.none())).note()).isEmpty();
  }

  @Test
  void thePageOfCodesSaysWhatWhoSinceWhenAndWhatNext() {
    assertThat(new CodePageWords(words).paragraphs(Moments.underboost()))
        .containsExactly(
            "P0299, turbocharger A underboost: stored, control unit 7E8 ECM -EngineControl."
                + " It came up on this drive.",
            "P1234: seen, not confirmed yet, control unit 7E9.",
            "Measured when P0299 was stored, control unit 7E8: engine coolant temperature 92 °C,"
                + " engine speed 2150 r/min, fuel type in use diesel.",
            words.say("codes.workshop"));
  }

  @Test
  void noCodesAndNoAnswerAreNotTheSame() {
    CodePageWords page = new CodePageWords(words);
    Diagnosis noCodes =
        new Diagnosis(
            new TroubleCodes(Set.of(TroubleCodes.Status.STORED), List.of()), List.of(), List.of());
    assertThat(page.paragraphs(noCodes)).startsWith("No code is stored.");
    assertThat(page.paragraphs(Diagnosis.none()))
        .startsWith("The vehicle has not told which codes are stored.");
  }

  private static DriveSnapshot withSnooze(DriveSnapshot moment, OptionalDouble seconds) {
    return new DriveSnapshot(
        moment.timeMicros(),
        moment.clock(),
        moment.vehicle(),
        moment.demo(),
        moment.recording(),
        moment.link(),
        moment.advice(),
        moment.adviceSinceMicros(),
        seconds,
        moment.strips(),
        moment.road(),
        moment.diagnosis(),
        moment.tablet());
  }

  @Test
  void actNowStaysRedThoughSnoozed() {
    AdviceFace face = advice(State.ACT_NOW, new Response.Snoozed(Moments.NOW + 9_000_000));
    assertThat(face.look()).isEqualTo(AdviceFace.Look.RED_FILL);
    assertThat(face.note()).isEmpty();
  }

  @Test
  void headerNamesStaleChannelsAndShortensTheirBars() {
    HeaderWords header = new HeaderWords(words, metric, ZoneOffset.UTC);
    assertThat(header.face(Moments.calm()).link()).isEqualTo("Link 18 samples/s, 9 of 9 fresh");
    assertThat(header.face(Moments.calm()).note()).isEqualTo("6.2 t in all, simulated vehicle");
    assertThat(header.face(Moments.codeStored()).note()).isEqualTo("simulated vehicle, code P0299");
    HeaderFace stale = header.face(Moments.stale());
    assertThat(stale.link()).isEqualTo("Link 15 samples/s, 1 stale");
    assertThat(stale.linkTone()).isEqualTo(Tone.CAUTION);
    assertThat(stale.shortBars()).isEqualTo(1);
    assertThat(header.face(Moments.linkLost()).shortBars()).isEqualTo(5);
  }

  /** The tablet's own life comes before a mass that the driver knows, as loud as it is pressing. */
  @Test
  void headerTellsOfTheTabletAsLoudAsItIs() {
    assertThat(header(new TabletNews.OnBattery(63)))
        .extracting(HeaderFace::note, HeaderFace::noteTone)
        .containsExactly("Charger unplugged, battery 63 %", Tone.NEUTRAL);
    assertThat(header(new TabletNews.OnBattery(12)).noteTone()).isEqualTo(Tone.CAUTION);
    assertThat(header(new TabletNews.BatteryUnder(20, 18)))
        .extracting(HeaderFace::note, HeaderFace::noteTone)
        .containsExactly("Battery under 20 %: plug in the charger", Tone.CAUTION);
    assertThat(header(new TabletNews.BatteryNearlyEmpty(5)))
        .extracting(HeaderFace::note, HeaderFace::noteTone)
        .containsExactly("Battery nearly empty, trip kept: charge", Tone.CAUTION);
    Instant clock = Moments.CLOCK;
    assertThat(header(new TabletNews.ClockSet(clock, clock.minusSeconds(3600), false)).note())
        .isEqualTo("Tablet clock set back by 1:00:00");
    assertThat(header(new TabletNews.ClockSet(clock, clock.plusSeconds(90), false)).note())
        .isEqualTo("Tablet clock set forward by 0:01:30");
    assertThat(header(new TabletNews.Slept(Duration.ofMinutes(12), true)).note())
        .isEqualTo("Tablet slept for 0:12:00");
  }

  private HeaderFace header(TabletNews news) {
    return new HeaderWords(words, metric, ZoneOffset.UTC).face(Moments.calm(news));
  }

  @Test
  void germanHasEveryEnglishText() {
    var none =
        java.util.ResourceBundle.Control.getNoFallbackControl(
            java.util.ResourceBundle.Control.FORMAT_PROPERTIES);
    var english = java.util.ResourceBundle.getBundle("steadypull.ui.Words", Locale.ROOT, none);
    var german = java.util.ResourceBundle.getBundle("steadypull.ui.Words", Locale.GERMAN, none);
    assertThat(List.copyOf(english.keySet()))
        .filteredOn(key -> !key.equals("window.title"))
        .allSatisfy(key -> assertThat(german.containsKey(key)).as(key).isTrue());
    assertThat(german.getLocale()).isEqualTo(Locale.GERMAN);
  }
}
