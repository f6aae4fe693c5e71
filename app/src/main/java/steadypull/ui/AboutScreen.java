package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.layout.Pane;

/** What the program is, and the cautions in full. FX thread only. */
final class AboutScreen implements Screen {
  private final Pane root;

  AboutScreen(Words words, Runnable back) {
    root = Parked.page(words.say("menu.about"), "");
    List<String> paragraphs = new ArrayList<>();
    paragraphs.add(words.say("about.text"));
    paragraphs.addAll(Cautions.all(words));
    paragraphs.add(words.say("about.licence"));
    root.getChildren()
        .add(
            Parked.prose(
                paragraphs,
                ParkedGeometry.LEFT,
                ParkedGeometry.MENU_TOP,
                ParkedGeometry.MENU_WIDTH,
                "caution-text"));
    Parked.addWayBack(root, "about-back", words.say("about.back"), back);
  }

  @Override
  public Pane root() {
    return root;
  }
}
