package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.WholeTrip;
import steadypull.store.LinkIdentity;
import steadypull.store.TripDetails;
import steadypull.store.TripSummary;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;

/** What is typed of a trip is understood as it was meant, or refused by itself. */
class TripSaidReaderTest {
  private static final TripDetails SAID =
      new TripDetails(
          "after", "One.\nTwo.", List.of("hot, dry", "ramp"), "", "", OptionalDouble.of(34.56));
  private static final Rig RIG =
      Rig.unknown().withMasses(OptionalDouble.of(7801.25), OptionalDouble.of(3200.5));

  private final Words words = new Words(Locale.ENGLISH);
  private final QuantityFormat metric = new QuantityFormat(Locale.ENGLISH, UnitSystem.METRIC);
  private final QuantityFormat imperial = new QuantityFormat(Locale.ENGLISH, UnitSystem.IMPERIAL);

  private static WholeTrip trip() {
    TripSummary summary =
        new TripSummary(
            "20260117T020200Z-abcd",
            "own",
            "Wattle 2",
            Instant.EPOCH,
            Optional.empty(),
            60,
            OptionalDouble.empty(),
            0,
            List.of(),
            List.of(),
            true,
            SAID,
            "x",
            LinkIdentity.UNKNOWN,
            "1");
    Vehicle vehicle = Vehicle.unknown("Wattle 2", CoolingLayout.AIR_TO_AIR).withRig(RIG);
    return new WholeTrip(summary, vehicle, List.of());
  }

  private TripSaidReader.Reading read(QuantityFormat quantities, TripSaid typed) {
    return TripSaidReader.read(trip(), TripSaid.of(trip(), quantities), typed, words, quantities);
  }

  private static TripSaid weighing(TripSaid said, String mass, String trailer) {
    return new TripSaid(
        said.label(),
        said.note(),
        said.tags(),
        said.fitted(),
        said.outside(),
        said.outsideTemperature(),
        mass,
        trailer);
  }

  private static TripSaid readOutside(TripSaid said, String label, String temperature) {
    return new TripSaid(
        label,
        said.note(),
        said.tags(),
        said.fitted(),
        said.outside(),
        temperature,
        said.mass(),
        said.trailerMass());
  }

  /** Fields show rounded figures and one line; leaving them must not round what is kept. */
  @Test
  void whatNobodyTouchedStaysToTheLastBitInEveryUnit() {
    for (QuantityFormat quantities : List.of(metric, imperial)) {
      TripSaidReader.Reading reading = read(quantities, TripSaid.of(trip(), quantities));
      assertThat(reading.details()).isEqualTo(SAID);
      assertThat(reading.rig()).isEqualTo(RIG);
      assertThat(reading.refusal()).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource({"31.5, 31.5", "'31,5', 31.5", "\u22124, -4", "-4, -4", "' 60 ', 60"})
  void aTemperatureIsReadAsPeopleWriteIt(String typed, double celsius) {
    TripSaid said = readOutside(TripSaid.of(trip(), metric), "after", typed);
    assertThat(read(metric, said).details().outsideCelsius()).hasValue(celsius);
  }

  // 1 lb = 0.45359237 kg and F = 1.8 C + 32, exactly: NIST Special Publication 811, 2008, B.8.
  @Test
  void poundsAndFahrenheitAreTakenOver() {
    TripSaid said = weighing(TripSaid.of(trip(), imperial), "10000", "5000");
    Rig rig = read(imperial, said).rig();
    assertThat(rig.massKilograms().getAsDouble()).isCloseTo(4535.9237, Offset.offset(1e-9));
    assertThat(rig.trailerMassKilograms().getAsDouble()).isCloseTo(2267.96185, Offset.offset(1e-9));
    TripSaid warm = readOutside(TripSaid.of(trip(), imperial), "after", "95");
    assertThat(read(imperial, warm).details().outsideCelsius().getAsDouble())
        .isCloseTo(35, Offset.offset(1e-9));
  }

  @ParameterizedTest
  @CsvSource({"hot", "61", "NaN", "1e3"})
  void aTemperatureThatCannotBeIsRefusedAndAllElseIsKept(String typed) {
    TripSaid said = readOutside(TripSaid.of(trip(), metric), "baseline", typed);
    TripSaidReader.Reading reading = read(metric, said);

    assertThat(reading.details()).isEqualTo(SAID.withLabel("baseline"));
    assertThat(reading.refusal())
        .hasValueSatisfying(
            words ->
                assertThat(words)
                    .startsWith("Not kept: Outside from \u221260 °C to 60 °C was expected")
                    .contains("found \u201c" + typed + "\u201d. Correct it"));
  }

  @ParameterizedTest
  @CsvSource({"7000, 7000", "3000, 3200.5", "500, 600"})
  void aTrailerAsHeavyAsBothTogetherIsRefused(String mass, String trailer) {
    TripSaidReader.Reading reading =
        read(metric, weighing(TripSaid.of(trip(), metric), mass, trailer));
    assertThat(reading.rig()).isEqualTo(RIG);
    assertThat(reading.refusal()).hasValueSatisfying(said -> assertThat(said).contains(trailer));
  }

  @Test
  void anEmptyFieldTakesBackWhatWasSaid() {
    TripSaidReader.Reading reading =
        read(metric, weighing(TripSaid.of(trip(), metric), "7000", ""));
    assertThat(reading.rig().massKilograms()).hasValue(7000);
    assertThat(reading.rig().trailerMassKilograms()).isEmpty();
  }

  /** The command line takes such tags; the field separates by commas. */
  @Test
  void aTagWithACommaStaysWholeWhenAnotherIsAdded() {
    TripSaid said = TripSaid.of(trip(), metric);
    TripSaid typed =
        new TripSaid(
            said.label(),
            said.note(),
            said.tags() + ", , steep ",
            said.fitted(),
            said.outside(),
            said.outsideTemperature(),
            said.mass(),
            said.trailerMass());
    assertThat(read(metric, typed).details().tags()).containsExactly("hot, dry", "ramp", "steep");
  }
}
