package steadypull.road.grade;

import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.ReceiverQuality;
import steadypull.road.TourDrive;

/** Prints what each source of the grade achieves, alone and together: {@code mvn -q -Pbench}. */
@Tag("bench")
class GradeTableBenchTest {
  private static final long SEEDS = 8;

  @Test
  void printWhatEachSourceAchieves() {
    System.out.printf(
        Locale.ROOT, "%n| world | source | pulling | brakes | all, live | afterwards |%n");
    for (TourDrive.Errors errors : TourDrive.Errors.values()) {
      row(errors, "torque alone", GradeOnToursTest.blind(), EnumSet.noneOf(Sensor.class));
      row(errors, "receiver alone", ReceiverQuality.usual(), EnumSet.of(Sensor.DELIVERED_TORQUE));
      row(errors, "both", ReceiverQuality.usual(), EnumSet.noneOf(Sensor.class));
      print(
          errors,
          "both and a route",
          TourGrades.alongRoutes(
              1, SEEDS, ReceiverQuality.usual(), EnumSet.noneOf(Sensor.class), errors));
    }
  }

  private static void row(
      TourDrive.Errors errors, String source, ReceiverQuality quality, Set<Sensor> silent) {
    print(errors, source, TourGrades.of(1, SEEDS, quality, silent, errors));
  }

  private static void print(TourDrive.Errors errors, String source, TourGrades grades) {
    System.out.printf(
        Locale.ROOT,
        "| %s | %s | %s | %s | %s | %s |%n",
        errors,
        source,
        cell(grades.pulling()),
        cell(grades.braking()),
        cell(grades.live()),
        cell(grades.afterwards()));
  }

  /** Error made, and the error told over it. */
  private static String cell(GradeErrors errors) {
    return errors.count() == 0 ? "-" : "%.2f (%.2f)".formatted(errors.made(), errors.toldByMade());
  }
}
