package steadypull.compare;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.demo.plant.Duty;
import steadypull.demo.plant.Plant;
import steadypull.demo.plant.Rig;
import steadypull.demo.plant.Sensor;
import steadypull.demo.plant.Surroundings;
import steadypull.demo.plant.WarmStart;
import steadypull.demo.road.Weather;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;

/**
 * One pull of an invented plant in one gear: easy driving, then a load that is held, on a road as
 * well as grades, wind and the foot allow.
 *
 * @param isOnRollers rollers with a workshop's fan, else a road in the wind
 * @param gear that is held
 * @param metresPerSecond of rollers or road
 * @param newtonMetres at the crankshaft
 * @param outsideCelsius true
 * @param altitude m
 * @param windMetresPerSecond mean headwind
 * @param gustMetresPerSecond deviation of gusts
 * @param fanMetresPerSecond of the workshop's fan
 * @param seconds of load
 * @param chargeCelsius of the charge coolant at the beginning
 * @param engineCelsius of the engine coolant at the beginning
 */
record Pull(
    boolean isOnRollers,
    int gear,
    double metresPerSecond,
    double newtonMetres,
    double outsideCelsius,
    double altitude,
    double windMetresPerSecond,
    double gustMetresPerSecond,
    double fanMetresPerSecond,
    int seconds,
    double chargeCelsius,
    double engineCelsius) {
  private static final int BEFORE = 60;
  private static final double GUST_SECONDS = 8;
  private static final double UNEVEN_SECONDS = 25;
  private static final double EASY_SHARE = 0.15;

  /** What a pull was in truth while its load was held, means but for the start. */
  record True(
      double newtonMetres,
      double metresPerSecond,
      int gear,
      double chargeStart,
      double engineStart) {}

  /** A pull as the program sees it, with the truth behind. */
  record Driven(Run run, True truth) {}

  WarmStart start() {
    return new WarmStart(chargeCelsius, engineCelsius, 95, 80, metresPerSecond);
  }

  private Surroundings around() {
    return new Surroundings(0, outsideCelsius, Weather.kilopascals(altitude), 0);
  }

  private Duty duty(double share, double gust, double uneven) {
    if (isOnRollers) {
      return new Duty.HoldTorque(gear, metresPerSecond, newtonMetres * share, fanMetresPerSecond);
    }
    double speed = metresPerSecond * (1 + 0.015 * uneven);
    double air = speed + windMetresPerSecond + gust * gustMetresPerSecond;
    return new Duty.HoldTorque(
        gear, speed, newtonMetres * share * (1 + 0.04 * uneven), Math.clamp(air, 0.0, 50.0));
  }

  /** Drives it and writes down what the sensors say each second. */
  Driven drive(Rig rig, SensorErrors errors, Side side, int place, LocalDate day, long seed) {
    Random random = new Random(seed);
    Plant plant = new Plant(rig, start(), around(), seed);
    int rows = BEFORE + seconds;
    Map<Channel, double[]> columns = new LinkedHashMap<>();
    double gust = 0;
    double uneven = 0;
    double torque = 0;
    double speed = 0;
    double chargeStart = 0;
    double engineStart = 0;
    int[] gears = new int[20];
    for (int row = 0; row < rows; row++) {
      double share = row < BEFORE ? EASY_SHARE : 1;
      for (int step = 0; step < 20; step++) {
        double keep = Math.exp(-Plant.STEP_SECONDS / GUST_SECONDS);
        double keeps = Math.exp(-Plant.STEP_SECONDS / UNEVEN_SECONDS);
        uneven = keeps * uneven + Math.sqrt(1 - keeps * keeps) * random.nextGaussian();
        gust = keep * gust + Math.sqrt(1 - keep * keep) * random.nextGaussian();
        plant.step(around(), duty(share, gust, uneven));
      }
      for (Sensor sensor : Sensor.values()) {
        Optional<Channel> channel = Channels.find(sensor.channel());
        if (channel.isPresent()) {
          columns.computeIfAbsent(channel.get(), _ -> new double[rows])[row] =
              errors.told(channel.get(), plant.read(sensor));
        }
      }
      if (row == BEFORE - 1) {
        chargeStart = plant.state().temperatures().chargeCoolant();
        engineStart = plant.state().temperatures().engineCoolant();
      }
      if (row >= BEFORE + 20) {
        torque += plant.state().work().deliveredTorque();
        speed += plant.state().motion().speed();
        gears[plant.state().motion().gear()]++;
      }
    }
    int held = seconds - 20;
    int mostly = 1;
    for (int g = 1; g < gears.length; g++) {
      mostly = gears[g] > gears[mostly] ? g : mostly;
    }
    return new Driven(
        run(columns, side, place, day),
        new True(torque / held, speed / held, mostly, chargeStart, engineStart));
  }

  private Run run(Map<Channel, double[]> columns, Side side, int place, LocalDate day) {
    double outside = mean(columns.getOrDefault(Channels.AMBIENT_AIR_TEMP, new double[1]));
    return new Run(
        side + " " + place,
        BEFORE,
        side,
        place,
        Optional.of(day),
        Vehicle.unknown("invented", CoolingLayout.WATER_TO_AIR),
        isOnRollers ? Run.Ground.ROLLERS : Run.Ground.ROAD,
        seconds,
        seconds,
        new RunSeries(-BEFORE, BEFORE + seconds, columns),
        new RunStart(
            Map.of(),
            OptionalDouble.of(outside),
            OptionalDouble.of(Weather.kilopascals(altitude)),
            OptionalDouble.empty(),
            OptionalInt.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            RunStart.Known.YES,
            RunStart.Known.UNKNOWN,
            RunStart.Known.NO,
            RunStart.Known.UNKNOWN,
            Thermostat.UNKNOWN),
        RunNotes.NONE);
  }

  private static double mean(double[] values) {
    double sum = 0;
    for (double value : values) {
      sum += value;
    }
    return sum / values.length;
  }
}
