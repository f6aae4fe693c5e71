package steadypull.ui;

import javafx.scene.layout.Pane;
import steadypull.drive.Diagnosis;

/** The trouble codes that the vehicle told. There is nothing to press but back. FX thread only. */
final class CodesScreen implements Screen {
  private final Pane root;

  CodesScreen(Words words, Diagnosis diagnosis, Runnable back) {
    root = Parked.page(words.say("menu.codes"), "");
    root.getChildren()
        .add(
            Parked.prose(
                new CodePageWords(words).paragraphs(diagnosis),
                ParkedGeometry.LEFT,
                ParkedGeometry.MENU_TOP,
                ParkedGeometry.PAGE_WIDTH));
    Parked.addWayBack(root, "codes-back", words.say("about.back"), back);
  }

  @Override
  public Pane root() {
    return root;
  }
}
