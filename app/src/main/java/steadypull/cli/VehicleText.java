package steadypull.cli;

import java.util.Locale;
import java.util.OptionalDouble;
import steadypull.channel.Channels;
import steadypull.road.StandardAtmosphere;
import steadypull.vehicle.Limit;
import steadypull.vehicle.PressureCap;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Rig;
import steadypull.vehicle.SignalSource;
import steadypull.vehicle.TyreSize;
import steadypull.vehicle.Vehicle;

/** A vehicle as lines of text. */
final class VehicleText {
  private VehicleText() {}

  static String of(Vehicle vehicle) {
    StringBuilder text = new StringBuilder();
    text.append(vehicle.name()).append(", charge air cooled ").append(vehicle.layout().word());
    text.append(
        String.format(
            Locale.ROOT,
            "%nadvisable speeds %.0f to %.0f km/h%n",
            vehicle.speeds().lowestKilometresPerHour(),
            vehicle.speeds().highestKilometresPerHour()));
    describe(vehicle.rig(), text);
    vehicle.driveline().tyreSize().ifPresent(size -> describe(size, text));
    vehicle.limits().values().forEach(limit -> describe(limit, text));
    vehicle.limit(Channels.ENGINE_COOLANT_TEMP).ifPresent(entered -> describe(vehicle, text));
    vehicle.sources().forEach(source -> describe(source, text));
    text.append(HeatText.of(vehicle));
    return text.toString();
  }

  private static void describe(Rig rig, StringBuilder text) {
    line(text, "mass", rig.massKilograms(), "kg");
    line(text, "trailer mass", rig.trailerMassKilograms(), "kg");
    line(text, "drag area", rig.dragAreaSquareMetres(), "m2");
    line(text, "rolling resistance", rig.rollingResistance(), "");
    line(text, "tyre radius", rig.tyreRadiusMetres(), "m");
  }

  private static void describe(TyreSize size, StringBuilder text) {
    text.append(
        String.format(
            Locale.ROOT,
            "tyre size %s: free diameter %.0f mm, rolls at %.4f m; makers differ by %.1f %%%n",
            size.designation(),
            size.freeDiameterMetres() * 1000,
            size.rollingRadiusMetres(),
            size.spread() * 100));
  }

  private static void describe(SignalSource source, StringBuilder text) {
    text.append(
        String.format(Locale.ROOT, "sensor %-27s %s%n", source.channelId(), source.signalKey()));
  }

  private static void line(StringBuilder text, String name, OptionalDouble value, String unit) {
    value.ifPresent(
        known ->
            text.append("%s %s %s".formatted(name, Double.toString(known), unit).strip())
                .append('\n'));
  }

  private static String note(Provenance provenance) {
    boolean isTold = provenance.kind() == Provenance.Kind.DEFAULT || provenance.note().isEmpty();
    return isTold ? "" : ": " + provenance.note();
  }

  /** What the cap makes of the limit for engine coolant, low and high. */
  private static void describe(Vehicle vehicle, StringBuilder text) {
    PressureCap cap = vehicle.cap();
    text.append(
        String.format(
            Locale.ROOT,
            "coolant cap %s bar %s%s%n",
            Double.toString(cap.bar()),
            source(cap.provenance()),
            note(cap.provenance())));
    for (int metres : new int[] {0, 2000}) {
      double kilopascals = StandardAtmosphere.kilopascals(metres);
      text.append(
          String.format(
              Locale.ROOT,
              "    at %4d m coolant boils at %.0f degC: %.0f counts%n",
              metres,
              cap.boilingCelsius(kilopascals),
              vehicle.limit(Channels.ENGINE_COOLANT_TEMP, kilopascals).orElseThrow().celsius()));
    }
  }

  private static String source(Provenance provenance) {
    return provenance.kind() == Provenance.Kind.DEFAULT
        ? "cautious default, not confirmed by anyone"
        : provenance.kind().word();
  }

  private static void describe(Limit limit, StringBuilder text) {
    Provenance provenance = limit.provenance();
    text.append(
        String.format(
            Locale.ROOT,
            "limit %-28s %6.1f degC  %s%s%n",
            limit.channel().id(),
            limit.celsius(),
            source(provenance),
            note(provenance)));
  }
}
