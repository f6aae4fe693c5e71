package steadypull.compare;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import steadypull.channel.Channel;
import steadypull.channel.Channels;
import steadypull.channel.Sample;

/** What a trip tells at whole seconds. */
class SecondsColumnTest {
  private static double[] read(Channel channel, int seconds, double... timesAndValues) {
    SecondsColumn column = new SecondsColumn(channel);
    for (int i = 0; i < timesAndValues.length; i += 2) {
      column.accept(
          new Sample(channel, Math.round(timesAndValues[i] * 1e6), timesAndValues[i + 1]));
    }
    return column.values(seconds);
  }

  @Test
  void betweenNeighboursAChannelRunsStraight() {
    assertThat(read(Channels.CHARGE_COOLANT_TEMP, 6, 0.5, 30, 4.5, 38))
        .containsExactly(Double.NaN, 31, 33, 35, 37, 38);
  }

  @Test
  void aGearStaysUntilTheNext() {
    assertThat(read(Channels.GEAR, 4, 0, 3, 2.5, 4)).containsExactly(3, 3, 3, 4);
  }

  @Test
  void aSilenceIsNotBridged() {
    double[] values = read(Channels.CHARGE_COOLANT_TEMP, 23, 1, 30, 21, 40);

    assertThat(values[2]).isEqualTo(30);
    assertThat(values[3]).isNaN();
    assertThat(values[20]).isNaN();
    assertThat(values[21]).isEqualTo(40);
  }

  @Test
  void outsideAirIsAskedForSeldomAndStillStands() {
    assertThat(read(Channels.AMBIENT_AIR_TEMP, 61, 0, 20, 60, 26)[30]).isEqualTo(23);
  }

  @Test
  void theReferenceTorqueIsAConstantOfTheEngine() {
    assertThat(read(Channels.REFERENCE_TORQUE, 1000, 3, 740)[999]).isEqualTo(740);
  }

  @Test
  void aLateSampleChangesNothing() {
    assertThat(read(Channels.CHARGE_COOLANT_TEMP, 4, 0, 30, 3, 36, 1, 99))
        .containsExactly(30, 32, 34, 36);
  }
}
