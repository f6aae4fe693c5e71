package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveSnapshot;

class DrivePicturesTest {
  private static final Path FOLDER = Path.of("target", "pictures");

  @Test
  void everyStateHasAPictureByDayAndNight() throws IOException {
    DrivePictures pictures = new DrivePictures(Locale.ENGLISH, UnitSystem.METRIC, ZoneOffset.UTC);
    for (Map.Entry<String, DriveSnapshot> moment : Moments.all().entrySet()) {
      for (boolean night : new boolean[] {false, true}) {
        Path file = FOLDER.resolve(moment.getKey() + (night ? "-night" : "") + ".png");
        pictures.write(moment.getValue(), night, file);
        BufferedImage picture = ImageIO.read(file.toFile());
        assertThat(picture.getWidth()).isEqualTo(1280);
        assertThat(picture.getHeight()).isEqualTo(800);
      }
    }
  }
}
