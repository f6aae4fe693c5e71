package steadypull.ui;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javafx.animation.Interpolator;
import javafx.animation.Transition;
import javafx.scene.layout.Pane;
import javafx.scene.text.Text;
import javafx.util.Duration;
import steadypull.channel.Channel;

/** All strips: texts, places, and the slide when their order changes. */
final class StripsView extends Pane {
  private static final Duration SLIDE = Duration.millis(400);

  private final PlotView plot;
  private final boolean moves;
  private final Map<Channel, StripView> views = new HashMap<>();
  private final Map<Channel, StripSlot> places = new HashMap<>();
  private final Text waiting = TextRow.text("hint");
  private final Text others = TextRow.text("second");
  private final Slide slide = new Slide();
  private Optional<StripsFace> face = Optional.empty();

  StripsView(Words words, PlotView plot, boolean moves) {
    this.plot = plot;
    this.moves = moves;
    setManaged(false);
    setPickOnBounds(false);
    waiting.setText(words.say("strips.waiting"));
    double middle = (DriveGeometry.STRIPS_TOP + DriveGeometry.STRIPS_BOTTOM) / 2;
    getChildren()
        .addAll(
            new TextRow(TextRow.Anchor.CENTRE).add(waiting, 0).at(DriveGeometry.NOW, middle),
            new TextRow(TextRow.Anchor.LEFT)
                .add(others, 0)
                .at(DriveGeometry.STATE_LEFT, DriveGeometry.AXIS_BASELINE)
                .within(DriveGeometry.STRIP_RIGHT - DriveGeometry.STATE_LEFT));
  }

  void show(StripsFace changed) {
    List<StripSlot> slots = StripSlot.slots(changed.strips().size(), changed.led());
    boolean slides = moves && face.isPresent() && reorders(face.get(), changed);
    face = Optional.of(changed);
    waiting.setVisible(changed.strips().isEmpty());
    others.setText(changed.others());
    keepOnly(changed);
    Map<Channel, StripSlot> targets = new HashMap<>();
    for (int index = 0; index < slots.size(); index++) {
      StripFace strip = changed.strips().get(index);
      targets.put(strip.state().channel(), slots.get(index));
      view(strip).show(strip, slots.get(index));
    }
    if (slides || slide.runsTo(targets)) {
      slide.to(targets);
    } else {
      slide.stop();
      places.putAll(targets);
    }
    place();
  }

  private static boolean reorders(StripsFace before, StripsFace after) {
    return before.led() == after.led()
        && before.strips().size() == after.strips().size()
        && !channels(before).equals(channels(after));
  }

  private static List<Channel> channels(StripsFace face) {
    return face.strips().stream().map(strip -> strip.state().channel()).toList();
  }

  private StripView view(StripFace strip) {
    return views.computeIfAbsent(
        strip.state().channel(),
        _ -> {
          StripView view = new StripView();
          getChildren().add(view);
          return view;
        });
  }

  private void keepOnly(StripsFace changed) {
    List<Channel> kept = channels(changed);
    views.entrySet().removeIf(entry -> !kept.contains(entry.getKey()) && discard(entry.getValue()));
    places.keySet().retainAll(kept);
  }

  private boolean discard(StripView view) {
    return getChildren().remove(view);
  }

  private void place() {
    StripsFace shown = face.orElseThrow();
    List<PlotStrip> drawn = new ArrayList<>();
    for (StripFace strip : shown.strips()) {
      Optional<StripSlot> place = Optional.ofNullable(places.get(strip.state().channel()));
      place.ifPresent(slot -> drawn.add(new PlotStrip(strip, slot)));
      place.ifPresent(slot -> view(strip).move(strip, slot));
    }
    plot.showStrips(drawn, shown.timeMicros());
  }

  /** Moves every strip from where it is to its new slot. */
  private final class Slide extends Transition {
    private Map<Channel, StripSlot> from = Map.of();
    private Map<Channel, StripSlot> targets = Map.of();

    Slide() {
      setCycleDuration(SLIDE);
      setInterpolator(Interpolator.EASE_BOTH);
    }

    boolean runsTo(Map<Channel, StripSlot> wanted) {
      return getStatus() == Status.RUNNING && targets.equals(wanted);
    }

    void to(Map<Channel, StripSlot> wanted) {
      if (!runsTo(wanted)) {
        stop();
        from = Map.copyOf(places);
        targets = wanted;
        playFromStart();
      }
    }

    @Override
    protected void interpolate(double share) {
      targets.forEach(
          (channel, target) ->
              places.put(channel, from.getOrDefault(channel, target).towards(target, share)));
      place();
    }
  }
}
