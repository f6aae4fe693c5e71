package steadypull.adapter;

import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import steadypull.adapter.diagnostic.Requests;
import steadypull.adapter.frame.Payload;
import steadypull.adapter.polling.PollRequest;
import steadypull.adapter.polling.PollingPlan;

/**
 * Makes the plan's requests ready for the port and keeps them, because the same ones go out again
 * and again.
 *
 * <p>Where several control units would answer, a request to everybody has to wait for all of them.
 * At full pace the believed one is asked alone instead, by its own request header, unless it keeps
 * silent to that. Reader thread only.
 */
final class PollingRequests {
  private static final int MOST_KEPT = 1024;
  private static final int SILENCES_BEFORE_EVERYBODY = 2;
  private static final int NOT_KNOWN = 0;

  /** A request as it was made for an answer that the plan believed to be so long. */
  private record Ready(VehicleRequest request, int plannedBytes) {}

  private final VehicleKnowledge vehicle;
  private final PollingPlan plan;
  private final IdentityHashMap<PollRequest.CurrentData, Ready> kept = new IdentityHashMap<>();
  private boolean asksUnits;
  private int silences;

  PollingRequests(VehicleKnowledge vehicle, PollingPlan plan) {
    this.vehicle = vehicle;
    this.plan = plan;
  }

  /** From here on the believed control unit is asked alone where several would answer. */
  void askUnits() {
    asksUnits = true;
    kept.clear();
  }

  /**
   * Notes whether a request was answered. A control unit that was asked alone and kept silent again
   * and again is asked with everybody from then on.
   */
  void note(VehicleRequest request, boolean isAnswered) {
    if (request.unit().isPresent()) {
      silences = isAnswered ? 0 : silences + 1;
      if (silences == SILENCES_BEFORE_EVERYBODY) {
        asksUnits = false;
        kept.clear();
      }
    }
  }

  /** The request for parameters; with the length of the answer where only one unit answers. */
  VehicleRequest of(PollRequest.CurrentData asked) {
    int plannedBytes = plan.answerBytes(asked);
    Ready ready = kept.get(asked);
    if (ready == null || ready.plannedBytes() != plannedBytes) {
      ready = new Ready(make(asked.parameters(), plannedBytes), plannedBytes);
      if (kept.size() == MOST_KEPT) {
        kept.clear();
      }
      kept.put(asked, ready);
    }
    return ready.request();
  }

  private VehicleRequest make(List<Integer> numbers, int plannedBytes) {
    Payload payload = Payload.ofHex(Requests.currentData(numbers));
    String unit = vehicle.unitFor(numbers.getFirst()).orElse("");
    if (numbers.stream().allMatch(number -> vehicle.isOnlyFrom(unit, number))) {
      return new VehicleRequest(Optional.empty(), payload, plannedBytes);
    }
    Optional<String> header = asksUnits ? vehicle.format().requestHeader(unit) : Optional.empty();
    return new VehicleRequest(header, payload, header.isPresent() ? plannedBytes : NOT_KNOWN);
  }
}
