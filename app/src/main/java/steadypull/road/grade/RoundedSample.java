package steadypull.road.grade;

import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/**
 * Derived samples in steps, so that digits that mean nothing are neither kept nor shown. Delivered
 * torque comes in whole percents of the reference torque, which for 900 N.m in a top gear are 25
 * N.m at the wheels and at 2000 r/min 1.9 kW; grade is told to 0.3 % at best ({@link
 * GradeEstimate}). Each step is at most a twentieth of that (estimated). Stateless.
 */
final class RoundedSample {
  private static final double GRADE_STEPS_PER_PERCENT = 100;
  private static final double TORQUE_STEPS_PER_NEWTON_METRE = 1;
  private static final double POWER_STEPS_PER_KILOWATT = 10;

  private RoundedSample() {}

  static Sample grade(long timeMicros, double fraction) {
    return sample(Channels.ROAD_GRADE, timeMicros, fraction * 100, GRADE_STEPS_PER_PERCENT);
  }

  static Sample wheelTorque(long timeMicros, double newtonMetres) {
    return sample(Channels.WHEEL_TORQUE, timeMicros, newtonMetres, TORQUE_STEPS_PER_NEWTON_METRE);
  }

  static Sample wheelPower(long timeMicros, double kilowatts) {
    return sample(Channels.WHEEL_POWER, timeMicros, kilowatts, POWER_STEPS_PER_KILOWATT);
  }

  private static Sample sample(
      Channel channel, long timeMicros, double value, double stepsPerUnit) {
    return new Sample(channel, timeMicros, Math.rint(value * stepsPerUnit) / stepsPerUnit);
  }
}
