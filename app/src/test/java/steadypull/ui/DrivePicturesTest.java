package steadypull.ui;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import javafx.scene.Scene;
import javafx.scene.paint.Color;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import steadypull.advice.AdviceLine;
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

  // Looked at by people; that they are readable is held by ReadableTextTest.
  @Test
  void parkedScreensHavePictures() throws IOException {
    Words words = new Words(Locale.ENGLISH);
    Runnable nothing = () -> {};
    StartModel start = new StartModel(1);
    start.found(
        List.of("Wattle 2", "Quarry tipper"),
        List.of(RecordingDesk.REAL, RecordingDesk.SIMULATED),
        "");
    write(
        "start", () -> new StartScreen(words, start, nothing, nothing, nothing, nothing, nothing));
    for (CompareMoments moment : CompareMoments.values()) {
      write(
          "compare-" + moment.name().toLowerCase(Locale.ROOT),
          () -> moment.screen(Locale.ENGLISH, UnitSystem.METRIC));
    }
    write("about", () -> new AboutScreen(words, nothing));
    write("codes", () -> new CodesScreen(words, Moments.underboost(), nothing));
    write("backup", () -> ReadableTextTest.backup(words));
    write(
        "menu",
        () -> {
          MenuScreen menu =
              new MenuScreen(
                  words,
                  new MenuScreen.Actions(
                      nothing, nothing, nothing, nothing, nothing, nothing, nothing, nothing,
                      nothing, nothing, nothing));
          menu.show(UnitSystem.METRIC, LightChoice.BY_CLOCK, SoundChoice.SPOKEN);
          return menu;
        });
  }

  @Test
  void tripsHavePictures(@TempDir Path library) throws Exception {
    try (TripShelf shelf = new TripShelf(library)) {
      shelf.fill();
      for (TripMoments moment : TripMoments.values()) {
        write(
            "trips-" + moment.name().toLowerCase(Locale.ROOT),
            () -> moment.screen(shelf.desk(), new Words(Locale.ENGLISH), UnitSystem.METRIC));
      }
    }
  }

  @Test
  void sensorsHavePictures() throws IOException {
    Words english = new Words(Locale.ENGLISH);
    write(
        "sensors",
        () -> ReadableTextTest.sensors(english, UnitSystem.METRIC, SensorMoments.told()));
    write(
        "sensors-puzzling",
        () -> ReadableTextTest.sensors(english, UnitSystem.METRIC, SensorMoments.puzzling()));
    write(
        "sensors-german",
        () ->
            ReadableTextTest.sensors(
                new Words(Locale.GERMAN), UnitSystem.METRIC, SensorMoments.told()));
  }

  @Test
  void germanAndImperialHavePictures() throws IOException {
    new DrivePictures(Locale.GERMAN, UnitSystem.IMPERIAL, ZoneOffset.UTC)
        .write(
            Moments.advise(new AdviceLine.Response.None()),
            false,
            FOLDER.resolve("advise-german-imperial.png"));
    new DrivePictures(Locale.GERMAN, UnitSystem.IMPERIAL, ZoneOffset.UTC)
        .write(Moments.calm(), true, FOLDER.resolve("calm-german-imperial.png"));
  }

  private static void write(String name, Callable<Screen> screen) throws IOException {
    Files.createDirectories(FOLDER);
    for (Light light : Light.values()) {
      BufferedImage picture =
          Fx.call(
              () -> {
                FittedPane root = new FittedPane();
                root.setLight(light);
                root.show(screen.call());
                return DrivePictures.copy(new Scene(root).snapshot(null));
              });
      Path file = FOLDER.resolve(name + "-" + light.styleClass() + ".png");
      assertThat(ImageIO.write(picture, "png", file.toFile())).isTrue();
    }
  }

  private static boolean isNear(int pixel, Color colour) {
    return Math.abs((pixel >> 16 & 0xFF) - 255 * colour.getRed()) < 12
        && Math.abs((pixel >> 8 & 0xFF) - 255 * colour.getGreen()) < 12
        && Math.abs((pixel & 0xFF) - 255 * colour.getBlue()) < 12;
  }

  private static BufferedImage picture(DriveSnapshot snapshot, String name) throws IOException {
    Path file = FOLDER.resolve(name + ".png");
    new DrivePictures(Locale.ENGLISH, UnitSystem.METRIC, ZoneOffset.UTC)
        .write(snapshot, false, file);
    return ImageIO.read(file.toFile());
  }

  // Window of a strip: 8 degrees over the limit at the top, 40 under it at the bottom (our design).
  @Test
  void traceIsInkWhereItsTemperatureSaysItIs() throws IOException {
    BufferedImage picture = picture(Moments.calm(), "trace");
    Color ink = Palette.of(Light.DAY).colour(Token.INK);
    double stripHeight = 99.5;
    int coolantY = (int) Math.round(192 + stripHeight * (112 + 8 - 88) / 48);
    for (int x : new int[] {290, 410, 530}) {
      int column = x;
      assertThat(IntStream.rangeClosed(coolantY - 3, coolantY + 3))
          .as("x " + x)
          .anyMatch(y -> isNear(picture.getRGB(column, y), ink));
      assertThat(isNear(picture.getRGB(x, coolantY - 12), ink)).isFalse();
    }
  }

  @Test
  void leadingStripIsTallerAndAmberUnderAnAdvice() throws IOException {
    Palette palette = Palette.of(Light.DAY);
    BufferedImage calm = picture(Moments.calm(), "equal");
    BufferedImage advise = picture(Moments.advise(new AdviceLine.Response.None()), "leading");
    assertThat(gaps(calm, palette)).containsExactly(291, 395, 498);
    assertThat(gaps(advise, palette)).containsExactly(398, 466, 534);
    assertThat(isNear(advise.getRGB(1000, 60), palette.colour(Token.AMBER))).isTrue();
    assertThat(isNear(advise.getRGB(400, 226), palette.colour(Token.AMBER_INK))).isTrue();
  }

  /** y of the gaps between strips: the first row of the page's ground under each strip. */
  private static List<Integer> gaps(BufferedImage picture, Palette palette) {
    Color ground = palette.colour(Token.GROUND);
    int column = 20;
    return IntStream.range(200, 600)
        .filter(
            y ->
                isNear(picture.getRGB(column, y), ground)
                    && !isNear(picture.getRGB(column, y - 1), ground))
        .boxed()
        .toList();
  }
}
