package steadypull.thermal;

import java.util.regex.Pattern;

/**
 * What a trouble code has to do with power. Families of SAE J2012 codes by their numbers, from
 * memory; that control units limit power for them is common practice, no source.
 */
enum CodeCause {
  /** The control unit protects itself from heat: power comes back as it cools. */
  HEAT("P0168|P0217|P0218|P0298|P242[89]"),
  /** A fault for which control units limit power until it is mended. */
  FAULT(
      String.join(
          "|",
          "P000[1-4]|P001[6-9]|P003[3-5]|P004[5-9A-F]", // fuel quantity, shafts, boost control
          "P0069|P008[7-9]|P009[0-4]", // pressures
          "P010[0-8]|P012[0-4]|P019[0-4]", // air, throttle and pedal, fuel pressure sensor
          "P020[0-9]|P021[0-6]|P022[0-9]", // injectors, pedal
          "P023[4-9]|P024[0-9]|P025[0-9]|P02[6-9][0-9A-F]|P030[0-9]|P031[0-2]", // boost, fuel,
          // misfire
          "P03[34][0-9]|P040[0-9]|P047[0-9]|P052[0-4]", // shaft sensors, recirculation, oil
          // pressure
          "P060[0-9A-F]|P0641|P0651|P07[0-7][0-9A-F]|P0868|P0894", // control units, gearbox
          "P2002|P20[4-9A-F][0-9A-F]|P21[0-3][0-9A-F]|P226[0-9]|P2279|P229[0-9]", // filter,
          // throttle
          "P245[2-9]|P246[0-9A-F]|P256[2-5]|P259[89]", // filter, boost actuator
          "U010[01]|U040[12]")),
  /** A code of the maker's own: nobody here knows. */
  MAKERS("P1...|P3[0-3]..|U[1-3]..."),
  /** Nothing that takes power. */
  NONE(".*");

  private final Pattern codes;

  CodeCause(String codes) {
    this.codes = Pattern.compile(codes);
  }

  /** The cause of a code such as {@code P0299}. */
  static CodeCause of(String code) {
    for (CodeCause cause : values()) {
      if (cause.codes.matcher(code).matches()) {
        return cause;
      }
    }
    throw new IllegalStateException("The last cause takes every code, found " + code);
  }
}
