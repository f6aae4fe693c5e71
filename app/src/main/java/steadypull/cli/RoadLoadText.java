package steadypull.cli;

import java.util.List;
import java.util.Locale;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.road.RoadLoad;
import steadypull.road.load.GradeEquivalent;

/** A load on the road for people. */
final class RoadLoadText {
  private static final int CAPTION_WIDTH = 14;
  private static final double KILOMETRES_PER_HOUR = 3.6;

  /** NIST SP 811, appendix B.8. */
  private static final double NEWTON_METRES_PER_POUND_FOOT = 1.355818;

  private final QuantityFormat format;
  private final StringBuilder text = new StringBuilder();

  private RoadLoadText(QuantityFormat format) {
    this.format = format;
  }

  static String of(RoadLoadAnswer answer, QuantityFormat format) {
    RoadLoadText told = new RoadLoadText(format);
    told.describe(answer);
    return told.text.toString();
  }

  private void describe(RoadLoadAnswer answer) {
    GradeEquivalent road = answer.equivalent();
    put("grade", grade(road) + " at " + format.speed(answer.kilometresPerHour()));
    put("rig", format.mass(road.load().massKilograms()) + air(answer));
    put("at the wheels", power(road.kilowatts()) + shares(road));
    answer.wheelNewtonMetres().ifPresent(newtonMetres -> put("", torque(newtonMetres) + " in all"));
    answer
        .engineKilowatts()
        .ifPresentOrElse(
            kilowatts -> put("engine", power(kilowatts)),
            () -> put("engine", "none: the rig must be braked"));
    answer
        .gears()
        .forEach(
            gear ->
                put(
                    "gear " + gear.number(),
                    "%s r/min, %s"
                        .formatted(
                            format.whole(gear.engine().rpm()),
                            torque(gear.engine().newtonMetres()))));
    answer.samePower().forEach(this::same);
    putAll("assumed", answer.assumed());
    putAll("on rollers", RoadLoadAnswer.CAUTIONS);
  }

  private void same(GradeEquivalent road) {
    put(
        "same power",
        grade(road) + " at " + format.speed(road.metresPerSecond() * KILOMETRES_PER_HOUR));
  }

  private String air(RoadLoadAnswer answer) {
    return String.format(
        Locale.ROOT,
        ", air of %.3f kg/m3: %s at %.0f m",
        answer.equivalent().load().airDensity(),
        format.outsideTemperature(answer.celsius()),
        answer.altitudeMetres());
  }

  private String shares(GradeEquivalent road) {
    RoadLoad load = road.load();
    double speed = road.metresPerSecond();
    return ": grade %s, drag %s, rolling %s"
        .formatted(
            powerDigits(load.gradeNewtons(road.grade()) * speed / 1000),
            powerDigits(load.dragNewtons(speed) * speed / 1000),
            powerDigits(load.rollingNewtons(road.grade()) * speed / 1000));
  }

  private String grade(GradeEquivalent road) {
    return format.gradeDigits(road.grade() * 100) + " %";
  }

  private String power(double kilowatts) {
    return powerDigits(kilowatts) + " " + format.powerUnit();
  }

  private String powerDigits(double kilowatts) {
    return format.powerDigits(kilowatts);
  }

  private String torque(double newtonMetres) {
    return format.system() == UnitSystem.METRIC
        ? format.whole(newtonMetres) + " N.m"
        : format.whole(newtonMetres / NEWTON_METRES_PER_POUND_FOOT) + " lbf.ft";
  }

  private void putAll(String caption, List<String> lines) {
    String before = caption;
    for (String line : lines) {
      put(before, Printable.indented(Printable.wrapped(line, 80 - CAPTION_WIDTH), CAPTION_WIDTH));
      before = "";
    }
  }

  private void put(String caption, String value) {
    text.append(String.format(Locale.ROOT, "%-" + CAPTION_WIDTH + "s", caption))
        .append(value)
        .append('\n');
  }
}
