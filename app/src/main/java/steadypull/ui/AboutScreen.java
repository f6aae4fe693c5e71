package steadypull.ui;

import java.util.ArrayList;
import java.util.List;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;

/** What the program is, and the cautions in full. FX thread only. */
final class AboutScreen implements Screen {
  private final Pane root;

  AboutScreen(Words words, Runnable back) {
    root = Parked.page(words.say("menu.about"), "");
    PressRow row = new PressRow(words.say("about.back"), back);
    row.setId("about-back");
    row.place(
        ParkedGeometry.LEFT,
        ParkedGeometry.BOTTOM - ParkedGeometry.ROW_HEIGHT,
        ParkedGeometry.MENU_WIDTH,
        ParkedGeometry.ROW_HEIGHT);
    List<String> paragraphs = new ArrayList<>();
    paragraphs.add(words.say("about.text"));
    paragraphs.addAll(Cautions.all(words));
    paragraphs.add(words.say("about.licence"));
    root.getChildren()
        .addAll(
            Parked.prose(
                paragraphs,
                ParkedGeometry.LEFT,
                ParkedGeometry.MENU_TOP,
                ParkedGeometry.MENU_WIDTH,
                "caution-text"),
            row);
    root.addEventHandler(
        KeyEvent.KEY_PRESSED,
        event -> {
          if (event.getCode() == KeyCode.ESCAPE) {
            back.run();
            event.consume();
          }
        });
  }

  @Override
  public Pane root() {
    return root;
  }
}
