package steadypull.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import steadypull.review.LearntLimit;
import steadypull.vehicle.LessonOfTrip;
import steadypull.vehicle.Limit;
import steadypull.vehicle.Provenance;
import steadypull.vehicle.Vehicle;

/** Where a vehicle really began to derate, as lines of text. */
final class LearntLimitText {
  private LearntLimitText() {}

  static String of(List<LearntLimit> learnt) {
    if (learnt.isEmpty()) {
      return "No trip has shown a derate at a hot channel: nothing to propose.\n";
    }
    StringBuilder text = new StringBuilder();
    learnt.forEach(each -> text.append(lines(each)));
    if (learnt.stream().anyMatch(each -> each.proposal().isPresent())) {
      text.append("Confirm one with --confirm-limit CHANNEL; it holds from the next drive on.\n");
    }
    return text.toString();
  }

  private static String lines(LearntLimit learnt) {
    StringBuilder text = new StringBuilder();
    text.append(learnt.entered().channel().id()).append(": ").append(told(learnt)).append('\n');
    if (!learnt.celsius().isEmpty()) {
      text.append("    ").append(learnt.evidence()).append('\n');
    }
    if (learnt.unclear() > 0) {
      text.append("    ")
          .append(Counted.of(learnt.unclear(), "derate", "derates"))
          .append(" with another channel as near to its limit: not counted\n");
    }
    return text.toString();
  }

  private static String told(LearntLimit learnt) {
    Provenance.Kind kind = learnt.entered().provenance().kind();
    String entered =
        String.format(Locale.ROOT, "%.1f degC (%s)", learnt.entered().celsius(), kind.word());
    return learnt
        .proposal()
        .map(
            limit ->
                String.format(Locale.ROOT, "%.1f degC in place of %s", limit.celsius(), entered))
        .orElse("nothing to change of " + entered);
  }

  /**
   * The limit that somebody confirms.
   *
   * @throws CommandFailure if trips have not shown one of that channel
   */
  static Limit confirmed(String channelId, Vehicle vehicle, List<LessonOfTrip> lessons)
      throws CommandFailure {
    List<LearntLimit> all = LearntLimit.of(vehicle, lessons);
    Optional<Limit> proposed =
        all.stream()
            .filter(each -> each.entered().channel().id().equals(channelId))
            .flatMap(each -> each.proposal().stream())
            .findFirst();
    if (proposed.isEmpty()) {
      throw new CommandFailure(
          "Could not confirm a limit of %s for \"%s\": expected a channel whose limit its trips would change, found %s. --propose-limits tells what they have shown."
              .formatted(Printable.line(channelId), vehicle.name(), known(all)));
    }
    return proposed.get();
  }

  private static String known(List<LearntLimit> all) {
    String ids =
        all.stream()
            .filter(each -> each.proposal().isPresent())
            .map(each -> each.entered().channel().id())
            .collect(Collectors.joining(", "));
    return ids.isEmpty() ? "none of that kind" : "only " + ids;
  }
}
