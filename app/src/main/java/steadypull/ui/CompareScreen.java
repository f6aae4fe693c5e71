package steadypull.ui;

import java.util.List;
import java.util.stream.Stream;
import javafx.beans.value.ChangeListener;
import javafx.scene.Node;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import steadypull.channel.QuantityFormat;
import steadypull.report.ComparisonWords;
import steadypull.ui.CompareModel.Shown;

/**
 * Before and after: the verdict over the lanes of both sides, their values and where the gain comes
 * from; trips and temperature are chosen over it. FX thread only.
 */
final class CompareScreen implements Screen {
  private static final double PROSE_TOP = 100;

  private final Words words;
  private final QuantityFormat quantities;
  private final CompareDesk desk;
  private final Ways ways;
  private final Pane root;
  private final Pane title = new Pane();
  private final Pane subtitle = new Pane();
  private final Pane remark = new Pane();
  private final CompareVerdict verdict = new CompareVerdict();
  private final CompareLanes lanes;
  private final CompareTable table;
  private final CompareSide side;
  private final CompareRunsPick runs;
  private final CompareChannelPick channels;
  private final CompareRail rail;
  private final ChangeListener<Shown> follow = (_, _, shown) -> show(shown);
  private final ChangeListener<String> hear = (_, _, said) -> say(said);

  /**
   * Where the screen leads.
   *
   * @param files asks where to write
   * @param back leaves the screen
   */
  record Ways(ReportChoice files, Runnable back) {}

  CompareScreen(Words words, QuantityFormat quantities, CompareDesk desk, Ways ways) {
    this.words = words;
    this.quantities = quantities;
    this.desk = desk;
    this.ways = ways;
    root = Parked.page("", "");
    title(words.say("compare.title"));
    lanes = new CompareLanes(words);
    table = new CompareTable(words);
    side = new CompareSide(words);
    TripLineWords lineWords = new TripLineWords(words, quantities);
    runs = new CompareRunsPick(words, lineWords, desk.model(), this::compare);
    channels = new CompareChannelPick(words, desk, this::showComparison);
    rail =
        new CompareRail(
            words,
            new CompareRail.Actions(this::openRuns, this::openChannels, this::write, ways.back()));
    root.getChildren()
        .addAll(title, subtitle, remark, verdict, lanes, table, side, runs, channels, rail);
    root.addEventHandler(KeyEvent.KEY_PRESSED, this::onKey);
    desk.model().shownProperty().addListener(follow);
    desk.model().toldProperty().addListener(hear);
    showComparison();
  }

  @Override
  public Pane root() {
    return root;
  }

  @Override
  public void setDensity(double density) {
    lanes.setDensity(density);
  }

  @Override
  public void setLight(Light light) {
    lanes.setLight(light);
    side.setLight(light);
  }

  @Override
  public void leaving() {
    desk.model().shownProperty().removeListener(follow);
    desk.model().toldProperty().removeListener(hear);
  }

  private void compare() {
    desk.compare();
    showComparison();
  }

  /** Shows the trips that can be chosen. */
  void openRuns() {
    title(words.say("compare.title"));
    only(List.of(runs));
    say(words.say("compare.choose"));
  }

  /** Shows the temperatures that can be chosen. */
  void openChannels() {
    title(words.say("compare.title"));
    channels.open();
    only(List.of(channels));
    say(words.say("compare.chooseChannel"));
  }

  private void showComparison() {
    show(desk.model().shownProperty().get());
  }

  private void show(Shown shown) {
    rail.show(!desk.model().channels().isEmpty(), shown instanceof Shown.Told);
    switch (shown) {
      case Shown.Nothing() -> remark("compare.nothing");
      case Shown.Working() -> remark("compare.working");
      case Shown.Refused(String message) -> remarkText(message);
      case Shown.Told(var comparison) -> {
        ComparisonWords told = new ComparisonWords(comparison, words.locale(), quantities);
        if (told.isUntold()) {
          untold(told);
        } else {
          told(told);
        }
      }
    }
  }

  private void told(ComparisonWords told) {
    head(told);
    verdict.show(told);
    lanes.show(told);
    table.show(told);
    side.show(told);
    only(List.of(verdict, lanes, table, side));
  }

  /** What cannot be compared is said, with every run that was left out. */
  private void untold(ComparisonWords told) {
    head(told);
    verdict.show(told);
    List<String> reasons = Stream.concat(told.caveats().stream(), told.leftOut().stream()).toList();
    remark
        .getChildren()
        .setAll(
            Parked.prose(
                reasons,
                CompareGeometry.LEFT,
                CompareGeometry.LOAD_TOP + 12,
                CompareGeometry.PANEL_WIDTH - 40));
    only(List.of(verdict, remark));
  }

  private void head(ComparisonWords told) {
    title(told.vehicle().isEmpty() ? words.say("compare.title") : told.title());
    say(told.sides());
  }

  private void title(String text) {
    title
        .getChildren()
        .setAll(
            Parked.line(text, ParkedGeometry.LEFT, ParkedGeometry.TITLE_BASELINE, "headline")
                .within(CompareGeometry.PANEL_WIDTH));
  }

  private void remark(String key) {
    remarkText(words.say(key));
  }

  private void remarkText(String text) {
    title(words.say("compare.title"));
    clear();
    remark
        .getChildren()
        .setAll(
            Parked.prose(
                List.of(text), CompareGeometry.LEFT, PROSE_TOP, ParkedGeometry.MENU_WIDTH));
    only(List.of(remark));
  }

  private void clear() {
    subtitle.getChildren().clear();
  }

  private void say(String said) {
    if (!said.isEmpty()) {
      subtitle
          .getChildren()
          .setAll(
              Parked.line(
                      said,
                      ParkedGeometry.LEFT,
                      ParkedGeometry.SUBTITLE_BASELINE,
                      "small",
                      "second")
                  .within(CompareGeometry.PANEL_WIDTH));
    }
  }

  private void only(List<Node> wanted) {
    for (Node part : List.of(remark, verdict, lanes, table, side, runs, channels)) {
      part.setVisible(wanted.contains(part));
    }
  }

  private void write() {
    if (desk.model().shownProperty().get() instanceof Shown.Told(var comparison)) {
      ways.files()
          .forReport(words.say("compare.fileName"))
          .ifPresent(file -> desk.write(comparison, quantities, file));
    }
  }

  private void onKey(KeyEvent event) {
    if (event.getCode() == KeyCode.ESCAPE) {
      if (runs.isVisible() || channels.isVisible()) {
        showComparison();
      } else {
        ways.back().run();
      }
      event.consume();
    }
  }
}
