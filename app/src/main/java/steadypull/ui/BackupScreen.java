package steadypull.ui;

import java.util.List;
import javafx.scene.layout.Pane;
import steadypull.drive.DriveDesk;
import steadypull.drive.DriveException;
import steadypull.store.Backup;

/**
 * A copy of the library being made, and where it lies then. FX thread only, but for the copying.
 */
final class BackupScreen implements Screen {
  private final Words words;
  private final Pane root;
  private final Pane text = new Pane();

  /** Says that the copy is being made; {@link #copy} is still to be called. */
  BackupScreen(Words words, Runnable back) {
    this.words = words;
    this.root = Parked.page(words.say("menu.backup"), "");
    root.getChildren().add(text);
    Parked.addWayBack(root, "backup-back", words.say("about.back"), back);
    tell(List.of(words.say("backup.copying")));
  }

  @Override
  public Pane root() {
    return root;
  }

  /** Makes the copy on the calling thread, which may be any, and tells what came of it. */
  void copy(DriveDesk desk) {
    List<String> paragraphs = outcome(desk);
    FxThread.run(() -> tell(paragraphs));
  }

  private List<String> outcome(DriveDesk desk) {
    try {
      Backup made = desk.backUp();
      return List.of(
          words.say("backup.done", Integer.toString(made.trips())),
          made.file().toString(),
          words.say("backup.advice"));
    } catch (DriveException refused) {
      return List.of(String.valueOf(refused.getMessage()));
    }
  }

  private void tell(List<String> paragraphs) {
    text.getChildren()
        .setAll(
            Parked.prose(
                paragraphs,
                ParkedGeometry.LEFT,
                ParkedGeometry.MENU_TOP,
                ParkedGeometry.PAGE_WIDTH));
  }
}
