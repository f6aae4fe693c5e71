package steadypull.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;
import steadypull.demo.plant.Sensor;
import steadypull.demo.road.Drive;

/** What the sensors of an invented drive say, once a second, one after the other. */
final class DemoSamples {
  private final Drive drive;
  private final Set<Channel> missing;

  /** Of a drive, without the channels given. */
  DemoSamples(Drive drive, Set<Channel> missing) {
    this.drive = drive;
    this.missing = missing;
  }

  /** Drives on to a whole second and reads every sensor in the half second before it. */
  List<Sample> until(int second) {
    List<Sample> samples = new ArrayList<>();
    Sensor[] sensors = Sensor.values();
    for (int i = 0; i < sensors.length; i++) {
      double at = second - 0.5 + 0.5 * i / sensors.length;
      drive.advanceTo(at);
      Sensor sensor = sensors[i];
      long timeMicros = Math.round(at * 1e6);
      Channels.find(sensor.channel())
          .filter(channel -> !missing.contains(channel))
          .ifPresent(channel -> samples.add(new Sample(channel, timeMicros, drive.read(sensor))));
    }
    drive.advanceTo(second);
    return samples;
  }

  /** Whether the drive has come to its end. */
  boolean isOver() {
    return drive.isOver();
  }
}
