package steadypull.adapter;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import steadypull.adapter.diagnostic.ControlUnitIdentity;
import steadypull.adapter.diagnostic.InformationItem;
import steadypull.adapter.frame.Message;
import steadypull.adapter.frame.Payload;

/** Asks the control units what they are called and what they work with. Reader thread only. */
final class IdentityInquiry implements Inquiry {
  private final VehicleKnowledge vehicle;
  private final Deque<InformationItem> left =
      new ArrayDeque<>(
          List.of(
              InformationItem.NAME,
              InformationItem.CALIBRATIONS,
              InformationItem.VERIFICATION_NUMBERS));
  private final Map<String, Map<InformationItem, List<String>>> told = new TreeMap<>();

  IdentityInquiry(VehicleKnowledge vehicle) {
    this.vehicle = vehicle;
  }

  @Override
  public Optional<String> request() {
    return Optional.ofNullable(left.peek()).map(InformationItem::request);
  }

  @Override
  public void take(List<Message> messages) {
    InformationItem item = left.remove();
    Map<String, List<Payload>> byUnit = new TreeMap<>();
    for (Message message : messages) {
      byUnit
          .computeIfAbsent(message.controlUnit(), unit -> new ArrayList<>())
          .add(message.payload());
    }
    byUnit.forEach((unit, payloads) -> note(item, unit, payloads));
  }

  private void note(InformationItem item, String unit, List<Payload> payloads) {
    List<String> fields = item.read(vehicle.format().isCan(), payloads);
    if (!fields.isEmpty()) {
      told.computeIfAbsent(unit, each -> new EnumMap<>(InformationItem.class)).put(item, fields);
    }
  }

  @Override
  public Optional<Inquiry> finish(ReaderListener listener, long nanoTime) {
    told.forEach((unit, items) -> listener.identified(identity(unit, items), nanoTime));
    return Optional.empty();
  }

  private static ControlUnitIdentity identity(
      String unit, Map<InformationItem, List<String>> items) {
    return new ControlUnitIdentity(
        unit,
        items.getOrDefault(InformationItem.NAME, List.of("")).getFirst(),
        items.getOrDefault(InformationItem.CALIBRATIONS, List.of()),
        items.getOrDefault(InformationItem.VERIFICATION_NUMBERS, List.of()));
  }
}
