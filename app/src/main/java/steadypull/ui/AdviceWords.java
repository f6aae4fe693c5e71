package steadypull.ui;

import java.time.Duration;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.EnumSet;
import java.util.Set;
import steadypull.advice.AdviceLine;
import steadypull.advice.AdviceLine.Response;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveSnapshot;
import steadypull.ui.AdviceFace.Answer;
import steadypull.ui.AdviceFace.Look;

/** Turns the advice line into its look: each state of the design has one. */
final class AdviceWords {
  private static final double SECONDS_PER_MICRO = 1e-6;
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  private final Words words;
  private final QuantityFormat quantities;
  private final ZoneId zone;

  AdviceWords(Words words, QuantityFormat quantities, ZoneId zone) {
    this.words = words;
    this.quantities = quantities;
    this.zone = zone;
  }

  AdviceFace face(DriveSnapshot snapshot) {
    AdviceLine line = snapshot.advice();
    return new AdviceFace(
        look(line),
        glyph(line),
        line.action(),
        line.reason(),
        note(snapshot),
        buttons(snapshot),
        snooze(snapshot));
  }

  private static Look look(AdviceLine line) {
    return switch (line.state()) {
      case HOLDS, MAY_REACH, HOLDS_AGAIN, LEARNING, CODE_STORED -> Look.QUIET;
      case ADVISE ->
          switch (line.response()) {
            case Response.None _ -> Look.AMBER_FILL;
            case Response.Acknowledged _ -> Look.AMBER_FRAME;
            case Response.Snoozed _ -> Look.DASHED;
          };
      case ACT_NOW ->
          switch (line.response()) {
            case Response.None _, Response.Snoozed _ -> Look.RED_FILL;
            case Response.Acknowledged _ -> Look.RED_FRAME;
          };
      case LIMITED_POWER -> Look.RED_FRAME;
      case LINK_LOST -> Look.AMBER_FRAME;
    };
  }

  private static Glyph glyph(AdviceLine line) {
    return switch (line.state()) {
      case HOLDS, HOLDS_AGAIN -> Glyph.HOLDS;
      case MAY_REACH -> Glyph.MAY_REACH;
      case ADVISE -> Glyph.CAUTION;
      case ACT_NOW, LIMITED_POWER -> Glyph.DANGER;
      case CODE_STORED -> Glyph.CAUTION_BLOCK;
      case LINK_LOST -> Glyph.NO_DATA;
      case LEARNING -> Glyph.UNKNOWN;
    };
  }

  /** A button that would do nothing is not offered. */
  private static Set<Answer> buttons(DriveSnapshot snapshot) {
    Set<Answer> buttons = EnumSet.noneOf(Answer.class);
    buttons.addAll(buttons(snapshot.advice()));
    if (snapshot.snoozeSeconds().isEmpty()) {
      buttons.remove(Answer.SNOOZE);
    }
    return buttons;
  }

  private String snooze(DriveSnapshot snapshot) {
    if (snapshot.snoozeSeconds().isEmpty()) {
      return "";
    }
    Duration length = Duration.ofSeconds(Math.round(snapshot.snoozeSeconds().getAsDouble()));
    return length.toSecondsPart() == 0
        ? words.say("advice.snoozeMinutes", Long.toString(length.toMinutes()))
        : quantities.countdown((double) length.toSeconds());
  }

  private static Set<Answer> buttons(AdviceLine line) {
    return switch (line.state()) {
      case HOLDS, MAY_REACH, HOLDS_AGAIN, LEARNING, LINK_LOST, CODE_STORED -> Set.of();
      case ADVISE ->
          switch (line.response()) {
            case Response.None _ -> Set.of(Answer.GOT_IT, Answer.SNOOZE);
            case Response.Acknowledged _ -> Set.of(Answer.SNOOZE);
            case Response.Snoozed _ -> Set.of(Answer.SHOW);
          };
      case ACT_NOW, LIMITED_POWER ->
          line.response() instanceof Response.Acknowledged ? Set.of() : Set.of(Answer.GOT_IT);
    };
  }

  private String note(DriveSnapshot snapshot) {
    return switch (snapshot.advice().response()) {
      case Response.Acknowledged done ->
          words.say("advice.gotItAt", clock(snapshot, done.timeMicros()));
      case Response.Snoozed until when snapshot.advice().state() == AdviceLine.State.ADVISE ->
          words.say("advice.snoozedFor", left(snapshot, until.untilMicros()));
      case Response.Snoozed _, Response.None _ -> stateNote(snapshot);
    };
  }

  private String stateNote(DriveSnapshot snapshot) {
    return switch (snapshot.advice().state()) {
      case LINK_LOST -> words.say("advice.linkLost");
      case LEARNING -> words.say("advice.learning");
      case LIMITED_POWER ->
          snapshot.diagnosis().codes().stored().isEmpty() ? "" : words.say("advice.limitedPower");
      case CODE_STORED -> words.say("advice.limitedPower");
      case HOLDS_AGAIN -> words.say("advice.since", clock(snapshot, snapshot.adviceSinceMicros()));
      case HOLDS, MAY_REACH, ADVISE, ACT_NOW -> "";
    };
  }

  private String clock(DriveSnapshot snapshot, long timeMicros) {
    Duration ago = Duration.of(snapshot.timeMicros() - timeMicros, ChronoUnit.MICROS);
    return CLOCK.format(snapshot.clock().minus(ago).atZone(zone));
  }

  private String left(DriveSnapshot snapshot, long untilMicros) {
    return quantities.countdown((untilMicros - snapshot.timeMicros()) * SECONDS_PER_MICRO);
  }
}
