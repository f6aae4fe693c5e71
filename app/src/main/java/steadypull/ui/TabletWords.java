package steadypull.ui;

import java.time.Duration;
import java.util.Optional;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveSnapshot;
import steadypull.tablet.TabletNews;

/** What the header says of the tablet itself. */
final class TabletWords {
  /** A battery under this is worth a colour when its charger goes. */
  private static final int LOW_PERCENT = 20;

  private final Words words;
  private final QuantityFormat quantities;

  TabletWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
  }

  /** The notice of a moment; mostly none. */
  Optional<String> notice(DriveSnapshot snapshot) {
    return snapshot.tablet().map(this::say);
  }

  private String say(TabletNews news) {
    return switch (news) {
      case TabletNews.OnBattery(int percent) ->
          words.say("tablet.onBattery", quantities.whole(percent));
      case TabletNews.BatteryUnder(int under, int _) ->
          words.say("tablet.batteryUnder", quantities.whole(under));
      case TabletNews.BatteryNearlyEmpty _ -> words.say("tablet.batteryNearlyEmpty");
      case TabletNews.Charging _ -> words.say("tablet.charging");
      case TabletNews.MayFallAsleep _ -> words.say("tablet.mayFallAsleep");
      case TabletNews.ClockSet set ->
          words.say(
              set.by().isNegative() ? "tablet.clockBack" : "tablet.clockForward",
              elapsed(set.by().abs()));
      case TabletNews.Slept(Duration length, boolean _) ->
          words.say("tablet.slept", elapsed(length));
    };
  }

  private String elapsed(Duration length) {
    return quantities.elapsed(length.toSeconds());
  }

  /** How loud it is; red is kept for what breaks in the vehicle. */
  static Tone tone(DriveSnapshot snapshot) {
    return snapshot.tablet().map(TabletWords::tone).orElse(Tone.NEUTRAL);
  }

  private static Tone tone(TabletNews news) {
    return switch (news) {
      case TabletNews.BatteryNearlyEmpty _, TabletNews.BatteryUnder _, TabletNews.Slept _ ->
          Tone.CAUTION;
      case TabletNews.OnBattery(int percent) -> percent < LOW_PERCENT ? Tone.CAUTION : Tone.NEUTRAL;
      case TabletNews.Charging _, TabletNews.MayFallAsleep _, TabletNews.ClockSet _ -> Tone.NEUTRAL;
    };
  }
}
