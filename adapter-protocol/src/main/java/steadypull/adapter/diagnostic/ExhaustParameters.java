package steadypull.adapter.diagnostic;

/**
 * Rows of the service 01 table with several values, 73 and up: exhaust, turbocharger, filters,
 * transmission.
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
final class ExhaustParameters {
  private ExhaustParameters() {}

  static final String ROWS =
      """
      73 | 5 | 1 | exhaust pressure bank 1                        | kPa | 0 | 8+16 | u | 1/100 | 0 | 0 | 655.34 | KT
      73 | 5 | 2 | exhaust pressure bank 2                        | kPa | 1 | 24+16 | u | 1/100 | 0 | 0 | 655.34 | KT
      74 | 5 | 1 | turbo speed A                                  | r/min | 0 | 8+16 | u | 10 | 0 | 0 | 250000 | KT
      74 | 5 | 2 | turbo speed B                                  | r/min | 1 | 24+16 | u | 10 | 0 | 0 | 250000 | KT
      75 | 7 | 1 | turbo A compressor inlet temperature           | degC | 0 | 8+8 | u | 1 | -40 | -39 | 214 | KT
      75 | 7 | 2 | turbo A compressor outlet temperature          | degC | 1 | 16+8 | u | 1 | -40 | -39 | 254 | KT
      75 | 7 | 3 | turbo A turbine inlet temperature              | degC | 2 | 24+16 | u | 1/10 | -40 | -39 | 1500 | KT
      75 | 7 | 4 | turbo A turbine outlet temperature             | degC | 3 | 40+16 | u | 1/10 | -40 | -39 | 1500 | KT
      76 | 7 | 1 | turbo B compressor inlet temperature           | degC | 0 | 8+8 | u | 1 | -40 | -39 | 214 | KT
      76 | 7 | 2 | turbo B compressor outlet temperature          | degC | 1 | 16+8 | u | 1 | -40 | -39 | 254 | KT
      76 | 7 | 3 | turbo B turbine inlet temperature              | degC | 2 | 24+16 | u | 1/10 | -40 | -39 | 1500 | KT
      76 | 7 | 4 | turbo B turbine outlet temperature             | degC | 3 | 40+16 | u | 1/10 | -40 | -39 | 1500 | KT
      77 | 5 | 1 | charge air temperature bank 1 sensor 1         | degC | 0 | 8+8 | u | 1 | -40 | -39 | 214 | KT
      77 | 5 | 2 | charge air temperature bank 1 sensor 2         | degC | 1 | 16+8 | u | 1 | -40 | -39 | 214 | KT
      77 | 5 | 3 | charge air temperature bank 2 sensor 1         | degC | 2 | 24+8 | u | 1 | -40 | -39 | 214 | KT
      77 | 5 | 4 | charge air temperature bank 2 sensor 2         | degC | 3 | 32+8 | u | 1 | -40 | -39 | 214 | KT
      78 | 9 | 1 | exhaust temperature bank 1 sensor 1            | degC | 0 | 8+16 | u | 1/10 | -40 | -39 | 1500 | KT
      78 | 9 | 2 | exhaust temperature bank 1 sensor 2            | degC | 1 | 24+16 | u | 1/10 | -40 | -39 | 1500 | KT
      78 | 9 | 3 | exhaust temperature bank 1 sensor 3            | degC | 2 | 40+16 | u | 1/10 | -40 | -39 | 1500 | KT
      78 | 9 | 4 | exhaust temperature bank 1 sensor 4            | degC | 3 | 56+16 | u | 1/10 | -40 | -39 | 1500 | KT
      79 | 9 | 1 | exhaust temperature bank 2 sensor 1            | degC | 0 | 8+16 | u | 1/10 | -40 | -39 | 1500 | KT
      79 | 9 | 2 | exhaust temperature bank 2 sensor 2            | degC | 1 | 24+16 | u | 1/10 | -40 | -39 | 1500 | KT
      79 | 9 | 3 | exhaust temperature bank 2 sensor 3            | degC | 2 | 40+16 | u | 1/10 | -40 | -39 | 1500 | KT
      79 | 9 | 4 | exhaust temperature bank 2 sensor 4            | degC | 3 | 56+16 | u | 1/10 | -40 | -39 | 1500 | KT
      7A | 7 | 1 | particulate filter bank 1 pressure drop        | kPa | 0 | 8+16 | s | 1/100 | 0 | -327.67 | 327.66 | KT
      7A | 7 | 2 | particulate filter bank 1 inlet pressure       | kPa | 1 | 24+16 | u | 1/100 | 0 | 0 | 655.34 | KT
      7A | 7 | 3 | particulate filter bank 1 outlet pressure      | kPa | 2 | 40+16 | u | 1/100 | 0 | 0 | 655.34 | KT
      7B | 7 | 1 | particulate filter bank 2 pressure drop        | kPa | 0 | 8+16 | s | 1/100 | 0 | -327.67 | 327.66 | KT
      7B | 7 | 2 | particulate filter bank 2 inlet pressure       | kPa | 1 | 24+16 | u | 1/100 | 0 | 0 | 655.34 | KT
      7B | 7 | 3 | particulate filter bank 2 outlet pressure      | kPa | 2 | 40+16 | u | 1/100 | 0 | 0 | 655.34 | KT
      7C | 9 | 1 | particulate filter temperature bank 1 inlet    | degC | 0 | 8+16 | u | 1/10 | -40 | -39 | 1500 | KT
      7C | 9 | 2 | particulate filter temperature bank 1 outlet   | degC | 1 | 24+16 | u | 1/10 | -40 | -39 | 1500 | KT
      7C | 9 | 3 | particulate filter temperature bank 2 inlet    | degC | 2 | 40+16 | u | 1/10 | -40 | -39 | 1500 | KT
      7C | 9 | 4 | particulate filter temperature bank 2 outlet   | degC | 3 | 56+16 | u | 1/10 | -40 | -39 | 1500 | KT
      7F | 13 | 1 | engine run time                                | s | 0 | 8+32 | u | 1 | 0 | 0 | 4294967294 | DKT
      7F | 13 | 2 | engine idle time                               | s | 1 | 40+32 | u | 1 | 0 | 0 | 4294967294 | DKT
      7F | 13 | 3 | run time with power take-off                   | s | 2 | 72+32 | u | 1 | 0 | 0 | 4294967294 | DKT
      83 | 9 | 1 | NOx bank 1 sensor 1                            | ppm | 0!4 | 8+16 | u | 1 | 0 | 0 | 65534 | KT
      83 | 9 | 2 | NOx bank 1 sensor 2                            | ppm | 1!5 | 24+16 | u | 1 | 0 | 0 | 65534 | KT
      83 | 9 | 3 | NOx bank 2 sensor 1                            | ppm | 2!6 | 40+16 | u | 1 | 0 | 0 | 65534 | KT
      83 | 9 | 4 | NOx bank 2 sensor 2                            | ppm | 3!7 | 56+16 | u | 1 | 0 | 0 | 65534 | KT
      85 | 10 | 1 | average reagent use                            | L/h | 0 | 8+16 | u | 1/200 | 0 | 0 | 327.67 | KT
      85 | 10 | 2 | average reagent demand                         | L/h | 1 | 24+16 | u | 1/200 | 0 | 0 | 327.67 | KT
      85 | 10 | 3 | reagent tank level                             | % | 2 | 40+8 | u | 100/255 | 0 | 0 | 100 | KT
      85 | 10 | 4 | run time with NOx warning                      | s | 3 | 48+32 | u | 1 | 0 | 0 | 4294967294 | KT
      87 | 5 | 1 | intake manifold absolute pressure A            | kPa | 0 | 8+16 | u | 1/32 | 0 | 0 | 2047 | KT
      87 | 5 | 2 | intake manifold absolute pressure B            | kPa | 1 | 24+16 | u | 1/32 | 0 | 0 | 2047 | KT
      8B | 7 | 1 | filter regeneration running                    | 1 | 0 | 15+1 | u | 1 | 0 | 0 | 1 | KT
      8B | 7 | 2 | filter regeneration active                     | 1 | 1 | 14+1 | u | 1 | 0 | 0 | 1 | KT
      8B | 7 | 3 | NOx adsorber regeneration                      | 1 | 2 | 13+1 | u | 1 | 0 | 0 | 1 | KT
      8B | 7 | 4 | NOx adsorber desulfurisation                   | 1 | 3 | 12+1 | u | 1 | 0 | 0 | 1 | KT
      8B | 7 | 5 | filter regeneration trigger                    | % | 4 | 16+8 | u | 100/255 | 0 | 0 | 100 | KT
      8B | 7 | 6 | average time between regenerations             | min | 5 | 24+16 | u | 1 | 0 | 0 | 65534 | KT
      8B | 7 | 7 | average distance between regenerations         | km | 6 | 40+16 | u | 1 | 0 | 0 | 65534 | KT
      98 | 9 | 1 | exhaust temperature bank 1 sensor 5            | degC | 0 | 8+16 | u | 1/10 | -40 | -39 | 1500 | KT
      98 | 9 | 2 | exhaust temperature bank 1 sensor 6            | degC | 1 | 24+16 | u | 1/10 | -40 | -39 | 1500 | KT
      98 | 9 | 3 | exhaust temperature bank 1 sensor 7            | degC | 2 | 40+16 | u | 1/10 | -40 | -39 | 1500 | KT
      98 | 9 | 4 | exhaust temperature bank 1 sensor 8            | degC | 3 | 56+16 | u | 1/10 | -40 | -39 | 1500 | KT
      99 | 9 | 1 | exhaust temperature bank 2 sensor 5            | degC | 0 | 8+16 | u | 1/10 | -40 | -39 | 1500 | KT
      99 | 9 | 2 | exhaust temperature bank 2 sensor 6            | degC | 1 | 24+16 | u | 1/10 | -40 | -39 | 1500 | KT
      99 | 9 | 3 | exhaust temperature bank 2 sensor 7            | degC | 2 | 40+16 | u | 1/10 | -40 | -39 | 1500 | KT
      99 | 9 | 4 | exhaust temperature bank 2 sensor 8            | degC | 3 | 56+16 | u | 1/10 | -40 | -39 | 1500 | KT
      9D | 4 | 1 | engine fuel rate by mass                       | g/s | - | 0+16 | u | 1/50 | 0 | 0 | 1310 | D
      9D | 4 | 2 | vehicle fuel rate by mass                      | g/s | - | 16+16 | u | 1/50 | 0 | 0 | 1310 | D
      A4 | 4 | 1 | actual gear                                    | 1 | 0 | 8+4 | u | 1 | 0 | 0 | 15 | T
      A4 | 4 | 2 | actual gear ratio                              | 1 | 1 | 16+16 | u | 1/1000 | 0 | 0.3 | 10 | T
      """;
}
