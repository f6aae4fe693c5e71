package steadypull.exchange;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.vehicle.CoolingLayout;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;

class VehicleFileTest {
  @TempDir Path folder;

  @Test
  void aVehicleTravelsAsAFile() throws Exception {
    Path file = folder.resolve("wattle.json");
    Vehicle vehicle = Vehicle.unknown("Wattle 2", CoolingLayout.WATER_TO_AIR);

    VehicleFile.write(file, vehicle);

    assertThat(VehicleFile.read(file)).isEqualTo(vehicle);
    assertThat(file).content().contains("\"limit_degC\" : 112,").endsWith("}\n");
  }

  @Test
  void whatCannotBeReadIsNamed() throws Exception {
    Path latin = folder.resolve("latin.json");
    Files.write(latin, new byte[] {'{', (byte) 0xE9, '}'});

    assertThatThrownBy(() -> VehicleFile.read(latin))
        .isInstanceOf(VehicleFileException.class)
        .hasMessageContaining("latin.json: expected UTF-8");
    assertThatThrownBy(() -> VehicleFile.readRig(folder.resolve("none.json")))
        .isInstanceOf(VehicleFileException.class)
        .hasMessageContaining("none.json");
    assertThatThrownBy(
            () ->
                VehicleFile.write(
                    folder.resolve("none/a.json"), Vehicle.unknown("A", CoolingLayout.AIR_TO_AIR)))
        .isInstanceOf(VehicleFileException.class);
  }
}
