package steadypull.adapter.diagnostic;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import steadypull.adapter.frame.Octets;

/**
 * A service 01 parameter and the values it carries. Immutable.
 *
 * @param number 0 to 0xFF
 * @param length data bytes after the number according to the table; a control unit may differ
 * @param sources where the layout was read; at least one
 * @param values in the table's order
 */
public record Parameter(int number, int length, Set<LayoutSource> sources, List<Value> values) {
  public Parameter {
    sources = Set.copyOf(sources);
    values = List.copyOf(values);
    if (sources.isEmpty()) {
      throw new IllegalArgumentException(
          "A parameter names the source of its layout, found none for %02X".formatted(number));
    }
  }

  /**
   * One value of a parameter.
   *
   * @param signal key, name and unit
   * @param presence how an answer tells whether the value is there
   * @param field where the raw number stands
   * @param scale physical value = raw * scale + offset
   * @param offset see scale
   * @param lowest least plausible physical value
   * @param highest greatest plausible physical value
   */
  record Value(
      Signal signal,
      Presence presence,
      BitField field,
      double scale,
      double offset,
      double lowest,
      double highest) {}

  /** The signals that the parameter can carry. */
  public List<Signal> signals() {
    return values.stream().map(Value::signal).toList();
  }

  /** The signals whose sensors exist according to the first byte and the length of an answer. */
  public List<Signal> signalsPresent(Octets data) {
    return values.stream()
        .filter(value -> value.presence().isFitted(data) && value.field().fits(data))
        .map(Value::signal)
        .toList();
  }

  /**
   * Decodes an answer. A sensor that is absent or has no data, a value that the data are too short
   * for, and a value out of its plausible range are left out.
   *
   * @param data the bytes after the parameter number
   * @param maxima what this control unit declared
   */
  public List<SignalValue> decode(Octets data, Maxima maxima) {
    List<SignalValue> decoded = new ArrayList<>();
    decode(data, maxima, (signal, value) -> decoded.add(new SignalValue(signal, value)));
    return decoded;
  }

  /** The same, handed over one by one and without allocating. */
  public void decode(Octets data, Maxima maxima, SignalSink sink) {
    for (int i = 0; i < values.size(); i++) {
      Value value = values.get(i);
      if (value.presence().hasData(data) && value.field().fits(data)) {
        double scale = maxima.scale(number, value.scale());
        double physical = value.field().raw(data) * scale + value.offset();
        if (physical >= value.lowest() && physical <= value.highest()) {
          sink.value(value.signal(), physical);
        }
      }
    }
  }
}
