package steadypull.ui;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import javafx.application.Platform;
import javafx.scene.Scene;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageOutputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import steadypull.channel.QuantityFormat;
import steadypull.channel.UnitSystem;
import steadypull.drive.DriveSnapshot;

/**
 * Pictures of the Drive screen without a window or a display, on JavaFX's headless platform. Any
 * thread but the FX thread; one picture at a time.
 */
public final class DrivePictures {
  private final Locale locale;
  private final UnitSystem units;
  private final ZoneId zone;

  /**
   * Starts the toolkit without a display, unless it runs already.
   *
   * @param locale language of the texts
   * @param units units of the quantities
   * @param zone time zone of the clock
   */
  public DrivePictures(Locale locale, UnitSystem units, ZoneId zone) {
    this.locale = Objects.requireNonNull(locale);
    this.units = Objects.requireNonNull(units);
    this.zone = Objects.requireNonNull(zone);
    FxThread.startWithoutDisplay();
  }

  /**
   * Draws one moment of a drive at 1280 x 800 and writes it as PNG.
   *
   * @param snapshot the moment
   * @param night whether in the colours of the night
   * @param file where to; missing folders are made
   * @throws IOException if the file cannot be written
   */
  public void write(DriveSnapshot snapshot, boolean night, Path file) throws IOException {
    CompletableFuture<BufferedImage> drawn = new CompletableFuture<>();
    Platform.runLater(
        () ->
            drawn.completeAsync(
                () -> draw(snapshot, night ? Light.NIGHT : Light.DAY), Runnable::run));
    BufferedImage picture = drawn.join();
    Path folder = file.toAbsolutePath().getParent();
    if (folder != null) {
      Files.createDirectories(folder);
    }
    save(picture, file);
  }

  /** Small rather than quick: pictures are kept and sent. */
  private static void save(BufferedImage picture, Path file) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("png").next();
    ImageWriteParam settings = writer.getDefaultWriteParam();
    settings.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
    settings.setCompressionQuality(0);
    try (OutputStream target = Files.newOutputStream(file);
        ImageOutputStream stream = new MemoryCacheImageOutputStream(target)) {
      writer.setOutput(stream);
      writer.write(null, new IIOImage(picture, null, null), settings);
    } finally {
      writer.dispose();
    }
  }

  private BufferedImage draw(DriveSnapshot snapshot, Light light) {
    Words words = new Words(locale);
    DriveModel model =
        new DriveModel(words, new QuantityFormat(locale, units), zone, System::nanoTime);
    model.show(snapshot);
    FittedPane root = new FittedPane();
    root.setLight(light);
    root.show(new DriveScreen(words, model, idle(), false));
    return copy(new Scene(root).snapshot(null));
  }

  private static DriveActions idle() {
    Runnable nothing = () -> {};
    return new DriveActions(nothing, nothing, nothing, nothing, nothing, nothing);
  }

  /** Takes the pixels over without the toolkit's own bridge to Java's other window toolkit. */
  static BufferedImage copy(WritableImage image) {
    int width = (int) image.getWidth();
    int height = (int) image.getHeight();
    int[] pixels = new int[width * height];
    image
        .getPixelReader()
        .getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), pixels, 0, width);
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    picture.setRGB(0, 0, width, height, pixels, 0, width);
    return picture;
  }
}
