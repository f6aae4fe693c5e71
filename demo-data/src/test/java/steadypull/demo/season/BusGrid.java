package steadypull.demo.season;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import steadypull.adapter.diagnostic.DefinedSignal;
import steadypull.adapter.diagnostic.Maxima;
import steadypull.adapter.diagnostic.Parameter;
import steadypull.adapter.diagnostic.ParameterTable;
import steadypull.adapter.frame.Octets;

/**
 * Every value that a channel can have, as the reader decodes it: all raw numbers are put through
 * the reader's own table of SAE J1979 parameters, whose rows name their sources and are held to
 * worked examples in the reader's tests.
 */
final class BusGrid {
  /** Parameter, data bytes before the value, bytes of the value, key of its signal. */
  private record Source(int parameter, int before, int bytes, String key) {}

  private static final Map<String, Source> SOURCES =
      Map.ofEntries(
          Map.entry("engine_load[%]", new Source(0x04, 0, 1, "01.04")),
          Map.entry("engine_coolant_temp[degC]", new Source(0x05, 0, 1, "01.05")),
          Map.entry("engine_speed[r/min]", new Source(0x0C, 0, 2, "01.0C")),
          Map.entry("vehicle_speed[km/h]", new Source(0x0D, 0, 1, "01.0D")),
          Map.entry("intake_air_temp[degC]", new Source(0x0F, 0, 1, "01.0F")),
          Map.entry("air_mass_flow[g/s]", new Source(0x10, 0, 2, "01.10")),
          Map.entry("barometric_pressure[kPa]", new Source(0x33, 0, 1, "01.33")),
          Map.entry("module_voltage[V]", new Source(0x42, 0, 2, "01.42")),
          Map.entry("ambient_air_temp[degC]", new Source(0x46, 0, 1, "01.46")),
          Map.entry("accelerator_pedal[%]", new Source(0x49, 0, 1, "01.49")),
          Map.entry("engine_oil_temp[degC]", new Source(0x5C, 0, 1, "01.5C")),
          Map.entry("fuel_rate[L/h]", new Source(0x5E, 0, 2, "01.5E")),
          Map.entry("demanded_torque[%]", new Source(0x61, 0, 1, "01.61")),
          Map.entry("delivered_torque[%]", new Source(0x62, 0, 1, "01.62")),
          Map.entry("reference_torque[N.m]", new Source(0x63, 0, 2, "01.63")),
          Map.entry("charge_coolant_temp[degC]", new Source(0x67, 2, 1, "01.67.2")),
          Map.entry("charge_air_temp_in[degC]", new Source(0x75, 2, 1, "01.75.2")),
          Map.entry("charge_air_temp_out[degC]", new Source(0x77, 1, 1, "01.77.1")),
          Map.entry("exhaust_temp_before_turbine[degC]", new Source(0x78, 1, 2, "01.78.1")),
          Map.entry("exhaust_temp_after_turbine[degC]", new Source(0x78, 3, 2, "01.78.2")),
          Map.entry("manifold_pressure[kPa]", new Source(0x87, 1, 2, "01.87.1")));

  private final Map<String, Set<Double>> values = new LinkedHashMap<>();

  BusGrid() {
    SOURCES.forEach((header, source) -> values.put(header, decoded(source)));
    values.put("gear[1]", gears());
    values.put("transmission_fluid_temp[degC]", fluid());
  }

  /** Whether the reader could have decoded that value to the last bit. */
  boolean holds(String header, double value) {
    Set<Double> possible = values.get(header);
    return possible != null && possible.contains(value == 0 ? 0.0 : value);
  }

  private static Set<Double> decoded(Source source) {
    Parameter parameter = ParameterTable.find(source.parameter()).orElseThrow();
    Set<Double> decoded = new HashSet<>();
    for (int raw = 0; raw < 1 << (8 * source.bytes()); raw++) {
      byte[] data = new byte[parameter.length()];
      if (source.before() > 0) {
        data[0] = (byte) 0xFF; // all sensors fitted
      }
      for (int i = 0; i < source.bytes(); i++) {
        data[source.before() + i] = (byte) (raw >> (8 * (source.bytes() - 1 - i)));
      }
      parameter.decode(
          octets(data),
          Maxima.none(),
          (signal, value) -> {
            if (signal.key().equals(source.key())) {
              decoded.add(value);
            }
          });
    }
    return decoded;
  }

  /** A4: the gear stands in the upper half of the second byte. */
  private static Set<Double> gears() {
    Parameter parameter = ParameterTable.find(0xA4).orElseThrow();
    Set<Double> decoded = new HashSet<>();
    for (int raw = 0; raw < 16; raw++) {
      byte[] data = {0x01, (byte) (raw << 4), 0, 0};
      parameter.decode(octets(data), Maxima.none(), (_, value) -> decoded.add(value));
    }
    return decoded;
  }

  /** The signal of the vehicle files. */
  private static Set<Double> fluid() {
    DefinedSignal signal =
        new DefinedSignal(0x1E1C, "7E1", "fluid", 0, 16, false, 0.0625, -40, "degC", -40, 215);
    Set<Double> decoded = new HashSet<>();
    for (int raw = 0; raw < 1 << 16; raw++) {
      byte[] data = {(byte) (raw >> 8), (byte) raw};
      signal.decode(octets(data)).ifPresent(value -> decoded.add(value.value()));
    }
    return decoded;
  }

  private static Octets octets(byte[] data) {
    return new Octets() {
      @Override
      public int size() {
        return data.length;
      }

      @Override
      public int at(int index) {
        return data[index] & 0xFF;
      }
    };
  }
}
