package steadypull.ui;

import java.util.Optional;
import java.util.function.Consumer;
import javafx.beans.value.ChangeListener;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import steadypull.channel.QuantityFormat;
import steadypull.store.TripSummary;
import steadypull.ui.TripsModel.Listed;

/**
 * The kept trips: search and list at the left, the sheet of the chosen one beside it, and a rail of
 * what can be done with it. FX thread only.
 */
final class TripsScreen implements Screen {
  private final Words words;
  private final QuantityFormat quantities;
  private final TripsDesk desk;
  private final ChangeListener<Optional<TripExports.Running>> exporting =
      (_, _, running) -> showExport(running);
  private final Pane root;
  private final Text count = TextRow.text("prose");
  private final TripFinder finder;
  private final TripPick pick;
  private final TripBar bar;
  private final TripSheet sheet;
  private final TripsRail rail;
  private final Ways ways;

  /**
   * Where the screen leads.
   *
   * @param isDriving whether a drive runs
   * @param files asks where to write
   * @param play drives a trip once more
   * @param back leaves the screen
   */
  record Ways(boolean isDriving, FileChoice files, Consumer<TripSummary> play, Runnable back) {}

  TripsScreen(Words words, QuantityFormat quantities, TripsDesk desk, Ways ways) {
    this.words = words;
    this.quantities = quantities;
    this.desk = desk;
    this.ways = ways;
    TripLineWords lines = new TripLineWords(words, quantities);
    root = Parked.page(words.say("trips.title"), "");
    finder = new TripFinder(words, lines, desk, this::openPick);
    pick = new TripPick(words, lines, desk, this::closePick);
    bar = new TripBar(words, lines, desk::bringBack);
    sheet = new TripSheet(words, lines, quantities, desk);
    rail = new TripsRail(words, ways.isDriving(), actions());
    root.getChildren()
        .addAll(
            new TextRow(TextRow.Anchor.LEFT)
                .add(count, 0)
                .at(ParkedGeometry.LEFT, ParkedGeometry.SUBTITLE_BASELINE),
            finder,
            pick,
            bar,
            sheet,
            rail);
    root.addEventHandler(KeyEvent.KEY_PRESSED, this::onKey);
    follow(desk.model());
  }

  private TripsRail.Actions actions() {
    return new TripsRail.Actions(
        () -> chosen().ifPresent(ways.play()),
        this::export,
        () -> chosen().ifPresent(desk::throwAway),
        () -> openPick(TripPick.Kind.THROWN_AWAY),
        ways.back());
  }

  private void follow(TripsModel model) {
    model.listedProperty().addListener((_, _, listed) -> show(listed));
    model.lastThrownProperty().addListener((_, _, thrown) -> show(thrown));
    model.thrownAwayProperty().addListener((_, _, trips) -> rail.showThrownAway(trips));
    model.chosenProperty().addListener((_, _, _) -> rail.show(chosen()));
    show(model.listedProperty().get());
    show(model.lastThrownProperty().get());
    rail.showThrownAway(model.thrownAwayProperty().get());
    rail.show(chosen());
    desk.exports().runningProperty().addListener(exporting);
    showExport(desk.exports().runningProperty().get());
  }

  private void showExport(Optional<TripExports.Running> running) {
    rail.showExport(running);
  }

  @Override
  public Pane root() {
    return root;
  }

  @Override
  public void setDensity(double density) {
    sheet.setDensity(density);
  }

  @Override
  public void setLight(Light light) {
    sheet.setLight(light);
  }

  @Override
  public void leaving() {
    sheet.keepNow();
    desk.exports().runningProperty().removeListener(exporting);
    desk.leave();
  }

  /** Gives the keyboard to the list. */
  void focus() {
    finder.focusList();
  }

  /** Shows the fields in which more can be said of the chosen trip, or what is known again. */
  void toggleEditing() {
    sheet.toggleEditing();
  }

  private Optional<TripSummary> chosen() {
    return desk.model().chosenProperty().get().map(each -> each.trip().summary());
  }

  private void export() {
    if (desk.exports().runningProperty().get().isPresent()) {
      desk.exports().stop();
      return;
    }
    chosen()
        .ifPresent(
            trip ->
                ways.files()
                    .forTrip(trip.id())
                    .ifPresent(target -> desk.export(trip, target, quantities)));
  }

  private void openPick(TripPick.Kind kind) {
    finder.setVisible(false);
    bar.setVisible(false);
    pick.open(kind);
  }

  private void closePick() {
    pick.setVisible(false);
    finder.setVisible(true);
    show(desk.model().lastThrownProperty().get());
    finder.focusList();
  }

  private void show(Listed listed) {
    count.setText(
        switch (listed) {
          case Listed.Looking _, Listed.Refused _ -> "";
          case Listed.Found(TripHits hits) when hits.all() == 0 -> "";
          case Listed.Found(TripHits hits) ->
              words.say(
                  hits.query().equals(TripQuery.ALL) ? "trips.count" : "trips.countFound",
                  grouped(hits.trips().size()),
                  grouped(hits.all()));
        });
  }

  private String grouped(int number) {
    return String.format(words.locale(), "%,d", number);
  }

  private void show(Optional<TripSummary> thrown) {
    bar.show(thrown);
    bar.setVisible(thrown.isPresent() && finder.isVisible());
    finder.endAt(
        thrown.isPresent() ? TripBar.top() - ParkedGeometry.ROW_GAP : ParkedGeometry.BOTTOM);
  }

  private void onKey(KeyEvent event) {
    boolean isSearch = event.isShortcutDown() && event.getCode() == KeyCode.F;
    if (isSearch) {
      finder.focusSearch();
    } else if (event.getCode() == KeyCode.ESCAPE) {
      stepBack();
    } else if (event.getCode() == KeyCode.DELETE
        && !(event.getTarget() instanceof TextInputControl)) {
      rail.pressThrowAway();
    } else {
      return;
    }
    event.consume();
  }

  private void stepBack() {
    if (pick.isVisible()) {
      closePick();
    } else if (sheet.isEditing()) {
      sheet.toggleEditing();
    } else {
      ways.back().run();
    }
  }
}
