package steadypull.adapter;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import steadypull.adapter.diagnostic.CodeStatus;
import steadypull.adapter.diagnostic.TroubleCode;
import steadypull.adapter.diagnostic.TroubleCodeAnswer;
import steadypull.adapter.diagnostic.TroubleCodeReport;
import steadypull.adapter.diagnostic.TroubleCodeReport.Found;
import steadypull.adapter.frame.Message;

/** Asks every control unit for its trouble codes. Reader thread only. */
final class TroubleCodeInquiry implements Inquiry {
  private final VehicleKnowledge vehicle;
  private final Set<Found> framed;
  private final Deque<CodeStatus> left;
  private final Map<CodeStatus, Set<String>> answeredBy = new EnumMap<>(CodeStatus.class);
  private final List<Found> found = new ArrayList<>();

  /**
   * Prepares a round.
   *
   * @param statuses what to ask for, in this order
   * @param framed stored codes whose freeze frames were asked for before; new ones are added
   */
  TroubleCodeInquiry(VehicleKnowledge vehicle, Collection<CodeStatus> statuses, Set<Found> framed) {
    this.vehicle = vehicle;
    this.framed = framed;
    this.left = new ArrayDeque<>(statuses);
  }

  @Override
  public Optional<String> request() {
    return Optional.ofNullable(left.peek()).map(CodeStatus::request);
  }

  @Override
  public void take(List<Message> messages) {
    CodeStatus status = left.remove();
    for (Message message : messages) {
      TroubleCodeAnswer.read(status, vehicle.format().isCan(), message.payload())
          .ifPresent(codes -> note(status, message.controlUnit(), codes));
    }
  }

  private void note(CodeStatus status, String controlUnit, List<TroubleCode> codes) {
    answeredBy.computeIfAbsent(status, each -> new TreeSet<>()).add(controlUnit);
    for (TroubleCode code : codes) {
      Found each = new Found(controlUnit, code, status);
      if (!found.contains(each)) {
        found.add(each);
      }
    }
  }

  /** A vehicle that answered for no status has told nothing: then nothing is told. */
  @Override
  public Optional<Inquiry> finish(ReaderListener listener, long nanoTime) {
    if (!answeredBy.isEmpty()) {
      listener.troubleCodes(new TroubleCodeReport(answeredBy, found), nanoTime);
    }
    List<Found> unframed =
        found.stream()
            .filter(each -> each.status() == CodeStatus.STORED)
            .filter(framed::add)
            .toList();
    return unframed.isEmpty() ? Optional.empty() : Optional.of(new FreezeFrameInquiry(vehicle));
  }
}
