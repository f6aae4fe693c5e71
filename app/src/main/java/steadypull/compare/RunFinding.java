package steadypull.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import steadypull.channel.Channel;
import steadypull.channel.Channels;

/**
 * The door from trips to runs: pulls and climbs are found by load, read second by second and held
 * against each other; every one is listed, those that cannot be compared with the reason.
 * Stateless.
 */
public final class RunFinding {
  private RunFinding() {}

  /** The same, said in English. */
  public static RunSet of(List<RunSource> sources, Channel channel, Job job) {
    return of(sources, channel, job, Locale.ENGLISH);
  }

  /**
   * The runs of a comparison.
   *
   * @param sources in the order told
   * @param channel that is to be compared
   * @param job what was asked and answered
   * @param language of reasons and caveats
   */
  public static RunSet of(List<RunSource> sources, Channel channel, Job job, Locale language) {
    RunWords words = new RunWords(language);
    List<FoundRun> found = new ArrayList<>();
    List<RejectedRun> rejected = new ArrayList<>();
    JobNotes notes = new JobNotes(job);
    for (RunSource source : sources) {
      List<Stretch> all = LoadSearch.find(source.trip());
      List<Stretch> chosen = chosen(source, all);
      if (chosen.isEmpty()) {
        rejected.add(
            new RejectedRun(
                source.trip().name(), 0, source.side(), NoLoad.sentence(source, all, words)));
      }
      RunReading reading = new RunReading(source, all, notes);
      for (Stretch stretch : chosen) {
        Run run = reading.read(stretch);
        Optional<String> reason =
            notes
                .of(run.source(), stretch, run.side())
                .leftOut()
                .or(() -> Refusal.of(run, stretch, channel, words));
        if (reason.isPresent()) {
          rejected.add(rejected(run, reason.get()));
        } else {
          found.add(new FoundRun(run, stretch, source.trip().power()));
        }
      }
    }
    found.sort(Comparator.comparingInt(each -> each.run().place()));
    return new RunMatching(channel, job, sources, words).match(found, rejected);
  }

  static RejectedRun rejected(Run run, String reason) {
    return new RejectedRun(run.source(), run.onsetSeconds(), run.side(), reason);
  }

  /** What of a trip may serve as runs, earliest first; empty if nothing was pulled. */
  public static List<ProposedRun> propose(TripSeconds trip) {
    return LoadSearch.find(trip).stream().map(stretch -> proposed(trip, stretch)).toList();
  }

  private static ProposedRun proposed(TripSeconds trip, Stretch stretch) {
    int held = HeldLoad.seconds(trip.power(), stretch);
    return new ProposedRun(
        stretch.onset(),
        stretch.end(),
        held,
        trip.power().mean(stretch.onset(), stretch.onset() + Math.max(1, held)).orElse(0),
        Figures.mean(trip.span(Channels.VEHICLE_SPEED, stretch.onset(), stretch.end())),
        RunGround.of(trip, stretch));
  }

  private static List<Stretch> chosen(RunSource source, List<Stretch> all) {
    return source.span().isEmpty()
        ? all
        : all.stream().flatMap(each -> each.within(source.span().get()).stream()).toList();
  }
}
