package steadypull.ui;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.LinkSummary;
import steadypull.drive.RecordingState;
import steadypull.vehicle.TroubleCodes;

/** Words for the header line. */
final class HeaderWords {
  private static final int BARS = 5;
  private static final long ASSUMPTION_TOLD_MICROS = 60_000_000;
  private static final long MICROS_PER_SECOND = 1_000_000;
  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm");

  private final Words words;
  private final QuantityFormat quantities;
  private final ZoneId zone;
  private final TabletWords tablet;

  HeaderWords(Words words, QuantityFormat quantities, ZoneId zone) {
    this.words = words;
    this.quantities = quantities;
    this.zone = zone;
    this.tablet = new TabletWords(words, quantities);
  }

  HeaderFace face(DriveSnapshot snapshot) {
    return new HeaderFace(
        snapshot.vehicle().name(),
        tablet.notice(snapshot).orElseGet(() -> note(snapshot)),
        TabletWords.tone(snapshot),
        recording(snapshot),
        snapshot.recording() instanceof RecordingState.Failed ? Tone.DANGER : Tone.NEUTRAL,
        link(snapshot.link()),
        isWell(snapshot.link()) ? Tone.NEUTRAL : Tone.CAUTION,
        shortBars(snapshot.link()),
        CLOCK.format(snapshot.clock().atZone(zone)));
  }

  private String note(DriveSnapshot snapshot) {
    var mass = snapshot.vehicle().rig().massKilograms();
    String load =
        mass.isPresent() ? words.say("header.mass", quantities.mass(mass.getAsDouble())) : "";
    String aside = isAssumptionTold(snapshot) ? words.say("header.placesAssumed") : load;
    String simulated = snapshot.demo() ? words.say("header.simulated") : "";
    String codes = codes(snapshot);
    // There is room for two: a stored code is worth more than a mass that the driver knows.
    return Stream.of(codes.isEmpty() ? aside : "", simulated, codes)
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining(", "));
  }

  /** The stored code that came up last, and how many more; empty if none is known. */
  private String codes(DriveSnapshot snapshot) {
    List<TroubleCodes.Code> stored = snapshot.diagnosis().codes().stored();
    return switch (stored.size()) {
      case 0 -> "";
      case 1 -> words.say("header.code", stored.getFirst().text());
      default ->
          words.say(
              "header.codes", stored.getFirst().text(), quantities.whole(stored.size() - 1.0));
    };
  }

  /** Told once, at the beginning; the menu has more. */
  private static boolean isAssumptionTold(DriveSnapshot snapshot) {
    return !snapshot.demo()
        && snapshot.timeMicros() < ASSUMPTION_TOLD_MICROS
        && !snapshot.assumedPlaces().isEmpty();
  }

  private String recording(DriveSnapshot snapshot) {
    String elapsed = quantities.elapsed(snapshot.timeMicros() / MICROS_PER_SECOND);
    return switch (snapshot.recording()) {
      case RecordingState.Recording _ -> words.say("header.recording", elapsed);
      case RecordingState.Failed _ -> words.say("header.recordingFailed");
      case RecordingState.Waiting _ -> words.say("header.waiting");
      case RecordingState.Off _ -> words.say("header.replay", elapsed);
    };
  }

  private String link(LinkSummary link) {
    return switch (link.state()) {
      case OPENING -> words.say("link.opening");
      case SEARCHING -> words.say("link.searching");
      case CONNECTED -> connected(link);
      case VEHICLE_SILENT -> words.say("link.vehicleSilent");
      case BUS_FAULT -> words.say("link.busFault");
      case BUS_BUSY -> words.say("link.busBusy");
      case ADAPTER_FAULT -> words.say("link.adapterFault");
      case ENGINE_OFF -> words.say("link.engineOff");
      case LOST -> words.say("link.lost");
      case CLOSED -> words.say("link.closed");
    };
  }

  private String connected(LinkSummary link) {
    String rate = quantities.whole(link.samplesPerSecond());
    String fresh = quantities.whole(link.freshChannels());
    String expected = quantities.whole(link.expectedChannels());
    return stale(link) == 0
        ? words.say("link.connected", rate, fresh, expected)
        : words.say("link.someStale", rate, quantities.whole(stale(link)));
  }

  private static boolean isWell(LinkSummary link) {
    return link.state() == LinkSummary.State.CONNECTED && stale(link) == 0;
  }

  private static int stale(LinkSummary link) {
    return Math.max(0, link.expectedChannels() - link.freshChannels());
  }

  private static int shortBars(LinkSummary link) {
    if (link.state() != LinkSummary.State.CONNECTED) {
      return BARS;
    }
    if (stale(link) == 0) {
      return 0;
    }
    return Math.max(1, Math.round(BARS * (float) stale(link) / link.expectedChannels()));
  }
}
