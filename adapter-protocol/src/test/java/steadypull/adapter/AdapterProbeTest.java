package steadypull.adapter;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class AdapterProbeTest {
  private final ScriptedVehicle vehicle =
      new ScriptedVehicle().parameter("7E8", 0x0C, "1F40").parameter("7E9", 0x0D, "50");
  private final ScriptedAdapter adapter = new ScriptedAdapter(vehicle);

  @Test
  void adapterAndVehicleAreDescribed() {
    assertThat(AdapterProbe.probe(adapter))
        .isEqualTo(
            new ProbeResult.Adapter(
                "SCRIPTED ADAPTER 1",
                true,
                OptionalDouble.of(13.8),
                new ProbeResult.Vehicle(
                    "AUTO, ISO 15765-4 (CAN 11/500)", List.of("7E8", "7E9"), 2, "")));
  }

  @Test
  void adapterWithoutAVehicleIsToldApart() {
    vehicle.isAwake = false;

    assertThat(AdapterProbe.probe(adapter))
        .isEqualTo(
            new ProbeResult.Adapter(
                "SCRIPTED ADAPTER 1",
                true,
                OptionalDouble.of(13.8),
                new ProbeResult.Silent(SilenceCause.NO_ANSWER, "\"NO DATA\"")));
  }

  @Test
  void deadPortIsToldApart() {
    adapter.isMute = true;

    assertThat(AdapterProbe.probe(adapter)).isEqualTo(new ProbeResult.NothingAnswered());
  }

  @Test
  void otherDeviceIsToldApart() {
    adapter.wire = reply -> "HELLO\r\n";

    assertThat(AdapterProbe.probe(adapter)).isEqualTo(new ProbeResult.NotAnAdapter("HELLO"));
  }

  // Some devices echo whatever they get, prompt characters included.
  @Test
  void deviceThatPromptsWithoutObeyingIsNoAdapter() {
    adapter.wire = reply -> "login:>";

    assertThat(AdapterProbe.probe(adapter)).isInstanceOf(ProbeResult.NotAnAdapter.class);
  }

  @Test
  void missingPortIsToldApart() {
    adapter.isGone = true;

    assertThat(AdapterProbe.probe(adapter))
        .isInstanceOfSatisfying(
            ProbeResult.CouldNotOpen.class,
            result -> assertThat(result.reason()).contains("scripted:port", "gone"));
  }

  @Test
  void adapterThatShowsNoSendersIsToldApart() {
    adapter.adapterReplies.put("ATH1", "?");
    vehicle.hidesSenders = true;

    assertThat(AdapterProbe.probe(adapter))
        .isInstanceOfSatisfying(
            ProbeResult.Adapter.class,
            found -> {
              assertThat(found.showsSenders()).isFalse();
              assertThat(found.behind())
                  .isInstanceOfSatisfying(
                      ProbeResult.Vehicle.class,
                      behind -> assertThat(behind.controlUnits()).containsExactly("7E8"));
            });
  }
}
