package steadypull.store.column;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import org.junit.jupiter.api.Test;

/** Values are kept as the numbers that the bus, a table or a conversion made them from. */
class FormSearchTest {
  private static final int COUNT = 2000;

  private final SplittableRandom random = new SplittableRandom(17);

  /** Service 01 parameters 05, 0C, 06 and 87: SAE J1979, appendix B (scales from memory). */
  @Test
  void wholeNumbersAndBinaryFractionsAreExact() {
    assertThat(form(() -> raw(256) - 40)).isEqualTo(new Dyadic(0));
    assertThat(form(() -> raw(65_536) / 4.0)).isEqualTo(new Dyadic(2));
    assertThat(form(() -> raw(256) * (100.0 / 128) - 100)).isEqualTo(new Dyadic(5));
    assertThat(form(() -> raw(65_536) * (1.0 / 32))).isEqualTo(new Dyadic(5));
  }

  @Test
  void textWithAFixedNumberOfDecimalsIsCounted() {
    assertThat(form(() -> Double.parseDouble(raw(2000) + "." + (10 + raw(90)))))
        .isEqualTo(new Decimal(2));
    assertThat(form(() -> Double.parseDouble("-35." + (1_000_000 + raw(9_000_000)))))
        .isEqualTo(new Decimal(7));
  }

  /** Parameters 04, 78 and 42 as they are computed: raw * scale + offset. */
  @Test
  void scaledValuesAreTheRawNumberAgain() {
    assertThat(form(() -> raw(256) * (100.0 / 255) + 0.0)).isEqualTo(new Affine(100.0 / 255, 0));
    assertThat(form(() -> raw(65_536) * (1.0 / 10) - 40)).isEqualTo(new Affine(0.1, -40));
    assertThat(form(() -> raw(65_536) * (1.0 / 1000) + 0.0)).isEqualTo(new Affine(0.001, 0));
  }

  /** A walk in steps of ten, standard deviation, holds 5.4 bits a value (entropy of a normal). */
  @Test
  void gridsThatNobodyToldOfTakeLittleMoreThanWhatIsNewInThem() {
    assertBits(() -> walk() / 10.0 * 1.609344 / 1, 8); // mi/h
    assertBits(() -> (walk() / 10.0 - 32) * 5 / 9, 8); // degF
    assertBits(() -> walk() * 0.0375 - 17.3, 8.5); // a signal of a vehicle's own
    assertBits(() -> -(35 + (12.3 + walk() / 1e4) / 60), 8); // degrees and minutes
    assertBits(() -> walk() / 100.0 * 1.852, 8); // kn
  }

  @Test
  void aFewValuesOfAnyKindAreADictionary() {
    double[] few = {Math.PI, Math.E, 1 / 3.0, -Math.sqrt(2), 17.0 / 7};

    assertThat(form(() -> few[raw(few.length)])).isInstanceOf(Dictionary.class);
    assertBits(() -> few[raw(few.length)], 3.5);
  }

  /** 52 bits of fraction are noise, and cannot take less. */
  @Test
  void noiseTakesHardlyMoreThanItHas() {
    assertThat(form(random::nextDouble)).isEqualTo(new PlainBits());
    assertBits(random::nextDouble, 55);
  }

  private double level = 2000;

  private int walk() {
    level = Math.clamp(level + 10 * random.nextGaussian(), 0, 4000);
    return (int) Math.round(level);
  }

  private int raw(int bound) {
    return random.nextInt(bound);
  }

  private static double[] values(DoubleSupplier source) {
    double[] values = new double[COUNT];
    for (int i = 0; i < COUNT; i++) {
      values[i] = source.getAsDouble();
    }
    return values;
  }

  private static ValueForm form(DoubleSupplier source) {
    try (SeriesWriter out = new SeriesWriter()) {
      return FormSearch.of(values(source), COUNT, out);
    }
  }

  private static void assertBits(DoubleSupplier source, double most) {
    try (SeriesWriter out = new SeriesWriter()) {
      ValueSeries.write(out, values(source), COUNT);
      assertThat(8.0 * out.size() / COUNT).as("bits a value").isLessThan(most);
    }
  }
}
