package steadypull.adapter.diagnostic;

/**
 * Rows of the service 01 table with one value and no presence bits.
 *
 * <p>Columns: parameter in hex | data bytes | number of the value, - if it is the only one | name |
 * unit | presence bit of the first data byte, - if always there | first bit + bit length, most
 * significant first | u unsigned, s two's complement | scale | offset | least | greatest plausible
 * value. One-byte temperatures leave out 00 and FF (-40 and 215 degC), which stand for "no sensor"
 * in many control units.
 *
 * <p>Layouts: SAE J1979 appendix B, checked against the conformance cases of SAE J1699-3 or open
 * signal tables where these carry the parameter. Plausible ranges: common practice, no source.
 */
final class PlainParameters {
  private PlainParameters() {}

  static final String ROWS =
      """
      04 | 1 | - | calculated load                                | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      05 | 1 | - | engine coolant temperature                     | degC | - | 0+8 | u | 1 | -40 | -39 | 214
      0B | 1 | - | intake manifold absolute pressure              | kPa | - | 0+8 | u | 1 | 0 | 0 | 2550
      0C | 2 | - | engine speed                                   | r/min | - | 0+16 | u | 1/4 | 0 | 0 | 16383
      0D | 1 | - | vehicle speed                                  | km/h | - | 0+8 | u | 1 | 0 | 0 | 254
      0F | 1 | - | intake air temperature                         | degC | - | 0+8 | u | 1 | -40 | -39 | 214
      10 | 2 | - | mass air flow                                  | g/s | - | 0+16 | u | 1/100 | 0 | 0 | 2550
      11 | 1 | - | absolute throttle position                     | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      1F | 2 | - | time since engine start                        | s | - | 0+16 | u | 1 | 0 | 0 | 65535
      21 | 2 | - | distance with malfunction lamp on              | km | - | 0+16 | u | 1 | 0 | 0 | 65535
      23 | 2 | - | fuel rail pressure                             | kPa | - | 0+16 | u | 10 | 0 | 0 | 655350
      2F | 1 | - | fuel tank level                                | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      31 | 2 | - | distance since codes cleared                   | km | - | 0+16 | u | 1 | 0 | 0 | 65535
      33 | 1 | - | barometric pressure                            | kPa | - | 0+8 | u | 1 | 0 | 30 | 120
      42 | 2 | - | control module voltage                         | V | - | 0+16 | u | 1/1000 | 0 | 0 | 65.535
      43 | 2 | - | absolute load                                  | % | - | 0+16 | u | 100/255 | 0 | 0 | 25700
      45 | 1 | - | relative throttle position                     | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      46 | 1 | - | ambient air temperature                        | degC | - | 0+8 | u | 1 | -40 | -39 | 214
      49 | 1 | - | accelerator pedal position D                   | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      4A | 1 | - | accelerator pedal position E                   | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      4B | 1 | - | accelerator pedal position F                   | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      4C | 1 | - | commanded throttle actuator                    | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      4D | 2 | - | run time with malfunction lamp on              | min | - | 0+16 | u | 1 | 0 | 0 | 65535
      4E | 2 | - | run time since codes cleared                   | min | - | 0+16 | u | 1 | 0 | 0 | 65535
      51 | 1 | - | fuel type in use                               | 1 | - | 0+8 | u | 1 | 0 | 0 | 255
      5A | 1 | - | relative accelerator pedal position            | % | - | 0+8 | u | 100/255 | 0 | 0 | 100
      5C | 1 | - | engine oil temperature                         | degC | - | 0+8 | u | 1 | -40 | -39 | 214
      5D | 2 | - | fuel injection timing                          | deg | - | 0+16 | u | 1/128 | -210 | -210 | 302
      5E | 2 | - | engine fuel rate                               | L/h | - | 0+16 | u | 1/20 | 0 | 0 | 3276.75
      61 | 1 | - | driver demand torque                           | % | - | 0+8 | u | 1 | -125 | -125 | 130
      62 | 1 | - | actual engine torque                           | % | - | 0+8 | u | 1 | -125 | -125 | 130
      63 | 2 | - | engine reference torque                        | N.m | - | 0+16 | u | 1 | 0 | 1 | 65535
      84 | 1 | - | manifold surface temperature                   | degC | - | 0+8 | u | 1 | -40 | -39 | 214
      8E | 1 | - | engine friction torque                         | % | - | 0+8 | u | 1 | -125 | -125 | 130
      9E | 2 | - | exhaust flow rate                              | kg/h | - | 0+16 | u | 1/5 | 0 | 0 | 13106
      A6 | 4 | - | odometer                                       | km | - | 0+32 | u | 1/10 | 0 | 0 | 429496729
      """;
}
