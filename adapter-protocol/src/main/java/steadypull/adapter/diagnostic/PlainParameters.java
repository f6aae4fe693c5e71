package steadypull.adapter.diagnostic;

/**
 * Rows of the service 01 table with one value and no presence bits.
 *
 * <p>Columns: parameter in hex | data bytes | number of the value, - if it is the only one | name |
 * unit | presence bit of the first data byte, - if always there, with ! and the bit that says "no
 * data now" | first bit + bit length, most significant first | u unsigned, s two's complement |
 * scale | offset | least | greatest plausible value | sources of the layout, letters of {@link
 * LayoutSource}. One-byte temperatures leave out 00 and FF (-40 and 215 degC), which stand for "no
 * sensor" in many control units.
 *
 * <p>Layouts: SAE J1979 appendix B as the sources give it. Plausible ranges: common practice, no
 * source.
 */
final class PlainParameters {
  private PlainParameters() {}

  static final String ROWS =
      """
      04 | 1 | - | calculated load                                | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | D
      05 | 1 | - | engine coolant temperature                     | degC | - | 0+8 | u | 1 | -40 | -39 | 214 | D
      0B | 1 | - | intake manifold absolute pressure              | kPa | - | 0+8 | u | 1 | 0 | 0 | 2550 | D
      0C | 2 | - | engine speed                                   | r/min | - | 0+16 | u | 1/4 | 0 | 0 | 16383 | D
      0D | 1 | - | vehicle speed                                  | km/h | - | 0+8 | u | 1 | 0 | 0 | 254 | D
      0F | 1 | - | intake air temperature                         | degC | - | 0+8 | u | 1 | -40 | -39 | 214 | D
      10 | 2 | - | mass air flow                                  | g/s | - | 0+16 | u | 1/100 | 0 | 0 | 2550 | D
      11 | 1 | - | absolute throttle position                     | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | D
      1F | 2 | - | time since engine start                        | s | - | 0+16 | u | 1 | 0 | 0 | 65535 | D
      21 | 2 | - | distance with malfunction lamp on              | km | - | 0+16 | u | 1 | 0 | 0 | 65535 | D
      23 | 2 | - | fuel rail pressure                             | kPa | - | 0+16 | u | 10 | 0 | 0 | 655350 | D
      2F | 1 | - | fuel tank level                                | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | D
      31 | 2 | - | distance since codes cleared                   | km | - | 0+16 | u | 1 | 0 | 0 | 65535 | D
      33 | 1 | - | barometric pressure                            | kPa | - | 0+8 | u | 1 | 0 | 30 | 120 | D
      42 | 2 | - | control module voltage                         | V | - | 0+16 | u | 1/1000 | 0 | 0 | 65.535 | D
      43 | 2 | - | absolute load                                  | % | - | 0+16 | u | 100/255 | 0 | 0 | 25700 | D
      45 | 1 | - | relative throttle position                     | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | D
      46 | 1 | - | ambient air temperature                        | degC | - | 0+8 | u | 1 | -40 | -39 | 214 | D
      49 | 1 | - | accelerator pedal position D                   | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | D
      4A | 1 | - | accelerator pedal position E                   | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | D
      4B | 1 | - | accelerator pedal position F                   | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | D
      4C | 1 | - | commanded throttle actuator                    | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | D
      4D | 2 | - | run time with malfunction lamp on              | min | - | 0+16 | u | 1 | 0 | 0 | 65535 | DT
      4E | 2 | - | run time since codes cleared                   | min | - | 0+16 | u | 1 | 0 | 0 | 65535 | DT
      50 | 4 | - | greatest mass air flow                         | g/s | - | 0+8 | u | 10 | 0 | 10 | 2550 | KT
      51 | 1 | - | fuel type in use                               | 1 | - | 0+8 | u | 1 | 0 | 0 | 255 | DKT
      5A | 1 | - | relative accelerator pedal position            | % | - | 0+8 | u | 100/255 | 0 | 0 | 100 | DT
      5C | 1 | - | engine oil temperature                         | degC | - | 0+8 | u | 1 | -40 | -39 | 214 | DT
      5D | 2 | - | fuel injection timing                          | deg | - | 0+16 | u | 1/128 | -210 | -210 | 302 | DT
      5E | 2 | - | engine fuel rate                               | L/h | - | 0+16 | u | 1/20 | 0 | 0 | 3276.75 | DT
      61 | 1 | - | driver demand torque                           | % | - | 0+8 | u | 1 | -125 | -125 | 130 | DT
      62 | 1 | - | actual engine torque                           | % | - | 0+8 | u | 1 | -125 | -125 | 130 | DT
      63 | 2 | - | engine reference torque                        | N.m | - | 0+16 | u | 1 | 0 | 1 | 65535 | DT
      84 | 1 | - | manifold surface temperature                   | degC | - | 0+8 | u | 1 | -40 | -39 | 214 | DT
      8E | 1 | - | engine friction torque                         | % | - | 0+8 | u | 1 | -125 | -125 | 130 | D
      9E | 2 | - | exhaust flow rate                              | kg/h | - | 0+16 | u | 1/5 | 0 | 0 | 13106 | D
      A6 | 4 | - | odometer                                       | km | - | 0+32 | u | 1/10 | 0 | 0 | 429496729 | D
      """;
}
