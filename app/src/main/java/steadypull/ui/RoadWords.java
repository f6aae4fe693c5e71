package steadypull.ui;

import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import steadypull.channel.QuantityFormat;
import steadypull.drive.DriveSnapshot;
import steadypull.drive.RoadState;

/** Words for the road strip. */
final class RoadWords {
  private final Words words;
  private final QuantityFormat quantities;

  RoadWords(Words words, QuantityFormat quantities) {
    this.words = words;
    this.quantities = quantities;
  }

  RoadFace face(DriveSnapshot snapshot) {
    RoadState road = snapshot.road();
    String speed = told(road.speedKilometresPerHour(), quantities::speedDigits);
    String grade = told(road.gradePercent(), quantities::gradeDigits);
    String power = told(road.wheelPowerKilowatts(), quantities::powerDigits);
    String gear = told(road.gear(), quantities::whole);
    String outside = told(road.ambientCelsius(), quantities::temperatureDigits);
    GroundAhead ground = GroundAhead.of(road);
    AheadWords.Lines ahead = new AheadWords(words, quantities).lines(road, ground);
    return new RoadFace(
        snapshot.timeMicros(),
        road,
        speed,
        quantities.speedUnit(),
        grade,
        power,
        quantities.powerUnit(),
        gear,
        outside,
        quantities.outsideTemperatureUnit(),
        ground,
        gradeAhead(road, ground),
        ahead.origin(),
        ahead.place(),
        ahead.note(),
        spoken(road, grade, power, gear, ahead));
  }

  private String spoken(
      RoadState road, String grade, String power, String gear, AheadWords.Lines ahead) {
    String unknown = words.say("strip.unknown");
    return words
        .say(
            "road.help",
            told(road.speedKilometresPerHour(), quantities::speed),
            grade,
            power,
            quantities.powerUnit(),
            gear,
            told(road.ambientCelsius(), quantities::outsideTemperature),
            ahead.place(),
            ahead.origin().isEmpty() ? ahead.note() : ahead.note() + ", " + ahead.origin())
        .replace(RoadFace.UNKNOWN, unknown);
  }

  private String gradeAhead(RoadState road, GroundAhead ground) {
    OptionalDouble grade =
        ground.isKnown()
            ? ground.gradePercentAround(RoadScale.labelSeconds(), road)
            : road.gradePercent();
    return grade.isPresent()
        ? words.say("road.gradeHere", quantities.whole(grade.getAsDouble()))
        : "";
  }

  private static String told(OptionalDouble quantity, DoubleFunction<String> format) {
    return quantity.isPresent() ? format.apply(quantity.getAsDouble()) : RoadFace.UNKNOWN;
  }
}
