package steadypull.ui;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Executor;
import steadypull.channel.Channel;
import steadypull.channel.QuantityFormat;
import steadypull.compare.Comparison;
import steadypull.report.ComparisonDesk;
import steadypull.report.ComparisonWords;
import steadypull.report.ReportException;
import steadypull.store.TripSummary;
import steadypull.ui.CompareModel.Shown;

/**
 * Does what is asked for on the screen that compares runs: reads and reckons on the executor and
 * shows what came of it on the FX thread. FX thread only.
 */
final class CompareDesk {
  private final ComparisonDesk desk;
  private final Words words;
  private final Executor library;
  private final CompareModel model = new CompareModel();

  /**
   * A desk that remembers what was chosen from visit to visit.
   *
   * @param library runs one thing after the other
   */
  CompareDesk(ComparisonDesk desk, Words words, Executor library) {
    this.desk = desk;
    this.words = words;
    this.library = library;
  }

  CompareModel model() {
    return model;
  }

  /** Looks for trips that can be chosen. */
  void look() {
    model.tell("");
    library.execute(
        () -> {
          try {
            List<TripSummary> trips = desk.trips();
            FxThread.run(() -> model.trips(trips));
          } catch (ReportException refused) {
            FxThread.run(() -> model.tell(message(refused)));
          }
        });
  }

  /** Compares what is chosen at present. */
  void compare() {
    List<Channel> channels = model.channels();
    if (!channels.isEmpty() && !channels.contains(model.channelProperty().get())) {
      model.channel(channels.getFirst());
    }
    long question = model.ask();
    if (!model.isComplete()) {
      return;
    }
    List<ComparisonDesk.Chosen> chosen = model.chosenProperty().get();
    Channel channel = model.channelProperty().get();
    library.execute(
        () -> {
          Shown answer = answer(chosen, channel);
          FxThread.run(() -> model.answer(question, answer));
        });
  }

  private Shown answer(List<ComparisonDesk.Chosen> chosen, Channel channel) {
    try {
      return new Shown.Told(desk.compare(chosen, channel, words.locale()));
    } catch (ReportException refused) {
      return new Shown.Refused(message(refused));
    }
  }

  /** Compares another temperature. */
  void choose(Channel channel) {
    model.channel(channel);
    compare();
  }

  /** Writes the form of what is shown. */
  void write(Comparison comparison, QuantityFormat quantities, Path file) {
    library.execute(
        () -> {
          String said;
          try {
            desk.write(
                new ComparisonWords(comparison, words.locale(), quantities), quantities, file);
            said = words.say("compare.written", file.toString());
          } catch (ReportException refused) {
            said = message(refused);
          }
          String outcome = said;
          FxThread.run(() -> model.tell(outcome));
        });
  }

  private static String message(ReportException refused) {
    return String.valueOf(refused.getMessage());
  }
}
