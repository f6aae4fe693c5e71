package steadypull.exchange;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import steadypull.vehicle.Rig;
import steadypull.vehicle.Vehicle;
import steadypull.vehicle.VehicleFileException;
import steadypull.vehicle.VehicleJson;

/** Vehicle and rig files: JSON in UTF-8. Stateless. */
public final class VehicleFile {
  /** No vehicle file comes near; more is not one. */
  private static final long MOST_BYTES = 1_000_000;

  private VehicleFile() {}

  /** Reads a vehicle file. */
  public static Vehicle read(Path file) throws VehicleFileException {
    return VehicleJson.read(text(file), file.toString());
  }

  /** Reads a rig file. */
  public static Rig readRig(Path file) throws VehicleFileException {
    return VehicleJson.readRig(text(file), file.toString());
  }

  /** Writes a vehicle file in place of whatever was there; a fault leaves the old file. */
  public static void write(Path file, Vehicle vehicle) throws VehicleFileException {
    try {
      new NewFile(file.toAbsolutePath()).fill(out -> out.write(VehicleJson.write(vehicle)));
    } catch (IOException e) {
      throw new VehicleFileException(
          "Could not write %s: expected a folder that takes a file, found %s. Choose another place or make room."
              .formatted(file, FileFault.whileWriting(e, file)),
          e);
    }
  }

  private static String text(Path file) throws VehicleFileException {
    try {
      if (Files.size(file) > MOST_BYTES) {
        throw new VehicleFileException(
            "Could not read %s: expected a file of at most %d bytes, found %d."
                .formatted(file, MOST_BYTES, Files.size(file)));
      }
      return Files.readString(file, StandardCharsets.UTF_8);
    } catch (CharacterCodingException e) {
      throw new VehicleFileException(
          "Could not read %s: expected UTF-8, found other bytes. Save the file as UTF-8."
              .formatted(file),
          e);
    } catch (IOException e) {
      throw new VehicleFileException(
          "Could not read %s: expected a readable file, found %s. Check path and rights."
              .formatted(file, FileFault.whileReading(e)),
          e);
    }
  }
}
