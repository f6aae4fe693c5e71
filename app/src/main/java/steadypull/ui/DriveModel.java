package steadypull.ui;

import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import steadypull.advice.AdviceLine;
import steadypull.channel.QuantityFormat;
import steadypull.drive.Diagnosis;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.StripState;

/** What the Drive screen shows, made from snapshots. FX thread only. */
final class DriveModel {
  private final Words words;
  private final ZoneId zone;
  private final LongSupplier nanoTime;
  private final StripOrder order = new StripOrder();
  private final ReadOnlyObjectWrapper<Optional<HeaderFace>> header = absent();
  private final ReadOnlyObjectWrapper<Optional<AdviceFace>> advice = absent();
  private final ReadOnlyObjectWrapper<Optional<StripsFace>> strips = absent();
  private final ReadOnlyObjectWrapper<Optional<RoadFace>> road = absent();

  private QuantityFormat quantities;
  private @Nullable DriveSnapshot latest;

  DriveModel(Words words, QuantityFormat quantities, ZoneId zone, LongSupplier nanoTime) {
    this.words = words;
    this.quantities = quantities;
    this.zone = zone;
    this.nanoTime = nanoTime;
  }

  private static <T> ReadOnlyObjectWrapper<Optional<T>> absent() {
    return new ReadOnlyObjectWrapper<>(Optional.empty());
  }

  ReadOnlyObjectProperty<Optional<HeaderFace>> headerProperty() {
    return header.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Optional<AdviceFace>> adviceProperty() {
    return advice.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Optional<StripsFace>> stripsProperty() {
    return strips.getReadOnlyProperty();
  }

  ReadOnlyObjectProperty<Optional<RoadFace>> roadProperty() {
    return road.getReadOnlyProperty();
  }

  /** State of the advice line shown at present; empty before the first snapshot. */
  Optional<AdviceLine.State> adviceState() {
    return Optional.ofNullable(latest).map(snapshot -> snapshot.advice().state());
  }

  /** Name of the vehicle that is driven; empty before the first snapshot. */
  Optional<String> vehicleName() {
    return Optional.ofNullable(latest).map(snapshot -> snapshot.vehicle().name());
  }

  /** What control units told so far. */
  Diagnosis diagnosis() {
    return Optional.ofNullable(latest).map(DriveSnapshot::diagnosis).orElseGet(Diagnosis::none);
  }

  /** Takes the newest snapshot. */
  void show(DriveSnapshot snapshot) {
    latest = snapshot;
    header.set(Optional.of(new HeaderWords(words, quantities, zone).face(snapshot)));
    advice.set(Optional.of(new AdviceWords(words, quantities, zone).face(snapshot)));
    road.set(Optional.of(new RoadWords(words, quantities).face(snapshot)));
    strips.set(Optional.of(strips(snapshot)));
  }

  /** Changes the units; what is shown is worded again. */
  void setQuantities(QuantityFormat changed) {
    quantities = changed;
    if (latest != null) {
      show(latest);
    }
  }

  private StripsFace strips(DriveSnapshot snapshot) {
    List<StripState> arranged =
        order.arrange(snapshot.strips(), snapshot.advice().channel(), nanoTime.getAsLong());
    StripWords stripWords = new StripWords(words, quantities);
    return new StripsFace(
        snapshot.timeMicros(),
        arranged.stream()
            .limit(StripsFace.SHOWN)
            .map(strip -> stripWords.face(strip, snapshot))
            .toList(),
        StripOrder.leads(arranged),
        others(arranged));
  }

  private String others(List<StripState> arranged) {
    return arranged.stream()
        .skip(StripsFace.SHOWN)
        .map(strip -> words.say("others.each", words.name(strip.channel()), value(strip)))
        .collect(Collectors.joining("   "));
  }

  private String value(StripState strip) {
    return strip.latestCelsius().isPresent()
        ? quantities.temperature(strip.latestCelsius().getAsDouble())
        : RoadFace.UNKNOWN;
  }
}
