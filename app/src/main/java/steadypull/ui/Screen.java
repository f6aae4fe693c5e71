package steadypull.ui;

import javafx.scene.layout.Pane;

/** One screen of the program: a root of 1280 x 800 that is scaled as a whole. FX thread only. */
interface Screen {
  /** The nodes. */
  Pane root();

  /** Tells how many pixels of the window stand for one of the design. */
  default void setDensity(double density) {}

  /** Keeps what was begun on the screen before another takes its place or the window closes. */
  default void leaving() {}

  /** Changes the colours of what no style sheet reaches. */
  default void setLight(Light light) {}
}
